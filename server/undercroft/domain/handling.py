"""Loads and plates for all sets of an exercise, with the fewest plates put on and taken off.

A sleeve is a stack, last on first off, so going from stack A to stack B costs |A| + |B| less twice
what they share from the inner end.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from undercroft.domain.errors import LoadError
from undercroft.domain.fewest import fewest_handlings
from undercroft.domain.kit import Plate
from undercroft.domain.lattice import Lattice, lattice, only_beneath, paths
from undercroft.domain.loads import (
    GRAINS_PER_KG,
    Aim,
    Fit,
    LoadTable,
    grains,
    kilograms,
    nearest,
)
from undercroft.domain.plates import PlateTable, side_grains, with_stack

GRAINS_PER_GRAM = GRAINS_PER_KG // 1000

Stack = tuple[Plate, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One set: the load, and per sleeve what comes off (outermost first) and then goes on."""

    fit: Fit
    take_off: Stack = ()
    put_on: Stack = ()


@dataclass(frozen=True, slots=True)
class HandlingPlan:
    """`handlings` counts plates put on and taken off one sleeve, starting from the bare sleeve.

    `proven` is False where the kit has too many stacks to weigh all of them, so that another plan
    might save a handling; the loads are exact all the same.
    """

    steps: tuple[Step, ...]
    handlings: int
    proven: bool


def plan(
    table: LoadTable, aims: Sequence[Aim], tolerance: float = 0.0, strip: bool = False
) -> HandlingPlan:
    """Load all sets in turn with the fewest handlings, then the smallest misses, then few plates.

    Each set gets the load nearest to its aim or, with `tolerance` (a share of the aim, 0.02 for
    2 %), any load within that and the bound. `strip` counts the last stripping too. Where nothing
    is hung on sleeves there are no handlings to save. Raises LoadError as `nearest` does.
    """
    if not 0 <= tolerance < 1:
        raise LoadError("tolerance", tolerance, "a share from 0 up to 1")
    fits = [nearest(table, aim.kg, aim.upper_kg) for aim in aims]
    if not isinstance(table, PlateTable) or not fits:
        return HandlingPlan(tuple(Step(fit) for fit in fits), 0, True)
    wanted = [choices_of(table, a, fit, tolerance) for a, fit in zip(aims, fits, strict=True)]
    runs = [(choice, len(list(same))) for choice, same in groupby(wanted)]
    choices, sets = [choice for choice, _ in runs], [number for _, number in runs]
    stacks = _reaching(table, choices, fits)
    found = fewest_handlings(only_beneath(stacks, set().union(*choices)), choices, sets, strip)
    orders = [stack for stack, number in zip(found, sets, strict=True) for _ in range(number)]
    steps = steps_through(table, fits, [tuple(table.sorts[at] for at in order) for order in orders])
    handlings = sum(len(step.take_off) + len(step.put_on) for step in steps)
    handlings += len(steps[-1].fit.load.plates) if strip else 0
    proven = stacks.plates_listed is None or handlings <= stacks.plates_listed
    return HandlingPlan(steps, handlings, proven)


def handlings_between(a: Stack, b: Stack) -> int:
    """Plates to take off and put on, on one sleeve, to go from stack `a` to stack `b`."""
    return len(a) + len(b) - 2 * _shared(a, b)


def choices_of(table: PlateTable, aim: Aim, fit: Fit, tolerance: float) -> dict[int, int]:
    """Sleeve masses that the set may have, each with the grams by which it misses the aim."""
    if not tolerance:
        return {side_grains(fit.load.plates): 0}
    target, slack = grains(aim.kg), grains(aim.kg * tolerance)
    bound = target + slack if aim.upper_kg is None else min(target + slack, grains(aim.upper_kg))
    low, high = bisect_left(table.grains, target - slack), bisect_right(table.grains, bound)
    near = bisect_left(table.grains, grains(fit.load.kg))
    return {
        table.sides[row]: abs(table.grains[row] - target) // GRAINS_PER_GRAM
        for row in {*range(low, high), near}
    }


def _reaching(table: PlateTable, choices: list[dict[int, int]], fits: list[Fit]) -> Lattice:
    """Stacks among which every set finds a load: all that the table lists, else fewer and fewer.

    A stack of more plates than are listed costs more handlings than that number, which is how a
    plan out of the table's list may be proven the best; the smaller lists prove nothing.
    """
    if _reaches(table.stacks, choices):
        return table.stacks
    own = [fit.load.plates for fit in fits]
    most = [max(stack.count(sort) for stack in own) for sort in table.sorts]
    sorts_in_use = [s.count if n else 0 for s, n in zip(table.sorts, most, strict=True)]
    heaviest = max(map(max, choices)) + grains(table.sleeves.collar_kg)
    sleeves = replace(table.sleeves, limit_kg=kilograms(heaviest))
    for counts in (sorts_in_use, most):
        fewer = [replace(s, count=n) for s, n in zip(table.sorts, counts, strict=True)]
        some = lattice(sleeves, tuple(fewer))
        if _reaches(some, choices):
            return replace(some, plates_listed=0)
    return replace(paths(table.sorts, own), plates_listed=0)


def _reaches(stacks: Lattice, choices: list[dict[int, int]]) -> bool:
    listed = set(stacks.sides.tolist())
    return all(not listed.isdisjoint(choice) for choice in choices)


def steps_through(
    table: PlateTable, fits: Sequence[Fit], orders: Sequence[Stack]
) -> tuple[Step, ...]:
    """The steps of a plan: each set's load on the stack that it was given."""
    steps = []
    standing: Stack = ()
    for fit, order in zip(fits, orders, strict=True):
        load = with_stack(table, order)
        off = kilograms(grains(load.kg) - grains(fit.load.kg)) + fit.off_kg
        kept = _shared(standing, order)
        steps.append(Step(replace(fit, load=load, off_kg=off), standing[kept:][::-1], order[kept:]))
        standing = order
    return tuple(steps)


def _shared(a: Stack, b: Stack) -> int:
    shared = 0
    for inner, other in zip(a, b, strict=False):
        if inner != other:
            break
        shared += 1
    return shared
