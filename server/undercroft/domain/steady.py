"""Plates for a bar that is light enough to turn over: the steadiest way first, then few handlings.

The fewest handlings hang the heaviest plate first, and that is what turns a light bar. Where a plan
falls under the margin that is enough, the plan is taken whose smallest margin, from the bare bar
through all sets and back, is greatest; only among plans alike in that do handlings count.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import chain, groupby, islice, pairwise

from undercroft.domain.handling import (
    HandlingPlan,
    Stack,
    choices_of,
    handlings_between,
    plan,
    steps_through,
)
from undercroft.domain.kit import Plate
from undercroft.domain.loads import Aim, nearest
from undercroft.domain.plates import PlateTable, side_grains

Margin = Callable[[Stack, Stack], float]
"""The smallest margin on the way from one stack to another, with both sleeves loaded alike."""

MOST_STACKS = 60
"""Stacks that are weighed for one set, those of the fewest plates first: our own choice. A sheet is
to be had in a second, and a light bar's short sleeve as a rule holds fewer."""

ALIKE = 1e-9
"""Margins that differ by less are the same: mirrored moves are added up in another order."""

Cost = tuple[int, int, int]
"""Handlings, grams missed, plates on the sleeve in all sets."""

NOTHING: Cost = (0, 0, 0)

Way = tuple[Cost, tuple[Stack, ...]]
"""What it has cost so far, and the stacks it led through."""

Layer = Mapping[Stack, Cost]
"""The stacks that a run of like sets may have, each with its misses and plates."""


def steady_plan(
    table: PlateTable, aims: Sequence[Aim], tolerance: float, margin: Margin, enough: float
) -> HandlingPlan:
    """Like `handling.plan`, but no way that falls under `enough` while a steadier one is there."""
    found = plan(table, aims, tolerance)
    if not aims or smallest(stacks_of(found), margin) >= enough:
        return found
    fits = [nearest(table, aim.kg, aim.upper_kg) for aim in aims]
    wanted = [choices_of(table, a, fit, tolerance) for a, fit in zip(aims, fits, strict=True)]
    runs = [(choice, len(list(same))) for choice, same in groupby(wanted)]
    layers = [_layer(table, choice, sets) for choice, sets in runs]
    if not all(layers):
        return found
    least = _steadiest(layers, margin, enough)
    if least <= smallest(stacks_of(found), margin):
        return found
    way = _cheapest(layers, margin, least)
    stacks = [stack for stack, (_, sets) in zip(way, runs, strict=True) for _ in range(sets)]
    steps = steps_through(table, fits, stacks)
    handlings = sum(len(step.take_off) + len(step.put_on) for step in steps)
    return HandlingPlan(steps, handlings, proven=False)


def stacks_of(found: HandlingPlan) -> list[Stack]:
    return [step.fit.load.plates for step in found.steps]


def smallest(stacks: Sequence[Stack], margin: Margin) -> float:
    """The smallest margin from the bare bar through these stacks and back to it."""
    return min(margin(a, b) for a, b in pairwise([(), *stacks, ()]))


def _layer(table: PlateTable, choice: Mapping[int, int], sets: int) -> Layer:
    rows = [row for row, side in enumerate(table.stacks.sides.tolist()) if side in choice]
    stacks = chain.from_iterable(_orders(table.sorts, _counts(table, row)) for row in rows)
    off = {stack: choice[side_grains(stack)] for stack in islice(stacks, MOST_STACKS)}
    return {stack: (0, grams, sets * len(stack)) for stack, grams in off.items()}


def _counts(table: PlateTable, row: int) -> tuple[int, ...]:
    return tuple(table.stacks.counts[row].tolist())


def _orders(sorts: Sequence[Plate], counts: tuple[int, ...]) -> Iterator[Stack]:
    """Every order of a stack's plates, each once, those with the lightest innermost first."""
    if not any(counts):
        yield ()
    for at in reversed(range(len(sorts))):
        if counts[at]:
            fewer = (*counts[:at], counts[at] - 1, *counts[at + 1 :])
            yield from ((sorts[at], *rest) for rest in _orders(sorts, fewer))


def _steadiest(layers: Sequence[Layer], margin: Margin, enough: float) -> float:
    """The greatest of all smallest margins, or `enough` where that can be had."""
    best: dict[Stack, float] = {(): enough}
    bare: Layer = {(): NOTHING}
    for layer in [*layers, bare]:
        before = sorted(best.items(), key=lambda one: -one[1])
        best = {stack: _reached(before, stack, margin) for stack in layer}
    return best[()]


def _reached(before: Sequence[tuple[Stack, float]], stack: Stack, margin: Margin) -> float:
    found = -1.0
    for other, least in before:
        if least <= found:
            break
        found = max(found, min(least, margin(other, stack)))
    return found


def _cheapest(layers: Sequence[Layer], margin: Margin, least: float) -> tuple[Stack, ...]:
    """Of the ways that nowhere fall under `least` the cheapest."""
    ways: list[Way] = [(NOTHING, ((),))]
    for layer in layers:
        onto = [_first(_onto(ways, stack, cost), margin, least) for stack, cost in layer.items()]
        ways = [way for way in onto if way is not None]
    ends = (way for _, way in sorted(ways, key=_cost) if margin(way[-1], ()) >= least - ALIKE)
    return next(ends)[1:]


def _onto(ways: Sequence[Way], stack: Stack, cost: Cost) -> list[Way]:
    """Every way with one stack more, the cheapest first."""
    _, off, hung = cost
    return sorted(
        (
            ((n + handlings_between(way[-1], stack), grams + off, plates + hung), (*way, stack))
            for (n, grams, plates), way in ways
        ),
        key=_cost,
    )


def _first(ways: Sequence[Way], margin: Margin, least: float) -> Way | None:
    return next((one for one in ways if margin(*one[1][-2:]) >= least - ALIKE), None)


def _cost(way: Way) -> Cost:
    return way[0]
