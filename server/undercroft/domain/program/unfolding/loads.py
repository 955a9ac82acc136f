"""How a rule moves the load wish of one set. None where the rule has nothing to move there."""

from dataclasses import replace

from undercroft.domain.program.wish import (
    AsLastTime,
    BodyMass,
    ByReserve,
    Fixed,
    LoadWish,
    OfMaximum,
)

GRAIN = 4
"""Decimals to which loads and percentages are kept, so that sums read as they were meant."""


def with_kg(load: LoadWish, all_kg: float, since_last_kg: float) -> LoadWish | None:
    """`all_kg` more than the first week; where a wish says "as last time" only the last step."""
    match load:
        case Fixed(kg=kg):
            return replace(load, kg=round(kg + all_kg, GRAIN))
        case BodyMass(add_kg=kg):
            return replace(load, add_kg=round(kg + all_kg, GRAIN))
        case AsLastTime(add_kg=kg):
            return replace(load, add_kg=round(kg + since_last_kg, GRAIN))
        case _:
            return None


def with_percent(load: LoadWish, percent: float) -> LoadWish | None:
    """So many points of the maximum more; kilograms by so many percent of the first week's."""
    match load:
        case OfMaximum(percent=points):
            return replace(load, percent=round(points + percent, GRAIN))
        case Fixed(kg=kg):
            return replace(load, kg=round(kg * (1 + percent / 100), GRAIN))
        case _:
            return None


def scaled(load: LoadWish, factor: float) -> LoadWish | None:
    """The load at a factor: percentages, kilograms, and what hangs on the body."""
    match load:
        case OfMaximum(percent=points):
            return replace(load, percent=round(points * factor, GRAIN))
        case Fixed(kg=kg):
            return replace(load, kg=round(kg * factor, GRAIN))
        case BodyMass(add_kg=kg) if kg > 0:
            return replace(load, add_kg=round(kg * factor, GRAIN))
        case _:
            return None


def with_reserve(load: LoadWish, rir: float) -> LoadWish:
    """The reserve that a load is found by; other loads stay."""
    return replace(load, rir=rir) if isinstance(load, ByReserve) else load
