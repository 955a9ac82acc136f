"""Accepted loads stay with the sets that they were proposed for, whoever changed what meanwhile."""

from dataclasses import replace
from datetime import date

from tests.domain.program.plans import block, exercise, kg, session, sets, week

from undercroft.domain.program.block import Block, ExercisePlan, Rest
from undercroft.domain.program.own import Layer, Stand, between, laid_over, stand_of
from undercroft.domain.proposals import with_accepted

TODAY = date(2026, 11, 2)
LATER = date(2026, 11, 9)
TENS = exercise("back-squat", sets(3, 10, kg(60)))
FIVES = exercise("back-squat", sets(3, 5, kg(80)))


def of(plan: ExercisePlan) -> Block:
    return block(week(session(plan)))


def rested(plan: ExercisePlan) -> ExercisePlan:
    return replace(plan, rest=Rest(240, 300))


def loaded(plan: ExercisePlan, load: float) -> ExercisePlan:
    return replace(plan, sets=tuple(replace(one, load=kg(load)) for one in plan.sets))


def written(plan: ExercisePlan, own: ExercisePlan) -> Layer:
    layer, misfits = between(of(plan), of(own), Layer(), TODAY)
    assert misfits == ()
    return layer


def accepted(layer: Layer, sent: ExercisePlan, load: float) -> Layer:
    loads = {("w1.day1", one.key): kg(load) for one in sent.sets}
    return with_accepted(layer, of(sent), loads, LATER)


RESTED = written(TENS, rested(TENS))


def test_a_load_for_fives_is_never_done_for_the_tens_of_an_older_change() -> None:
    """The athlete's own rest was written when the block still said tens."""
    layer = accepted(RESTED, rested(FIVES), 82.5)
    assert laid_over(of(FIVES), layer) == of(loaded(rested(FIVES), 82.5))
    assert [stand_of(one, of(FIVES)) for one in layer.changes] == [Stand.KEPT]


def test_a_load_for_a_set_that_the_block_has_got_since_outlasts_the_next_sending() -> None:
    more = exercise("back-squat", sets(4, 10, kg(60)))
    layer = accepted(RESTED, rested(more), 62.5)
    assert laid_over(of(more), layer) == of(loaded(rested(more), 62.5))


def test_a_load_of_the_block_that_has_moved_is_no_clash_with_what_is_accepted_on_it() -> None:
    layer = accepted(RESTED, rested(loaded(TENS, 65)), 67.5)
    assert [stand_of(one, of(loaded(TENS, 65))) for one in layer.changes] == [Stand.KEPT]


def test_a_load_is_not_put_on_another_exercise_that_was_written_meanwhile() -> None:
    front = written(TENS, replace(TENS, exercise="front-squat"))
    assert accepted(front, TENS, 62.5) == front


def test_a_load_is_not_put_on_other_repetitions_that_were_written_meanwhile() -> None:
    twelves = replace(TENS, sets=tuple(replace(one, reps=12, load=kg(50)) for one in TENS.sets))
    layer = written(TENS, twelves)
    assert accepted(layer, TENS, 62.5) == layer
