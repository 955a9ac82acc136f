"""An exercise in its test week: attempts at a maximum in place of its sets."""

from dataclasses import replace

from undercroft.domain.program.block import ExercisePlan, Rest, SetPlan
from undercroft.domain.program.methods import Method, TestRule
from undercroft.domain.program.unfolding.keys import derived
from undercroft.domain.program.wish import OfMaximum, WhenUnknown

ATTEMPTS = (90.0, 95.0, 100.0, 102.5)
"""Percent of the maximum of each single: it should be reached in three to five attempts (handbook
test protocol, seen); the steps are our own choice."""

TEST_REST = Rest(180, 300)
"""Three to five minutes between attempts (ACSM 9th edition, seen in a copy)."""


def as_test(plan: ExercisePlan) -> ExercisePlan:
    """The exercise as a maximum test: singles, no bands or chains, ramp and rest as for a test."""
    taken = {one.key for one in plan.sets}
    singles = tuple(
        SetPlan(
            key=derived(plan.key, number, "try", taken),
            load=OfMaximum(percent, when_unknown=WhenUnknown.FIND),
            reps=1,
        )
        for number, percent in enumerate(ATTEMPTS, start=1)
    )
    return replace(
        plan,
        method=Method.MAXIMUM_TEST,
        details=TestRule(reps=1, attempts=len(ATTEMPTS)),
        sets=singles,
        rest=TEST_REST,
        group=None,
        rig=None,
        warm_up=None,
    )
