"""From what the coach wrote to what hangs where."""

import re
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any

import pytest
from tests.domain.sheet.conftest import WorkOut
from tests.fixtures import fixture as load

from undercroft.domain.load_sheet import LoadSheet, SheetExercise, SheetLoad
from undercroft.domain.strength import Ladder, begin, repetitions_at, share, suggest

One = Callable[..., SheetExercise]


def percent(value: float, **more: Any) -> dict[str, Any]:
    return {"basis": "percent", "percent": value, **more}


def planned(exercise: SheetExercise, place: int = 0) -> SheetLoad:
    index = exercise.sets[place].load
    assert index is not None
    return exercise.loads[index]


def loads_of(sheet: LoadSheet) -> Iterator[SheetLoad]:
    """Of every warm-up step and every set."""
    for exercise in sheet.exercises:
        for one in (*exercise.ramp, *exercise.sets):
            if one.load is not None:
                yield exercise.loads[one.load]


def test_a_percentage_is_of_the_maximum_as_it_is_expected_on_the_day(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 5, "load": percent(80)}])
    assert done.maximum is not None
    assert done.sets[0].wish_kg == pytest.approx(0.80 * done.maximum.kg, rel=1e-3)


def test_the_load_hangs_together_from_bar_collars_and_both_sides(worked_out: WorkOut) -> None:
    for sheet in worked_out().sheets:
        for exercise in sheet.exercises:
            bar = exercise.implement
            for one in exercise.loads:
                if bar.sides == 2 and bar.mass_kg:
                    collars = bar.collars_kg if one.side else 0
                    total = bar.mass_kg + collars + 2 * sum(one.side)
                    assert one.kg == pytest.approx(total, abs=0.001)


def test_no_other_load_of_the_kit_is_nearer_to_the_wish(worked_out: WorkOut) -> None:
    for sheet in worked_out().sheets:
        for exercise in sheet.exercises:
            for one in exercise.sets:
                if one.wish_kg is not None and one.load is not None:
                    best = min(abs(load.kg - one.wish_kg) for load in exercise.loads)
                    assert abs(exercise.loads[one.load].kg - one.wish_kg) <= best + 1e-3


def test_five_reps_with_two_in_reserve_are_a_seven_repetition_maximum(one_exercise: One) -> None:
    """The handbook chart gives 83 % at 7 repetitions (NSCA Essentials, seen)."""
    done = one_exercise("back-squat", [{"reps": 5, "load": {"basis": "rir", "rir": 2}}])
    assert done.maximum is not None
    assert done.sets[0].wish_kg == pytest.approx(0.83 * done.maximum.kg, rel=2e-3)


def test_a_percentage_implies_the_reserve_that_the_chart_gives(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 5, "load": percent(80)}])
    assert repetitions_at(0.80) == pytest.approx(8)
    assert done.sets[0].target.rir == 3


def test_a_percentage_of_speed_sets_asks_for_no_reserve(one_exercise: One) -> None:
    """Speed is kept by stopping early, not by counting what is left (common practice)."""
    done = one_exercise("back-squat", [{"reps": 2, "load": percent(75)}], method="speed")
    assert done.sets[0].target.rir is None


def test_the_warm_up_climbs_to_the_first_work_set(worked_out: WorkOut) -> None:
    squat = worked_out().sheets[0].exercises[0]
    climb = [squat.loads[step.load].kg for step in squat.ramp]
    assert climb == sorted(climb)
    assert len(climb) == 5
    assert climb[-1] < planned(squat).kg


def test_without_a_ramp_in_the_plan_there_is_none(one_exercise: One) -> None:
    assert one_exercise("back-squat", [{"reps": 5, "load": percent(80)}], warm_up=[]).ramp == ()


def test_back_off_sets_follow_from_what_is_done_in_the_top_set(one_exercise: One) -> None:
    sets = [
        {"reps": 3, "load": percent(90)},
        {"reps": 6, "rir": 3, "load": {"basis": "top-set", "percent": 80}},
    ]
    done = one_exercise("back-squat", sets, method="top-and-back-off")
    back_off = done.sets[1]
    assert back_off.load == back_off.after[done.sets[0].load or 0]
    assert len(back_off.after) == len(done.loads)
    for top, follows in enumerate(back_off.after):
        wanted = done.loads[top].kg * 0.80
        nearest = min(abs(load.kg - wanted) for load in done.loads)
        assert abs(done.loads[follows].kg - wanted) == pytest.approx(nearest)


def test_loads_rise_and_each_way_of_hanging_stands_once(worked_out: WorkOut) -> None:
    for sheet in worked_out().sheets:
        for exercise in sheet.exercises:
            assert all(a.kg <= b.kg for a, b in pairwise(exercise.loads))
            assert len(set(exercise.loads)) == len(exercise.loads)


def test_a_ladder_climbs_one_percent_a_notch_to_the_kits_nearest_load(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 5, "load": percent(80)}])
    assert done.notches is not None
    ladder = [done.loads[index].kg for index in done.sets[0].ladder]
    assert len(ladder) == 41
    assert ladder == sorted(ladder)
    assert ladder[0] == pytest.approx(done.sets[0].wish_kg * 0.82, rel=0.03)  # type: ignore[operator]
    assert ladder[-1] == pytest.approx(done.sets[0].wish_kg * 1.22, rel=0.03)  # type: ignore[operator]


def test_before_any_evidence_the_suggestion_is_the_plan(worked_out: WorkOut) -> None:
    for sheet in worked_out().sheets:
        for exercise in sheet.exercises:
            for one in exercise.sets:
                if one.ladder and exercise.notches and one.turn is not None:
                    n = exercise.notches.at[one.turn]
                    steps = Ladder(one.ladder, one.cap)
                    first = suggest(begin(exercise.notches), exercise.notches, steps, n)
                    assert first.index == one.load


def test_no_suggestion_may_pass_what_the_upper_end_of_the_band_could_do(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 5, "rir": 2, "load": percent(80)}])
    assert done.maximum is not None
    cap = done.sets[0].cap
    assert cap is not None
    assert done.loads[cap].kg <= done.maximum.high_kg * share(5)


def test_speed_sets_tell_nothing_of_a_maximum_and_have_no_ladder(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 3, "load": percent(60)}], method="speed")
    assert done.notches is None
    assert done.sets[0].ladder == ()
    assert done.sets[0].turn is None


def test_a_lift_may_be_prescribed_from_anothers_maximum(one_exercise: One) -> None:
    wish = percent(80, of="back-squat", ratio=0.85)
    done = one_exercise("front-squat", [{"reps": 5, "load": wish}])
    assert done.sets[0].wish_kg == pytest.approx(0.80 * 0.85 * 105, rel=0.01)


def test_a_lift_without_a_maximum_stops_the_block_with_its_place(worked_out: WorkOut) -> None:
    athlete = load("athletes", "runa")
    athlete["maxima"] = [m for m in athlete["maxima"] if m["lift"] != "back-squat"]
    found = worked_out(athlete=athlete).findings
    assert [finding.where for finding in found] == [
        "week 1, Monday, exercise 1 (back-squat)",
        "week 2, Monday, exercise 1 (back-squat)",
    ]
    assert "tested or guessed" in found[0].right


def test_where_the_coach_says_so_an_unknown_maximum_is_found_by_feel(one_exercise: One) -> None:
    wish = percent(80, when_unknown="find")
    done = one_exercise("deadlift", [{"reps": 5, "load": wish}])
    assert done.sets[0].load is None
    assert "start light" in done.sets[0].why
    assert done.loads


def test_a_load_as_last_time_is_found_by_feel_the_first_time(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 5, "load": {"basis": "last", "add_kg": 2.5}}])
    assert done.sets[0].load is None
    assert done.loads


def test_a_leaning_lift_takes_the_ratio_of_the_one_it_leans_on(one_exercise: One) -> None:
    athlete = load("athletes", "runa")
    athlete["leans"] = [{"lift": "deadlift", "on_lift": "hex-bar-deadlift", "ratio": 0.94}]
    done = one_exercise("deadlift", [{"reps": 3, "load": percent(80)}], athlete=athlete)
    assert done.maximum is not None
    assert done.maximum.kg == pytest.approx(135 * 0.94, rel=0.01)
    assert done.maximum.source == "0.94 × hex-bar-deadlift"


def test_what_the_kit_lacks_is_said_and_others_are_offered(worked_out: WorkOut) -> None:
    pull = worked_out(kit=load("kits", "boathouse")).sheets[1]
    deadlift = pull.exercises[0]
    assert deadlift.notes == ("No hex bar stands here.",)
    assert deadlift.loads == ()
    names = [other.name for other in deadlift.alternatives]
    assert names == ["Deadlift", "Goblet squat", "Romanian deadlift"]


@pytest.mark.parametrize(
    ("exercise", "implement"),
    [("dumbbell-curl", "dumbbell"), ("lateral-raise", "dumbbell"), ("split-squat", "dumbbells")],
)
def test_one_arm_holds_one_dumbbell_and_one_leg_works_under_two(
    one_exercise: One, exercise: str, implement: str
) -> None:
    sets = [{"reps": 8, "load": {"basis": "kg", "kg": 6}}]
    done = one_exercise(exercise, sets, method="one-sided", details={"first": "left"})
    assert done.implement.kind == implement
    assert done.loads[done.sets[0].load].piece_kg == 6
    both = one_exercise(exercise, sets)
    assert both.implement.kind == "dumbbells"


def test_with_a_wrap_on_one_arm_after_the_other_holds_one_dumbbell(one_exercise: One) -> None:
    details = {"limb": "upper-arm", "restriction": "wrap", "both_at_once": False}
    sets = [{"reps": 30, "load": {"basis": "kg", "kg": 6}}]
    done = one_exercise("dumbbell-curl", sets, method="occlusion", details=details)
    assert done.implement.kind == "dumbbell"


def test_occlusion_work_is_locked_whatever_the_block_says(one_exercise: One) -> None:
    done = one_exercise(
        "barbell-curl",
        [{"reps": 30, "load": {"basis": "kg", "kg": 22}}],
        method="occlusion",
        details={"limb": "upper-arm", "restriction": "wrap"},
    )
    assert done.locked


def test_alone_without_safeties_is_told_apart_from_alone_with_them(worked_out: WorkOut) -> None:
    cellar = worked_out().sheets[0].exercises[0].cautions
    boathouse = worked_out(kit=load("kits", "boathouse")).sheets[0].exercises[0].cautions
    assert any("set the safeties" in line for line in cellar)
    assert any("no safeties here" in line for line in boathouse)


def test_sessions_left_out_are_not_worked_out(worked_out: WorkOut) -> None:
    sheets = worked_out(leave_out=("w1-mon", "w1-wed")).sheets
    assert [sheet.session for sheet in sheets] == ["w1-fri", "w2-mon", "w2-wed", "w2-fri"]


def test_each_session_has_its_day_in_the_calendar(worked_out: WorkOut) -> None:
    days = [str(sheet.on) for sheet in worked_out().sheets]
    assert days == [
        "2026-11-30", "2026-12-02", "2026-12-04", "2026-12-07", "2026-12-09", "2026-12-11",
    ]  # fmt: skip


def test_the_fetching_list_holds_the_most_plates_that_any_set_asks_for(worked_out: WorkOut) -> None:
    monday = worked_out().sheets[0]
    assert {"Steel bar", "Bench"} < set(monday.needs)
    on_the_bar = [Counter(load.side) for load in loads_of(monday) if load.side]
    asked = {mass: 2 * max(one[mass] for one in on_the_bar) for mass in set().union(*on_the_bar)}
    listed = {f"{count} × {mass:g} kg" for mass, count in asked.items()}
    assert listed == {need for need in monday.needs if re.fullmatch(r"\d+ × [\d.]+ kg", need)}
