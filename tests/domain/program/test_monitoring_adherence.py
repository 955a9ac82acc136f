"""Planned against done: each fate counted apart, and silence told from absence."""

from datetime import date

import pytest
from tests.domain.program.plans import MONDAY, exercise, kg, record, session, sets

from undercroft.domain.program.monitoring import Adherence, Fate, Today, adherence, fates


class TestAdherence:
    PLAN = session(exercise("back-squat", sets(3, 5, kg(100))), key="w1.day1")
    FRIDAY = date(2026, 11, 6)

    def fates(self, *entries, heard_through=None, today=FRIDAY, planned_kg=None):
        told = record("w1.day1", *entries) if entries else None
        return fates(MONDAY, self.PLAN, told, Today(today, heard_through), planned_kg)

    def test_each_fate_is_counted_apart(self):
        found = self.fates(
            ("set.done", "back-squat.s1", {"load_kg": 100, "reps": 5}),
            ("set.done", "back-squat.s2", {"load_kg": 95, "reps": 5}),
            ("set.skipped", "back-squat.s3", {"why": "knee"}),
            planned_kg={f"back-squat.s{n}": 100.0 for n in (1, 2, 3)},
        )
        assert list(found.values()) == [Fate.DONE, Fate.CHANGED, Fate.SKIPPED]
        assert adherence([found]) == Adherence(done=1, changed=1, skipped=1)
        assert adherence([found]).planned == 3

    def test_silence_without_signal_is_unknown_and_not_skipped(self):
        assert set(self.fates().values()) == {Fate.UNKNOWN}
        assert set(self.fates(heard_through=date(2026, 11, 1)).values()) == {Fate.UNKNOWN}

    def test_silence_of_a_phone_that_has_sent_all_is_skipped(self):
        assert set(self.fates(heard_through=MONDAY).values()) == {Fate.SKIPPED}

    def test_a_day_that_has_not_passed_is_ahead_and_not_counted(self):
        ahead = self.fates(today=MONDAY)
        assert set(ahead.values()) == {Fate.AHEAD}
        assert adherence([ahead]).planned == 0

    def test_what_a_finished_session_has_no_answer_for_was_skipped(self):
        found = self.fates(
            ("set.done", "back-squat.s1", {"load_kg": 100, "reps": 5}),
            ("session.finished", "", {"rpe": 6, "minutes": 50}),
        )
        assert list(found.values()) == [Fate.DONE, Fate.SKIPPED, Fate.SKIPPED]

    @pytest.mark.parametrize(
        ("reps", "fate"), [(5, Fate.DONE), (4, Fate.CHANGED), (6, Fate.CHANGED)]
    )
    def test_other_repetitions_are_a_change(self, reps, fate):
        assert self.fates(("set.done", "back-squat.s1", {"reps": reps}))["back-squat.s1"] is fate

    def test_a_set_to_failure_has_no_repetitions_to_miss(self):
        plan = session(exercise("back-squat", sets(1, 15, kg(40), to_failure=True)), key="w1.day1")
        told = record("w1.day1", ("set.done", "back-squat.s1", {"reps": 11, "load_kg": 40}))
        found = fates(MONDAY, plan, told, Today(self.FRIDAY))
        assert found["back-squat.s1"] is Fate.DONE

    def test_a_swap_is_a_change(self):
        found = self.fates(
            ("exercise.swapped", "", {"exercise": "back-squat", "to": "goblet-squat"}),
            ("set.done", "back-squat.s1", {"reps": 5}),
        )
        assert found["back-squat.s1"] is Fate.CHANGED

    @pytest.mark.parametrize(
        ("right", "fate"),
        [
            (("set.done", {"reps": 5}), Fate.DONE),
            (("set.done", {"reps": 4}), Fate.CHANGED),
            (("set.skipped", {"why": "shoulder"}), Fate.CHANGED),
            (None, Fate.CHANGED),
        ],
    )
    def test_a_one_sided_set_is_done_when_both_sides_are(self, right, fate):
        sides = [("set.done", "back-squat.s1", {"reps": 5, "side": "left"})]
        if right:
            kind, body = right
            sides.append((kind, "back-squat.s1", {**body, "side": "right"}))
        assert self.fates(*sides)["back-squat.s1"] is fate
