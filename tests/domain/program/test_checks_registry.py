"""The list of checks, their thresholds, moves by a coach, and stops that are overruled."""

import re
from dataclasses import fields, replace
from datetime import date

import pytest
from tests.domain.program.checking import context, found
from tests.domain.program.plans import SIV, block, exercise, one_day, percent, session, sets, week

from undercroft.domain.athlete import Injury
from undercroft.domain.errors import DomainError
from undercroft.domain.program.checks import (
    BY_NAME,
    CHECKS,
    DEFAULT,
    TABLE,
    Move,
    Thresholds,
    findings,
    may_overrule,
    movable,
    move,
    overrule,
    reasons,
    standing_stops,
    with_moves,
)
from undercroft.domain.program.finding import Finding, Severity
from undercroft.domain.program.methods import Limb, Method, OcclusionRule, Restriction

TODAY = date(2026, 11, 2)


class TestList:
    def test_names_are_unique_and_plain(self):
        assert len(BY_NAME) == len(CHECKS)
        assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", one.name) for one in CHECKS)

    @pytest.mark.parametrize("one", CHECKS, ids=lambda one: one.name)
    def test_every_check_says_what_it_looks_for_what_is_wrong_what_to_do_and_why(self, one):
        assert min(len(one.looks_for), len(one.message), len(one.mend)) >= 6
        why = reasons(one, DEFAULT)
        assert why
        assert all(len(reason.source) >= 9 for reason in why)

    def test_every_threshold_belongs_to_a_check_and_says_why(self):
        used = {name for one in CHECKS for name in one.thresholds}
        assert set(TABLE) == {one.name for one in fields(Thresholds)}
        assert set(TABLE) <= used
        for row in TABLE.values():
            assert row.least <= row.default <= row.most
            assert row.unit
            assert row.source

    def test_a_threshold_is_shown_as_it_stands(self):
        moved = Thresholds(speed_sets=10)
        (reason,) = reasons(BY_NAME["speed-sets"], moved)
        assert (reason.threshold, reason.value) == ("speed_sets", "10 sets")
        assert "common practice" in reason.source
        assert reason.movable

    def test_thresholds_of_other_subjects_come_from_their_own_settings(self):
        (reason,) = reasons(BY_NAME["occlusion-load"], DEFAULT)
        assert (reason.value, reason.movable) == ("40.0", False)
        assert "from memory" in reason.source

    def test_only_locks_and_limits_of_occlusion_are_beyond_a_coachs_word(self):
        final = {one.name for one in CHECKS if one.final}
        stops = {one.name for one in CHECKS if one.severity is Severity.STOP}
        assert final == {name for name in stops if name.startswith("occlusion-")}

    def test_findings_come_in_the_order_of_the_block(self):
        plan = block(
            week(session(exercise("back-squat", sets(2, 1, percent(120))), day=1)),
            week(session(exercise("dip"), exercise("deadlift", warm_up=())), number=2),
        )
        told = findings(context(plan))
        at = [tuple(int(n) for n in re.findall(r"\d+", one.path)) for one in told]
        assert at == sorted(at)
        assert {one.check for one in told} <= set(BY_NAME)

    def test_a_sound_plan_has_no_findings(self):
        plan = block(
            week(
                session(
                    exercise("back-squat", sets(3, 5, percent(75))),
                    exercise("bench-press", sets(3, 5, percent(75))),
                    day=1,
                ),
                session(exercise("deadlift", sets(3, 4, percent(75))), exercise("pulldown"), day=4),
            )
        )
        assert findings(context(plan)) == ()


class TestMoves:
    def test_a_move_leaves_a_record_of_who_when_why_and_from_what(self):
        moved, record = move(DEFAULT, "speed_sets", 10, "Ottilie", TODAY, "long-legged sprinter")
        assert moved.speed_sets == 10
        assert record == Move("speed_sets", 8, 10, "Ottilie", TODAY, "long-legged sprinter")
        assert replace(moved, speed_sets=8) == DEFAULT

    def test_records_bring_the_thresholds_back(self):
        first, one = move(DEFAULT, "recovery_h", 72, "O", TODAY, "sixty years old")
        second, two = move(first, "recovery_h", 60, "O", TODAY, "recovers well")
        assert with_moves([one, two]) == second

    def test_records_that_no_longer_hold_are_left_out(self):
        gone = Move("no_such_threshold", 1, 2, "O", TODAY, "old")
        stop = Move("alone_percent", 80, 95, "O", TODAY, "from before it was a stop")
        assert with_moves([gone, stop]) == DEFAULT

    @pytest.mark.parametrize("name", ["alone_percent", "alone_reserve"])
    def test_what_a_stop_rests_on_does_not_move(self, name):
        assert not movable(name)
        with pytest.raises(DomainError, match="only thresholds of warn and note move"):
            move(DEFAULT, name, TABLE[name].least, "O", TODAY, "because")

    @pytest.mark.parametrize(
        "name", ["wear_stop_s", "occlusion.wear_stop_s", "mechanics.stop_margin"]
    )
    def test_limits_of_occlusion_and_mechanics_are_no_thresholds_that_move(self, name):
        assert not movable(name)
        with pytest.raises(DomainError, match="there is no"):
            move(DEFAULT, name, 1800, "O", TODAY, "because")

    @pytest.mark.parametrize(
        ("value", "fine"), [(3, True), (2.9, False), (30, True), (30.1, False)]
    )
    def test_values_that_make_no_sense_are_refused(self, value, fine):
        if fine:
            assert move(DEFAULT, "speed_sets", value, "O", TODAY, "why")[0].speed_sets == value
        else:
            with pytest.raises(DomainError, match="should be from 3 to 30 sets"):
                move(DEFAULT, "speed_sets", value, "O", TODAY, "why")

    def test_a_move_without_a_word_is_refused(self):
        with pytest.raises(DomainError, match="say why"):
            move(DEFAULT, "speed_sets", 10, "O", TODAY, "  ")

    def test_every_threshold_that_only_warns_moves(self):
        fixed = {"alone_percent", "alone_reserve"}
        assert {name for name in TABLE if not movable(name)} == fixed


class TestOverrules:
    ATHLETE = replace(SIV, injuries=(Injury("knee", avoid=("back-squat",)),))
    PLAN = one_day(exercise("back-squat"))

    def stop(self) -> Finding:
        (one,) = found("injury", self.PLAN, athlete=self.ATHLETE)
        return one

    def test_a_stop_forbids_sending_until_it_is_overruled_in_writing(self):
        stop = self.stop()
        assert standing_stops([stop]) == (stop,)
        word = overrule(stop, "Ottilie", TODAY, "healed, the record is old")
        assert standing_stops([stop], [word]) == ()

    def test_an_overrule_holds_only_for_what_was_said_there(self):
        stop = self.stop()
        word = overrule(stop, "O", TODAY, "healed")
        assert standing_stops([replace(stop, what="something else")], [word])
        assert standing_stops([replace(stop, path="weeks.1")], [word])

    def test_warnings_forbid_nothing(self):
        warning = replace(self.stop(), severity=Severity.WARN)
        assert standing_stops([warning]) == ()
        assert not may_overrule(warning)

    def test_a_word_is_needed(self):
        with pytest.raises(DomainError, match="in writing"):
            overrule(self.stop(), "O", TODAY, "")

    def test_a_screening_lock_cannot_be_overruled(self):
        rule = OcclusionRule(Limb.THIGH, Restriction.WRAP, tightness=5)
        work = exercise("leg-extension", sets(2, 15), Method.OCCLUSION, details=rule)
        (lock,) = found("occlusion-locked", one_day(work))
        assert not may_overrule(lock)
        with pytest.raises(DomainError, match="nobody can overrule this"):
            overrule(lock, "O", TODAY, "I know her well")

    def test_what_could_not_be_worked_out_cannot_be_sent_whatever_anybody_writes(self):
        unknown = Finding(Severity.STOP, "week 1", "weeks.0", "no maximum is known", "give one")
        assert not may_overrule(unknown)
        assert standing_stops([unknown]) == (unknown,)
