"""One athlete's own changes lie over the block, and what the coach writes beneath comes through."""

from dataclasses import replace
from datetime import date
from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from tests.domain.program.plans import CATALOGUE, block, exercise, kg, session, sets, week

from undercroft.domain.program.block import Block, ExercisePlan, Rest, SessionPlan, SetPlan
from undercroft.domain.program.own import (
    Layer,
    Stand,
    between,
    dropped,
    kept_as_own,
    laid_over,
    path_beneath,
    stand_of,
    told,
)

TODAY = date(2026, 11, 2)
LATER = date(2026, 11, 9)
SQUAT = exercise("back-squat", sets(4, 5, kg(85.5)))
PRESS = exercise("bench-press", sets(3, 6, kg(55)))
ROW = exercise("barbell-row", sets(3, 8, kg(60)))
BLOCK = block(week(session(SQUAT, PRESS), session(ROW, day=3)), week(session(SQUAT), number=2))
SQUATS = ("w1.day1", "back-squat")


def changed(plan: Block, of: str, change: Any, where: str = "w1.day1") -> Block:
    """The block with one exercise of one session changed; None takes it out."""

    def in_session(one: SessionPlan) -> SessionPlan:
        if one.key != where:
            return one
        parts = [change(e) if e.key == of else e for e in one.exercises]
        return replace(one, exercises=tuple(part for part in parts if part is not None))

    return each_session(plan, lambda one: (in_session(one),))


def each_session(plan: Block, change: Any) -> Block:
    weeks = tuple(
        replace(one, sessions=tuple(new for old in one.sessions for new in change(old)))
        for one in plan.weeks
    )
    return replace(plan, weeks=weeks)


def with_load(load: float) -> Any:
    return lambda plan: replace(plan, sets=tuple(replace(s, load=kg(load)) for s in plan.sets))


def with_one_set_less(plan: ExercisePlan) -> ExercisePlan:
    return replace(plan, sets=plan.sets[:-1])


def layer_of(own: Block, plan: Block = BLOCK, before: Layer | None = None) -> Layer:
    layer, misfits = between(plan, own, before or Layer(), TODAY)
    assert misfits == ()
    return layer


HEAVIER = changed(BLOCK, "back-squat", with_load(87.5))


def words(layer: Layer, plan: Block = BLOCK) -> list[str]:
    return [f"{one.where}: {one.what}" for one in told(layer, plan, CATALOGUE)]


def test_without_own_changes_the_block_is_the_block() -> None:
    assert layer_of(BLOCK) == Layer()
    assert laid_over(BLOCK, Layer()) is BLOCK


def test_another_load_is_told_with_what_the_block_says_beneath() -> None:
    assert words(layer_of(HEAVIER)) == [
        "Week 1, Monday: back squat 87.5 kg instead of 85.5 kg",
    ]


def test_what_the_coach_changes_elsewhere_in_the_exercise_comes_through() -> None:
    layer = layer_of(HEAVIER)
    rested = changed(BLOCK, "back-squat", lambda e: replace(e, rest=Rest(240, 240), cue="Slow"))
    assert laid_over(rested, layer) == changed(rested, "back-squat", with_load(87.5))
    assert stand_of(layer.changes[0], rested) is Stand.KEPT


def test_a_line_that_the_coach_changed_since_keeps_the_own_load_and_says_so() -> None:
    layer, moved = layer_of(HEAVIER), changed(BLOCK, "back-squat", with_load(90))
    assert laid_over(moved, layer) == HEAVIER
    (line,) = told(layer, moved, CATALOGUE)
    assert line.stand is Stand.CLASH
    assert line.what == "back squat 87.5 kg instead of 90 kg"
    assert line.beneath == "the block’s line changed since: back squat 90 kg instead of 85.5 kg"


def test_fewer_repetitions_in_the_block_do_not_meet_an_own_load_unseen() -> None:
    """A load is meant for its repetitions: the set is one part."""
    threes = changed(
        BLOCK, "back-squat", lambda e: replace(e, sets=tuple(replace(s, reps=3) for s in e.sets))
    )
    assert stand_of(layer_of(HEAVIER).changes[0], threes) is Stand.CLASH


def test_a_clash_is_decided_for_the_own_load() -> None:
    moved = changed(BLOCK, "back-squat", with_load(90))
    layer = kept_as_own(layer_of(HEAVIER), moved, [SQUATS])
    assert stand_of(layer.changes[0], moved) is Stand.KEPT
    assert laid_over(moved, layer) == HEAVIER


def test_a_clash_is_decided_for_the_block() -> None:
    moved = changed(BLOCK, "back-squat", with_load(90))
    assert laid_over(moved, dropped(layer_of(HEAVIER), [SQUATS])) == moved


def test_a_block_that_says_the_same_by_now_leaves_nothing_to_tell() -> None:
    layer = layer_of(HEAVIER)
    assert words(layer, HEAVIER) == []
    assert layer_of(HEAVIER, HEAVIER, layer) == Layer()


def test_an_exercise_that_is_gone_from_the_block_changes_nothing_and_is_told() -> None:
    layer = layer_of(HEAVIER)
    without = changed(BLOCK, "back-squat", lambda _: None)
    assert laid_over(without, layer) == without
    (line,) = told(layer, without, CATALOGUE)
    assert (line.stand, line.beneath) == (Stand.GONE, "the block has it no more")
    assert line.what == "back squat 87.5 kg instead of 85.5 kg"


def test_a_session_that_is_gone_is_told_and_waits_for_a_decision() -> None:
    layer = layer_of(HEAVIER)
    without = each_session(BLOCK, lambda one: () if one.key == "w1.day1" else (one,))
    assert words(layer, without) == [
        "a session that is gone: back squat 87.5 kg instead of 85.5 kg"
    ]
    assert layer_of(without, without, layer) == layer
    assert laid_over(BLOCK, layer) == HEAVIER


def test_an_exercise_left_out_is_left_out_whatever_the_coach_adds_to_it() -> None:
    layer = layer_of(changed(BLOCK, "bench-press", lambda _: None))
    assert words(layer) == ["Week 1, Monday: bench press is left out"]
    more = changed(BLOCK, "bench-press", with_load(60))
    assert laid_over(more, layer) == changed(more, "bench-press", lambda _: None)
    assert stand_of(layer.changes[0], more) is Stand.CLASH


def test_an_exercise_of_ones_own_stands_after_the_one_it_was_added_after() -> None:
    own = each_session(
        BLOCK,
        lambda one: (
            (replace(one, exercises=(SQUAT, ROW, PRESS)),) if one.key == "w1.day1" else (one,)
        ),
    )
    layer = layer_of(own)
    assert laid_over(BLOCK, layer) == own
    assert words(layer) == ["Week 1, Monday: barbell row is added: 3 × 8 at 60 kg"]
    without = changed(BLOCK, "back-squat", lambda _: None)
    (first, *_) = laid_over(without, layer).weeks[0].sessions
    assert [one.key for one in first.exercises] == ["bench-press", "barbell-row"]


def test_a_session_left_out_takes_its_own_changes_along_and_gives_them_back() -> None:
    layer = layer_of(HEAVIER)
    travels = each_session(HEAVIER, lambda one: () if one.key == "w1.day1" else (one,))
    away = layer_of(travels, BLOCK, layer)
    assert laid_over(BLOCK, away) == travels
    assert laid_over(BLOCK, dropped(away, [("w1.day1", "")])) == HEAVIER


def test_a_session_on_another_day_keeps_what_the_coach_writes_into_it() -> None:
    tuesday = each_session(
        BLOCK, lambda one: (replace(one, day=2) if one.key == "w1.day1" else one,)
    )
    layer = layer_of(tuesday)
    assert words(layer) == ["Week 1, Monday: on Tuesday instead of Monday"]
    moved = changed(BLOCK, "back-squat", with_load(90))
    assert laid_over(moved, layer) == changed(tuesday, "back-squat", with_load(90))


def test_a_session_moved_past_another_stands_after_it() -> None:
    def to_thursday(one: SessionPlan) -> tuple[SessionPlan, ...]:
        return (replace(one, day=4) if one.key == "w1.day1" else one,)

    moved = each_session(BLOCK, to_thursday)
    first, *others = moved.weeks
    own = replace(moved, weeks=(replace(first, sessions=first.sessions[::-1]), *others))
    assert laid_over(BLOCK, layer_of(own)) == own


def test_an_own_set_less_stays_less_while_loads_move_beneath() -> None:
    layer = layer_of(changed(BLOCK, "back-squat", with_one_set_less))
    moved = changed(BLOCK, "back-squat", with_load(90))
    assert laid_over(moved, layer) == changed(
        changed(BLOCK, "back-squat", with_load(90)), "back-squat", with_one_set_less
    )


def test_another_exercise_is_one_part_with_its_sets() -> None:
    """The block's kilograms for one lift are none for another."""
    front = changed(BLOCK, "back-squat", lambda e: replace(e, exercise="front-squat"))
    layer = layer_of(front)
    assert words(layer) == ["Week 1, Monday: front squat in place of back squat"]
    moved = changed(BLOCK, "back-squat", with_load(90))
    assert laid_over(moved, layer) == front
    assert stand_of(layer.changes[0], moved) is Stand.CLASH


def test_what_was_not_touched_keeps_the_line_it_was_made_for() -> None:
    """To change the press is no word on the squat that clashes."""
    before, moved = layer_of(HEAVIER), changed(BLOCK, "back-squat", with_load(90))
    own = changed(laid_over(moved, before), "bench-press", with_load(50))
    layer, _ = between(moved, own, before, LATER)
    stands = {one.exercise: stand_of(one, moved) for one in layer.changes}
    assert stands == {"back-squat": Stand.CLASH, "bench-press": Stand.KEPT}


def test_a_session_of_ones_own_belongs_into_the_block() -> None:
    own = each_session(
        BLOCK, lambda one: (one, replace(one, key="extra", day=6)) if one.day == 3 else (one,)
    )
    layer, (misfit,) = between(BLOCK, own, Layer(), TODAY)
    assert layer == Layer()
    assert misfit.where == "week 1, Saturday"
    assert misfit.path == "weeks.0.sessions.2"
    assert misfit.right == "add the session to the block"


def test_another_order_of_exercises_belongs_into_the_block() -> None:
    own = each_session(BLOCK, lambda one: (replace(one, exercises=one.exercises[::-1]),))
    _, (misfit,) = between(BLOCK, own, Layer(), TODAY)
    assert "another order" in misfit.what


def test_a_finding_for_the_athlete_stands_at_its_line_of_the_block() -> None:
    own = changed(BLOCK, "back-squat", lambda _: None)
    first_press = "weeks.0.sessions.0.exercises.0.sets.1.load"
    assert path_beneath(first_press, own, BLOCK) == "weeks.0.sessions.0.exercises.1.sets.1.load"
    assert path_beneath(first_press, BLOCK, own) == "weeks.0.sessions.0"
    assert path_beneath("", own, BLOCK) == ""


LOADS = st.sampled_from([80.0, 85.5, 90.0]).map(kg)
SETS = st.lists(
    st.builds(SetPlan, st.sampled_from("abcd"), LOADS, st.integers(1, 6)),
    min_size=1,
    max_size=4,
    unique_by=lambda one: one.key,
).map(tuple)
NAMES = ("back-squat", "bench-press", "barbell-row")
EXERCISES = st.lists(
    st.builds(
        lambda key, name, plan_sets, rest: ExercisePlan(
            key, name, SQUAT.method, plan_sets, rest=rest
        ),
        st.sampled_from("xyz"),
        st.sampled_from(NAMES),
        SETS,
        st.sampled_from([None, Rest(60, 90)]),
    ),
    min_size=1,
    max_size=3,
    unique_by=lambda one: one.key,
).map(lambda some: tuple(sorted(some, key=lambda one: one.key)))
DAYS = st.lists(EXERCISES, min_size=1, max_size=2)


def days(some: list[tuple[ExercisePlan, ...]]) -> Block:
    return block(week(*(session(*one, day=n + 1) for n, one in enumerate(some))))


@given(DAYS, DAYS)
def test_the_layer_makes_exactly_what_was_written_for_the_athlete(plan: Any, own: Any) -> None:
    theirs, ours = days(plan), days(own[: len(plan)])
    assert laid_over(theirs, layer_of(ours, theirs)) == ours


@given(DAYS, DAYS, DAYS)
def test_what_only_the_coach_changes_is_what_the_athlete_gets(a: Any, b: Any, own: Any) -> None:
    """However the coach moves on, an exercise without an own change is the coach's."""
    then, now = days(a), days(b)
    layer = layer_of(days(own[: len(a)]), then)
    places = {one.place for one in layer.changes}
    got = {s.key: s for one in laid_over(now, layer).weeks for s in one.sessions}
    for one in now.weeks[0].sessions:
        if (one.key, "") not in places:
            untouched = [e for e in one.exercises if (one.key, e.key) not in places]
            assert [e for e in got[one.key].exercises if e in untouched] == untouched
