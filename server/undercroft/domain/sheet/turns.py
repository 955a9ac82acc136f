"""Which sets of a session tell something of a maximum, and what they were planned to be."""

from collections.abc import Iterator

from undercroft.domain.exercise import Implement
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.methods import EVIDENCE_METHODS, Method
from undercroft.domain.program.wish import ByReserve, OfMaximum
from undercroft.domain.strength import PlannedSet, PlannedTurn, repetitions_at
from undercroft.domain.strength.evidence import Planned, PlannedTest
from undercroft.domain.strength.reserve import FEWEST, HANDBOOK, MOST

WEIGHTLESS = frozenset({Implement.BODY, Implement.BAND})
"""Implements whose loads say nothing of a maximum in kilograms."""


def gives_evidence(plan: ExercisePlan, implement: Implement) -> bool:
    """Can sets of this exercise speak for the maximum of its lift?

    With bands or chains they cannot: the mass on the bar is not what was lifted.
    """
    free = plan.rig is None and implement not in WEIGHTLESS
    return free and plan.method in EVIDENCE_METHODS


def planned_set(one: SetPlan) -> PlannedSet | None:
    """Repetitions and reserve as planned; None where the plan leaves the reserve open."""
    rir = planned_rir(one)
    if one.reps is None or rir is None or not FEWEST <= one.reps + rir <= MOST:
        return None
    return PlannedSet(one.reps, rir)


def asked_rir(plan: ExercisePlan, one: SetPlan) -> float | None:
    """The reserve that the athlete is asked for.

    A share of the maximum implies one only where sets go near their limit: not in speed sets, not
    with bands, and not in the attempts of a test.
    """
    heavy = plan.method in (Method.STRAIGHT, Method.TOP_AND_BACK_OFF) and plan.rig is None
    return planned_rir(one) if heavy else _stated_rir(one)


def planned_rir(one: SetPlan) -> float | None:
    """Reserve said by the set, by its load wish, or implied by its share of the maximum."""
    stated = _stated_rir(one)
    if stated is None and isinstance(one.load, OfMaximum):
        return _implied(one.load, one.reps)
    return stated


def _stated_rir(one: SetPlan) -> float | None:
    if one.to_failure:
        return 0.0
    if one.rir is None and isinstance(one.load, ByReserve):
        return one.load.rir
    return one.rir


def _implied(load: OfMaximum, reps: int | None) -> float | None:
    part = load.percent / 100
    own = load.of is None and load.ratio == 1
    if reps is None or not own or not HANDBOOK.shares[-1] <= part <= 1:
        return None
    return max(0.0, repetitions_at(part) - reps)


def turn_of(plan: ExercisePlan, one: SetPlan) -> PlannedTurn | None:
    """The set as a turn of its lift's notch table, or None where it will tell nothing."""
    planned: Planned | None = planned_set(one)
    if plan.method is Method.MAXIMUM_TEST and one.reps == 1:
        planned = PlannedTest()
    if planned is None:
        return None
    if isinstance(one.load, OfMaximum) or isinstance(planned, PlannedTest):
        return PlannedTurn(planned, FEWEST)
    return PlannedTurn(planned, planned.reps + planned.rir)


def turns_of_session(
    session: SessionPlan, implement_of: dict[str, Implement]
) -> Iterator[tuple[str, str, PlannedTurn]]:
    """(lift, set key, turn) of every set that will give evidence, in plan order.

    `implement_of` gives what each exercise of the plan is done with, by the exercise's key.
    """
    for plan in session.exercises:
        if gives_evidence(plan, implement_of[plan.key]):
            for one in plan.sets:
                if (turn := turn_of(plan, one)) is not None:
                    yield plan.exercise, one.key, turn
