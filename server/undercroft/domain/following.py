"""The stack for a load, given what hangs on the sleeve already."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Plate
from undercroft.domain.lattice import Lattice
from undercroft.domain.loads import Load, nearest_many
from undercroft.domain.plates import PlateTable, in_order, side_grains
from undercroft.domain.stacks import Whole

MORE_THAN_ANY_STACK = 10_000


def loads_after(
    table: PlateTable,
    standing: Sequence[Plate],
    targets_kg: Sequence[float],
    upper_kg: float | None = None,
) -> tuple[Load, ...]:
    """The nearest load for each target, each with the stack that is fewest handlings away.

    `standing` is the stack on each sleeve now, innermost first, from a load of this table. Its
    inner part stays where the load allows it, and the rest goes on heaviest first. Meant for the
    notches around a set, after the set before it. Where a kit has too many stacks to list, a load
    that is not among them keeps the table's own stack.
    """
    sorts = [_sort_of(table, plate) for plate in standing]
    kept = _kept(table.stacks, sorts)
    away = (table.stacks.sizes - 2 * kept) * MORE_THAN_ANY_STACK + table.stacks.sizes
    loads = nearest_many(table, targets_kg, upper_kg)
    stacked: dict[float, Load] = {}
    for load in loads:
        if load.kg not in stacked:
            rows = np.flatnonzero(table.stacks.sides == side_grains(load.plates))
            best = int(rows[away[rows].argmin()]) if len(rows) else None
            stacked[load.kg] = load if best is None else _onto(table, load, sorts, kept, best)
    return tuple(stacked[load.kg] for load in loads)


def _sort_of(table: PlateTable, plate: Plate) -> int:
    if plate not in table.sorts:
        raise LoadError("standing plate", plate.label or plate.mass_kg, "a plate of this table")
    return table.sorts.index(plate)


def _kept(stacks: Lattice, standing: Sequence[int]) -> Whole:
    """For each stack, how much of the standing one it can keep from the inner end."""
    kept = np.zeros(len(stacks.sides), dtype=np.int64)
    holds = np.ones(len(stacks.sides), dtype=np.bool_)
    for at, sort in enumerate(standing):
        holds &= stacks.counts[:, sort] > standing[:at].count(sort)
        kept += holds
    return kept


def _onto(table: PlateTable, load: Load, standing: list[int], kept: Whole, row: int) -> Load:
    stays = standing[: int(kept[row])]
    counts = table.stacks.counts[row].tolist()
    for sort in stays:
        counts[sort] -= 1
    inner = tuple(table.sorts[sort] for sort in stays)
    return replace(load, plates=inner + in_order(table.sorts, counts))
