"""What the sets of a plan wish for when another exercise is done in their place.

Kilograms that were written for one exercise are none for another: where the other's own maximum or
last time gives no load, the athlete finds it by feel.
"""

from undercroft.domain.exercise import Implement
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.wish import (
    AsLastTime,
    BodyMass,
    ByReserve,
    Fixed,
    OfMaximum,
    OfTopSet,
)
from undercroft.domain.sheet.day import Day
from undercroft.domain.sheet.wishes import UnknownMaximum, WishedLoad, by_feel, wished_load


def swapped_wishes(day: Day, swapped: ExercisePlan) -> list[WishedLoad]:
    """One for each set of the plan, whose exercise is already the other one."""
    first = _swapped(day, swapped, swapped.sets[0], None)
    rest = swapped.sets[1:]
    return [first, *(_swapped(day, swapped, one, first.kg) for one in rest)]


def _swapped(day: Day, swapped: ExercisePlan, one: SetPlan, first_kg: float | None) -> WishedLoad:
    if not _carries_over(day, swapped, one, first_kg):
        return by_feel(one)
    try:
        return wished_load(day, swapped, one, first_kg)
    except UnknownMaximum:
        return by_feel(one)


def _carries_over(day: Day, swapped: ExercisePlan, one: SetPlan, first_kg: float | None) -> bool:
    match one.load:
        case OfMaximum(of=of, ratio=ratio):
            return of is None and ratio == 1
        case ByReserve():
            return True
        case AsLastTime():
            return swapped.exercise in day.standing.last_kg
        case OfTopSet():
            return first_kg is not None
        case BodyMass():
            return day.catalogue[swapped.exercise].implement is Implement.BODY
        case Fixed():
            return False
        case _:
            return True
