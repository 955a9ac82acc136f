"""Each rule of progression: what an exercise of the first week becomes so many steps later.

Rules that list a value for each week set the first week too, and hold their last value in weeks
beyond the list. Where several sets have different percentages, the heaviest takes the rule's value
and the others keep their distance from it.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import ceil
from typing import TypeVar

from undercroft.domain.errors import DomainError
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.progression import (
    AddKg,
    AddPercent,
    DoubleProgression,
    FallingReserve,
    PercentByWeek,
    Progression,
    RisingSets,
    Wave,
)
from undercroft.domain.program.unfolding.keys import derived
from undercroft.domain.program.unfolding.loads import scaled, with_kg, with_percent, with_reserve
from undercroft.domain.program.wish import BodyMass, Fixed, LoadWish, OfMaximum

MOST_KG, MOST_PERCENT = 600.0, 150.0
"""Loads beyond these are no loads; the block document refuses them as well."""

T = TypeVar("T")


class Unfoldable(DomainError):
    """A rule that cannot be applied to an exercise; `where` is the exercise's key until placed."""


def unfolded(
    plan: ExercisePlan, rule: Progression | None, step: int, again: bool = False
) -> ExercisePlan:
    """The exercise `step` steps after the first week (0); `again`: the week before was as far.

    Raises Unfoldable where its sets have nothing that the rule moves, or loads would leave what
    can be.
    """
    match rule:
        case AddKg(kg=kg):
            last = kg if step and not again else 0.0
            moved = _loads(plan, lambda load: with_kg(load, kg * step, last), rule)
        case AddPercent(percent=percent):
            moved = _loads(plan, lambda load: with_percent(load, percent * step), rule)
        case PercentByWeek(percents=percents):
            moved = _at_percent(plan, held(percents, step), rule)
        case Wave(percents=percents, step_percent=rise):
            value = percents[step % len(percents)] + rise * (step // len(percents))
            moved = _at_percent(plan, value, rule)
        case DoubleProgression():
            moved = _double(plan, rule, step, again)
        case FallingReserve(rirs=rirs):
            moved = _reserve(plan, held(rirs, step))
        case RisingSets(sets=counts):
            moved = with_sets(plan, held(counts, step))
        case _:
            moved = plan
    return _possible(moved)


def light(plan: ExercisePlan, factor: float) -> ExercisePlan:
    """The exercise in a light week: loads at the factor, or fewer sets where no load is written.

    A lighter load leaves more in reserve than was written, so none is asked for.
    """
    loads = [scaled(one.load, factor) for one in plan.sets]
    if any(loads):
        sets = zip(plan.sets, loads, strict=True)
        return replace(
            plan,
            sets=tuple(
                one if load is None else replace(one, load=load, rir=None) for one, load in sets
            ),
        )
    return with_sets(plan, max(1, ceil(len(plan.sets) * factor)))


def with_sets(plan: ExercisePlan, count: int) -> ExercisePlan:
    """The first so many sets, or the last one again and again under keys of its own."""
    taken = {one.key for one in plan.sets}
    last = plan.sets[-1]
    more = (
        replace(last, key=derived(last.key, number, "s", taken))
        for number in range(len(plan.sets) + 1, count + 1)
    )
    return replace(plan, sets=(*plan.sets[:count], *more))


def held(values: Sequence[T], step: int) -> T:
    """The value of a step, and the last one beyond the list."""
    return values[min(step, len(values) - 1)]


def _loads(
    plan: ExercisePlan, move: Callable[[LoadWish], LoadWish | None], rule: Progression
) -> ExercisePlan:
    moved = [move(one.load) for one in plan.sets]
    if not any(moved):
        raise Unfoldable(plan.key, *_NOTHING_TO_MOVE[type(rule)])
    sets = zip(plan.sets, moved, strict=True)
    return replace(
        plan, sets=tuple(one if load is None else replace(one, load=load) for one, load in sets)
    )


def _at_percent(plan: ExercisePlan, percent: float, rule: Progression) -> ExercisePlan:
    points = [one.load.percent for one in plan.sets if isinstance(one.load, OfMaximum)]
    more = percent - max(points, default=0.0)
    return _loads(
        plan, lambda load: with_percent(load, more) if isinstance(load, OfMaximum) else None, rule
    )


def _double(plan: ExercisePlan, rule: DoubleProgression, step: int, again: bool) -> ExercisePlan:
    if rule.reps_to < rule.reps_from:
        told = f"double progression from {rule.reps_from} to {rule.reps_to} repetitions"
        raise Unfoldable(plan.key, told, "should rise")
    rounds, further = divmod(step, rule.reps_to - rule.reps_from + 1)
    new_round = step > 0 and further == 0 and not again
    since_last = rule.add_kg if new_round else 0.0
    loaded = _loads(plan, lambda load: with_kg(load, rule.add_kg * rounds, since_last), rule)
    reps = rule.reps_from + further
    return replace(loaded, sets=tuple(replace(one, reps=reps) for one in loaded.sets))


def _reserve(plan: ExercisePlan, rir: float) -> ExercisePlan:
    def eased(one: SetPlan) -> SetPlan:
        if one.to_failure:
            return one
        return replace(one, rir=rir, load=with_reserve(one.load, rir))

    return replace(plan, sets=tuple(map(eased, plan.sets)))


def _possible(plan: ExercisePlan) -> ExercisePlan:
    for number, one in enumerate(plan.sets, start=1):
        match one.load:
            case OfMaximum(percent=percent) if not 0 < percent <= MOST_PERCENT:
                told = f"set {number} would come to {percent:g} % of the maximum"
                raise Unfoldable(plan.key, told, f"should stay above 0 and to {MOST_PERCENT:g} %")
            case Fixed(kg=kg) if not 0 < kg <= MOST_KG:
                told = f"set {number} would come to {kg:g} kg"
                raise Unfoldable(plan.key, told, f"should stay above 0 and to {MOST_KG:g} kg")
            case BodyMass(add_kg=kg) if abs(kg) > MOST_PERCENT:
                told = f"set {number} would come to {kg:+g} kg on the body"
                raise Unfoldable(plan.key, told, f"should stay within {MOST_PERCENT:g} kg")
    return plan


_IN_KG = "write at least one set in kg, as last time, or as body mass with kg"
_NOTHING_TO_MOVE: dict[type, tuple[str, str]] = {
    AddKg: ("no set has kilograms that could be added to", _IN_KG),
    AddPercent: (
        "no set has a percentage or kilograms that could rise",
        "write at least one set as % of a maximum or in kg",
    ),
    PercentByWeek: (
        "no set is written as % of a maximum",
        "write at least one set as % of a maximum, or take another rule",
    ),
    Wave: (
        "no set is written as % of a maximum",
        "write at least one set as % of a maximum, or take another rule",
    ),
    DoubleProgression: ("no set has kilograms that could be added to", _IN_KG),
}
