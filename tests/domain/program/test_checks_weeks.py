"""Checks over sessions and weeks: recovery, hard sets, time, kit needed twice, days away."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from tests.domain.program.checking import context, finds, found
from tests.domain.program.plans import (
    CELLAR,
    MONDAY,
    SIV,
    block,
    exercise,
    kg,
    one_day,
    percent,
    session,
    sets,
    week,
)

from undercroft.domain.kit import Plate
from undercroft.domain.program.block import Block, Rest, Week
from undercroft.domain.program.checks import Away, Background, Thresholds
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method
from undercroft.domain.program.monitoring import DoneSet


def squats(of: float, day: int, rir: float | None = None):
    return session(exercise("back-squat", sets(3, 3, percent(of), rir=rir)), day=day)


def done(exercise_: str, on: date, count: int = 1, **fields) -> tuple[DoneSet, ...]:
    known = {"reps": 5, "rir": 1.0, **fields}
    return tuple(
        DoneSet(on, f"s{on}", f"{exercise_}.{n}", exercise_, **known) for n in range(count)
    )


class TestRecovery:
    @pytest.mark.parametrize(("second", "is_found"), [(2, True), (3, False)])
    def test_the_same_muscles_heavy_within_48_hours_are_found(self, second, is_found):
        plan = block(week(squats(85, 1), squats(85, second)))
        assert finds("heavy-too-soon", plan) is is_found

    def test_the_later_session_is_named_with_muscles_and_hours(self):
        (one,) = found("heavy-too-soon", block(week(squats(85, 1), squats(85, 2))))
        assert one.what == "glutes, quads heavy again after 24 h"
        assert one.where == "week 1, Tuesday"

    def test_a_week_ends_where_the_next_begins(self):
        plan = block(week(squats(85, 7)), week(squats(85, 1), number=2))
        assert found("heavy-too-soon", plan)[0].where == "week 2, Monday"

    @pytest.mark.parametrize(
        ("of", "rir", "is_found"),
        [(80, 4, True), (79.5, 4, False), (60, 1, True), (60, 1.5, False)],
    )
    def test_heavy_is_eighty_percent_or_within_a_repetition_of_failure(self, of, rir, is_found):
        plan = block(week(squats(of, 1, rir), squats(of, 2, rir)))
        assert finds("heavy-too-soon", plan) is is_found

    def test_other_muscles_pass(self):
        press = session(exercise("overhead-press", sets(3, 3, percent(85))), day=2)
        assert not finds("heavy-too-soon", block(week(squats(85, 1), press)))

    def test_what_was_done_before_the_block_counts(self):
        plan = block(week(squats(85, 1)))
        yesterday = Background(done=done("front-squat", MONDAY - timedelta(days=1)))
        before = Background(done=done("front-squat", MONDAY - timedelta(days=2)))
        assert finds("heavy-too-soon", plan, background=yesterday)
        assert not finds("heavy-too-soon", plan, background=before)

    def test_two_heavy_sessions_on_one_day_are_found(self):
        second = replace(squats(85, 1), key="evening")
        (one,) = found("heavy-too-soon", block(week(squats(85, 1), second)))
        assert one.what.endswith("heavy again on the same day")

    def test_the_coach_may_move_the_hours(self):
        plan = block(week(squats(85, 1), squats(85, 3)))
        assert finds("heavy-too-soon", plan, thresholds=Thresholds(recovery_h=72))


def weeks_of(*counts: int, name: str = "back-squat") -> Block:
    """Weeks with so many hard sets of one exercise; none makes an empty week."""
    made = []
    for number, count in enumerate(counts, start=1):
        work = exercise(name, sets(count, 5, percent(70), rir=2)) if count else None
        made.append(week(*([session(work)] if work else []), number=number))
    return block(*made)


class TestHardSets:
    @pytest.mark.parametrize(("second", "is_found"), [(13, False), (14, True)])
    def test_a_jump_of_more_than_thirty_percent_is_found(self, second, is_found):
        assert finds("sets-jump", weeks_of(10, second)) is is_found

    def test_the_muscle_and_the_step_are_named(self):
        glutes, quads = (
            one for one in found("sets-jump", weeks_of(10, 14)) if "adductors" not in one.what
            and "back" not in one.what
        )  # fmt: skip
        assert glutes.what == "glutes: 14 hard sets, after 10 at the most in the weeks before"
        assert glutes.right.startswith("at most 13 sets here")
        assert (quads.where, quads.path) == ("week 2", "weeks.1")

    def test_helpers_count_half(self):
        jumps = [one.what for one in found("sets-jump", weeks_of(10, 17))]
        assert "adductors: 8.5 hard sets, after 5 at the most in the weeks before" in jumps

    def test_two_sets_more_are_no_jump_whatever_their_percent(self):
        assert not finds("sets-jump", weeks_of(2, 4))
        assert finds("sets-jump", weeks_of(2, 5))

    def test_coming_back_from_a_light_week_is_no_jump(self):
        assert not finds("sets-jump", weeks_of(10, 11, 5, 12))

    def test_coming_back_after_five_weeks_is_one(self):
        assert finds("sets-jump", weeks_of(10, 4, 4, 4, 4, 10))

    def test_the_first_week_is_compared_with_what_was_done(self):
        last_week = MONDAY - timedelta(days=5)
        few = Background(done=done("back-squat", last_week, 6))
        many = Background(done=done("back-squat", last_week, 12))
        assert finds("sets-jump", weeks_of(12), background=few)
        assert not finds("sets-jump", weeks_of(12), background=many)

    def test_without_anything_known_the_first_week_passes(self):
        assert not finds("sets-jump", weeks_of(18))

    @pytest.mark.parametrize(("rir", "is_found"), [(4, True), (5, False)])
    def test_sets_far_from_failure_do_not_count(self, rir, is_found):
        easy = exercise("leg-extension", sets(24, 10, kg(30), rir=rir))
        assert finds("sets-ceiling", one_day(easy)) is is_found

    def test_a_reserve_that_is_left_open_counts_and_speed_work_does_not(self):
        assert finds("sets-ceiling", one_day(exercise("leg-extension", sets(24, 10, kg(30)))))
        fast = exercise("back-squat", sets(24, 2, percent(60)), Method.SPEED)
        assert not finds("sets-ceiling", one_day(fast))

    @pytest.mark.parametrize(("count", "is_found"), [(20, False), (21, True)])
    def test_twenty_sets_a_week_are_the_ceiling_of_trained_people(self, count, is_found):
        # Review, PMC8884877, seen: 12-20 a week are a good standard.
        assert finds("sets-ceiling", weeks_of(count)) is is_found

    def test_the_athletes_own_ceiling_counts(self):
        own = Background(ceilings={"quads": 8})
        (one,) = found("sets-ceiling", weeks_of(10), background=own)
        assert one.what == "quads: 10 hard sets in the week"
        assert one.right == "at most 8, the athlete's ceiling"

    def test_weeks_that_are_done_are_not_looked_at(self):
        left = found("sets-jump", weeks_of(10, 16), leave_out=("w1.day1", "w2.day1"))
        assert left == ()


class TestTime:
    LONG = one_day(exercise("back-squat", sets(10, 5, rir=2), rest=Rest(180, 240)))

    def test_a_session_longer_than_the_athletes_time_is_found(self):
        minutes = context(self.LONG).done.sheets[0].minutes
        for has, is_found in ((minutes, False), (minutes - 1, True)):
            athlete = replace(SIV, session_minutes=has)
            assert finds("session-too-long", self.LONG, athlete=athlete) is is_found

    def test_both_times_are_named(self):
        (one,) = found("session-too-long", self.LONG, athlete=replace(SIV, session_minutes=30))
        assert one.what.endswith("and the athlete has 30")

    def test_without_a_time_nothing_is_said(self):
        assert not finds("session-too-long", self.LONG, athlete=replace(SIV, session_minutes=None))


def paired(one, other, **fields):
    return one_day(replace(one, group="A"), replace(other, group=fields.get("group", "A")))


class TestKitTwice:
    SQUAT = exercise("back-squat", sets(2, 5, kg(100)))

    def test_one_bar_loaded_differently_for_two_exercises_is_found(self):
        (one,) = found(
            "kit-needed-twice", paired(self.SQUAT, exercise("barbell-row", sets(2, 8, kg(60))))
        )
        assert one.what == "needs steel bar at the same time as back squat"

    def test_one_bar_with_one_loading_serves_both(self):
        row = exercise("barbell-row", sets(2, 8, kg(100)))
        assert not finds("kit-needed-twice", paired(self.SQUAT, row))

    def test_the_bar_cannot_stand_in_the_landmine_as_well(self):
        press = exercise("landmine-press", sets(2, 8, kg(20)))
        assert finds("kit-needed-twice", paired(self.SQUAT, press))

    def test_plates_that_two_bars_need_together_are_counted(self):
        squat = exercise("back-squat", sets(2, 5, kg(100)))
        pull = exercise("hex-bar-deadlift", sets(2, 5, kg(105)))
        four = replace(CELLAR, plates=(Plate(20, 4, 0.03),))
        (one,) = found("kit-needed-twice", paired(squat, pull), kit=four)
        assert one.what == "needs 8 plates of 20 kg (there are 4) at the same time as back squat"
        eight = replace(CELLAR, plates=(Plate(20, 8, 0.03),))
        assert not finds("kit-needed-twice", paired(squat, pull), kit=eight)

    def test_exercises_done_one_after_the_other_pass(self):
        row = exercise("barbell-row", sets(2, 8, kg(60)))
        assert not finds("kit-needed-twice", one_day(self.SQUAT, row))
        assert not finds("kit-needed-twice", paired(self.SQUAT, row, group="B"))

    def test_a_bar_and_a_cable_pass(self):
        assert not finds("kit-needed-twice", paired(self.SQUAT, exercise("pulldown")))


class TestDaysAway:
    PLAN = block(
        week(session(exercise(), day=1), session(exercise(), day=4)),
        week(session(exercise(), day=1), session(exercise(), day=4), number=2),
    )

    def test_sessions_on_days_away_are_found_with_the_reason(self):
        trip = Away(date(2026, 11, 11), date(2026, 11, 13), "a rescue exercise")
        (one,) = found("sessions-lost", self.PLAN, background=Background(away=(trip,)))
        assert one.severity is Severity.NOTE
        assert (one.where, one.what) == (
            "week 2", "1 of 2 sessions fall on days away (a rescue exercise)",
        )  # fmt: skip

    def test_days_away_between_sessions_pass(self):
        trip = Away(date(2026, 11, 3), date(2026, 11, 4))
        assert not finds("sessions-lost", self.PLAN, background=Background(away=(trip,)))

    @pytest.mark.parametrize("on", [date(2026, 11, 2), date(2026, 11, 5)])
    def test_both_ends_are_days_away(self, on):
        trip = Away(on, on)
        assert finds("sessions-lost", self.PLAN, background=Background(away=(trip,)))

    def test_a_week_left_empty_is_found(self):
        plan = replace(self.PLAN, weeks=(*self.PLAN.weeks, Week("w3", "Week 3", ())))
        (one,) = found("week-short", plan)
        assert one.what == "no sessions, and the block's weeks usually have 2"
        assert one.where == "week 3"

    def test_a_week_with_half_of_the_sessions_passes(self):
        plan = replace(self.PLAN, weeks=(*self.PLAN.weeks, week(session(exercise()), number=3)))
        assert not finds("week-short", plan)
