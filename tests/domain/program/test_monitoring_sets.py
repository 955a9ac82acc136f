"""Hard sets, tonnage, adherence and speed work."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.domain.program.plans import (
    CATALOGUE,
    MONDAY,
    exercise,
    kg,
    one_day,
    order,
    record,
    session,
    sets,
)

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.load_sheet import (
    ForceCurve,
    SheetExercise,
    SheetImplement,
    SheetLoad,
    SheetSet,
    Target,
)
from undercroft.domain.program.methods import Method, Side
from undercroft.domain.program.monitoring import (
    DoneSet,
    course_of,
    done_sets,
    hard_sets,
    speed_work,
    tonnage,
)
from undercroft.domain.program.monitoring.resistance import mean_resistance
from undercroft.domain.sheet import work_out


def done(exercise: str = "back-squat", key: str = "s1", **fields) -> DoneSet:
    known = {"on": MONDAY, "session": "mon", "reps": 5, "rir": 2.0, **fields}
    return DoneSet(exercise=exercise, key=key, **known)


def many(count: int, exercise: str, **fields) -> list[DoneSet]:
    return [done(exercise, f"{exercise}.{n}", **fields) for n in range(count)]


PRESSES = {
    "bench": Exercise("bench", "Bench", Implement.STRAIGHT_BAR, ("chest",), ("triceps",)),
    "dip": Exercise("dip", "Dip", Implement.BODY, ("chest",), ("triceps",)),
    "pushdown": Exercise("pushdown", "Pushdown", Implement.STACK, ("triceps",)),
}


class TestHardSets:
    def test_a_helper_counts_half(self):
        # Rule seen (Pelland et al. 2024): 4 × 0.5 + 3 × 0.5 + 3 = 6.5 sets for the triceps.
        work = many(4, "bench") + many(3, "dip") + many(3, "pushdown")
        (week,) = hard_sets(work, PRESSES)
        assert week.by_muscle == {"chest": 7, "triceps": 6.5}

    @pytest.mark.parametrize(("rir", "counted"), [(0, 1), (4, 1), (4.5, 0), (6, 0)])
    def test_a_set_is_hard_within_four_repetitions_of_failure(self, rir, counted):
        (week,) = hard_sets([done(rir=rir)], CATALOGUE)
        assert week.by_muscle.get("quads", 0) == counted

    def test_a_set_to_failure_is_hard_without_a_word_of_the_reserve(self):
        (week,) = hard_sets([done(rir=None, to_failure=True)], CATALOGUE)
        assert week.by_muscle["quads"] == 1

    def test_a_set_whose_reserve_nobody_told_is_counted_apart(self):
        (week,) = hard_sets([done(rir=None)], CATALOGUE)
        assert (week.by_muscle, week.untold) == ({}, 1)

    def test_both_sides_of_a_one_sided_set_count_once(self):
        left = done("dumbbell-row", side=Side.LEFT, rir=5.0)
        right = done("dumbbell-row", side=Side.RIGHT, rir=1.0)
        for both in ([left, right], [right, left]):
            (week,) = hard_sets(both, CATALOGUE)
            assert week.by_muscle["lats"] == 1

    @pytest.mark.parametrize("method", [Method.SPEED, Method.HOLD, Method.TIMED])
    def test_work_of_another_kind_is_no_hard_set(self, method):
        (week,) = hard_sets([done(method=method)], CATALOGUE)
        assert (week.by_muscle, week.untold) == ({}, 0)

    def test_weeks_begin_on_monday(self):
        sunday, monday = date(2026, 11, 8), date(2026, 11, 9)
        weeks = hard_sets([done(on=monday), done(on=sunday)], CATALOGUE)
        assert [week.monday for week in weeks] == [date(2026, 11, 2), date(2026, 11, 9)]

    @given(st.permutations(many(4, "bench-press") + many(3, "dip") + many(2, "plank")))
    def test_the_order_of_sets_does_not_matter(self, work):
        assert hard_sets(work, CATALOGUE)[0].by_muscle["triceps"] == 7


class TestTonnage:
    def test_a_worked_example(self):
        # Seen: 10 × 55 + 8 × 65 + 6 × 75 = 1520 kg, 63.3 kg a repetition, 57.6 % of 110 kg.
        total = tonnage(done(reps=r, resistance_kg=w) for r, w in ((10, 55), (8, 65), (6, 75)))
        assert total.kg == 1520
        assert total.mean_kg == pytest.approx(63.33, abs=0.01)
        assert 100 * total.mean_kg / 110 == pytest.approx(57.58, abs=0.01)

    def test_density_of_a_worked_example(self):
        # Seen: 1560 kg in 45 minutes, printed as 34.7.
        assert tonnage([done(reps=24, resistance_kg=65)]).density(45) == pytest.approx(
            34.67, abs=0.01
        )

    def test_one_sided_repetitions_are_done_twice(self):
        both = done("dumbbell-row", reps=8, resistance_kg=25, each_side=True)
        left = done("dumbbell-row", reps=8, resistance_kg=25, each_side=True, side=Side.LEFT)
        assert tonnage([both]).kg == 400
        assert tonnage([left]).kg == 200

    def test_a_set_with_no_known_resistance_is_left_out_and_said(self):
        total = tonnage([done(resistance_kg=None), done(reps=None, resistance_kg=50)])
        assert (total.kg, total.reps, total.left_out) == (0, 0, 2)
        assert total.mean_kg is None


class TestResistance:
    SQUAT = SheetExercise(
        "a",
        "back-squat",
        "Back squat",
        Method.SPEED,
        SheetImplement("straight-bar", "Bar", sides=2),
        (),
        loads=(SheetLoad(80, 0), SheetLoad(82.5, 0)),
    )
    BANDED = SheetSet("s1", 1, Target(3), load=0, curve=ForceCurve(85, 95, 105))

    def test_bands_count_at_their_mean_over_the_range(self):
        assert mean_resistance(80, CATALOGUE["back-squat"].implement, self.SQUAT, self.BANDED) == 95

    def test_another_bar_load_moves_the_whole_curve(self):
        assert (
            mean_resistance(82.5, CATALOGUE["back-squat"].implement, self.SQUAT, self.BANDED)
            == 97.5
        )

    def test_without_a_curve_it_is_the_load(self):
        assert mean_resistance(80, CATALOGUE["back-squat"].implement) == 80

    def test_a_pair_of_dumbbells_is_both_of_them(self):
        assert mean_resistance(20, CATALOGUE["split-squat"].implement) == 40

    def test_a_landmine_is_no_sum_of_bar_and_plates(self):
        assert mean_resistance(20, CATALOGUE["landmine-press"].implement) is None

    @pytest.mark.parametrize("load", [None, 0])
    def test_no_load_is_no_resistance(self, load):
        assert mean_resistance(load, CATALOGUE["back-squat"].implement) is None


class TestDoneSets:
    PLAN = session(
        exercise("back-squat", sets(2, 5, kg(100), rir=2)),
        exercise("dumbbell-row", sets(1, 8, kg(25))),
        key="w1.day1",
    )

    def test_only_what_was_done_is_there_with_what_was_done(self):
        told = record(
            "w1.day1",
            ("set.done", "back-squat.s1", {"load_kg": 102.5, "reps": 4, "rir": 1}),
            ("set.skipped", "back-squat.s2", {"why": "tired"}),
        )
        (one,) = done_sets(MONDAY, self.PLAN, told, CATALOGUE)
        assert (one.exercise, one.load_kg, one.reps, one.rir) == ("back-squat", 102.5, 4, 1)

    def test_a_swap_counts_for_what_was_done_instead(self):
        told = record(
            "w1.day1",
            ("exercise.swapped", "", {"exercise": "back-squat", "to": "goblet-squat"}),
            ("set.done", "back-squat.s1", {"load_kg": 30, "reps": 8, "rir": 2}),
        )
        (one,) = done_sets(MONDAY, self.PLAN, told, CATALOGUE)
        assert one.exercise == "goblet-squat"

    def test_a_set_that_the_athlete_added_counts(self):
        told = record(
            "w1.day1",
            ("set.added", "x1", {"exercise": "dumbbell-curl"}),
            ("set.done", "x1", {"load_kg": 12.5, "reps": 10, "rir": 1}),
        )
        (one,) = done_sets(MONDAY, self.PLAN, told, CATALOGUE)
        assert (one.exercise, one.resistance_kg) == ("dumbbell-curl", 25)

    def test_a_set_that_was_added_after_a_swap_is_one_of_what_was_done_instead(self):
        told = record(
            "w1.day1",
            ("exercise.swapped", "", {"exercise": "back-squat", "to": "goblet-squat"}),
            ("set.added", "x1", {"exercise": "back-squat"}),
            ("set.done", "x1", {"load_kg": 30, "reps": 8, "rir": 2}),
        )
        (one,) = done_sets(MONDAY, self.PLAN, told, CATALOGUE)
        assert one.exercise == "goblet-squat"

    def test_the_sheet_tells_the_share_of_the_maximum(self):
        plan = one_day(exercise("back-squat", sets(1, 5, kg(105))))
        (sheet,) = work_out(order(plan)).sheets
        told = record("w1.day1", ("set.done", "back-squat.s1", {"load_kg": 105, "reps": 5}))
        (one,) = done_sets(MONDAY, plan.weeks[0].sessions[0], told, CATALOGUE, sheet)
        assert one.share == pytest.approx(105 / 140, abs=0.01)
        assert one.resistance_kg == 105

    def test_a_one_sided_exercise_is_done_on_each_side(self):
        told = record("w1.day1", ("set.done", "dumbbell-row.s1", {"load_kg": 25, "reps": 8}))
        (one,) = done_sets(MONDAY, self.PLAN, told, CATALOGUE)
        assert one.each_side
        assert tonnage([one]).kg == 400

    def test_sides_told_apart_each_count_with_their_own_repetitions(self):
        told = record(
            "w1.day1",
            ("set.done", "dumbbell-row.s1", {"load_kg": 25, "reps": 8, "side": "left"}),
            ("set.done", "dumbbell-row.s1", {"load_kg": 25, "reps": 6, "side": "right"}),
        )
        both = done_sets(MONDAY, self.PLAN, told, CATALOGUE)
        assert [(one.side, one.reps) for one in both] == [(Side.LEFT, 8), (Side.RIGHT, 6)]
        assert tonnage(both).kg == 350


class TestSpeedWork:
    def test_power_peaks_at_the_fifth_set_and_has_gone_by_the_eighth(self):
        # A made series after common practice: best at four or five, gone by eight.
        course = course_of([1000, 1020, 1060, 1090, 1100, 1080, 1030, 980])
        assert (course.best, course.best_w) == (5, 1100)
        assert course.rise_percent == pytest.approx(10)
        assert course.drop_percent == pytest.approx(100 * 120 / 1100)

    def test_of_equal_bests_the_first_counts(self):
        assert course_of([900, 1000, 1000]).best == 2

    def test_a_set_that_was_not_measured_keeps_its_number(self):
        course = course_of([900, None, 1000])
        assert (course.best, course.drop_percent) == (3, 0)
        assert course_of([None, None]) is None

    def test_power_is_of_the_mean_resistance_set_by_set(self):
        work = [
            done(
                "hex-bar-deadlift", f"s{n}", method=Method.SPEED, resistance_kg=130, velocities=(v,)
            )
            for n, v in enumerate((0.8, 0.9))
        ]
        (one,) = speed_work(work)
        assert one.powers[1].mean_w == pytest.approx(130 * 9.80665 * 0.9)
        assert one.course.best == 2

    def test_the_body_counts_only_where_the_coach_says_so(self):
        work = [done("back-squat", method=Method.SPEED, resistance_kg=80, velocities=(1.0,))]
        (one,) = speed_work(work, {"back-squat": 70})
        assert one.powers[0].mean_w == pytest.approx(150 * 9.80665)

    def test_quality_stands_beside_power_and_is_never_turned_into_it(self):
        (one,) = speed_work([done(method=Method.SPEED, resistance_kg=80, quality=4)])
        assert (one.powers, one.qualities, one.course) == ((None,), (4,), None)

    def test_other_work_is_no_speed_work(self):
        assert speed_work([done(velocities=(0.5,), resistance_kg=100)]) == ()
