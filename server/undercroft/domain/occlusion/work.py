"""An occlusion exercise as planned: what of it the limits look at."""

from dataclasses import dataclass

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import Limb, OcclusionRule, Restriction
from undercroft.domain.program.wish import OfMaximum

HAIR = 1e-6
"""Shares that were worked out may miss their limit by the last digit."""


@dataclass(frozen=True, slots=True)
class WorkSet:
    """`reps` is the aim; None where the set only goes to failure."""

    reps: int | None
    to_failure: bool = False
    rir: float | None = None


@dataclass(frozen=True, slots=True)
class Work:
    """Times in seconds; `load_percent` of the one-repetition maximum, None where unknown."""

    limb: Limb
    restriction: Restriction
    sets: tuple[WorkSet, ...]
    rest_from_s: int = LIMITS.rest_most_s
    rest_to_s: int = LIMITS.rest_most_s
    load_percent: float | None = None
    tightness: float | None = None
    pressure_percent: float | None = None
    both_at_once: bool = False
    rep_s: float = LIMITS.rep_s


def work_of(plan: ExercisePlan, load_percent: float | None = None) -> Work:
    """The occlusion work of an exercise plan; raises LoadError where its rule is missing.

    Where no rest is written the longest of the protocols counts.
    `load_percent` is the heaviest set's share of the maximum as it was worked out on the kit; left
    out, what the plan says of the exercise's own maximum.
    """
    rule = plan.details
    if not isinstance(rule, OcclusionRule):
        raise LoadError("details", rule, "the limb and what restricts its flow")
    rest = plan.rest
    return Work(
        limb=rule.limb,
        restriction=rule.restriction,
        sets=tuple(WorkSet(one.reps, one.to_failure, one.rir) for one in plan.sets),
        rest_from_s=LIMITS.rest_most_s if rest is None else rest.from_s,
        rest_to_s=LIMITS.rest_most_s if rest is None else rest.to_s,
        load_percent=_planned_percent(plan) if load_percent is None else load_percent,
        tightness=rule.tightness,
        pressure_percent=rule.pressure_percent,
        both_at_once=rule.both_at_once,
    )


def _planned_percent(plan: ExercisePlan) -> float | None:
    loads = [one.load for one in plan.sets]
    own = [w.percent for w in loads if isinstance(w, OfMaximum) and w.of is None and w.ratio == 1]
    return max(own) if own and len(own) == len(loads) else None
