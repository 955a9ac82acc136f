"""From a mass to a sleeve stack: every load that a bar can make with the plates of a kit.

The table is worked out once for a bar and its plates; a set's load is then a look-up.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain, repeat

import numpy as np

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.lattice import Lattice, lattice
from undercroft.domain.loads import Load, LoadTable, grains, kilograms
from undercroft.domain.sleeves import Sleeves, bar_sleeves, usable_sorts
from undercroft.domain.stacks import fewest_plates


@dataclass(frozen=True, slots=True, eq=False)
class PlateTable(LoadTable):
    """A load table whose loads are sleeve stacks.

    `sorts` are the plates that can go on one sleeve, heaviest first, `count` per sleeve; `sides`
    the stacks' masses in grains, in step with `loads`; `stacks` every stack there is.
    """

    sleeves: Sleeves
    sorts: tuple[Plate, ...]
    sides: tuple[int, ...]
    stacks: Lattice


def loadable(on: Bar | Sleeves, plates: tuple[Plate, ...]) -> PlateTable:
    """Every load that the plates make, the same stack on each sleeve, heaviest plate innermost.

    Of stacks of one mass the fewest plates stand in the table, then the thinnest stack, then the
    one with the heaviest plates. Raises LoadError for impossible bars and plates.
    """
    sleeves = bar_sleeves(on) if isinstance(on, Bar) else on
    sorts = usable_sorts(sleeves, plates)
    best = fewest_plates(sleeves, sorts)
    sides = tuple(best.sides.tolist())
    loads = tuple(
        _load(sleeves, side, in_order(sorts, counts))
        for side, counts in zip(sides, best.counts.tolist(), strict=True)
    )
    totals = tuple(_total(sleeves, side) for side in sides)
    return PlateTable(loads, totals, sleeves, sorts, sides, lattice(sleeves, sorts))


def alternatives(
    table: PlateTable, load: Load, more_plates: int = 1, most: int = 16
) -> tuple[tuple[Plate, ...], ...]:
    """Other plates for the same load: stacks of up to `more_plates` above the fewest.

    Fewest plates first, then heaviest plates, heaviest innermost; at most `most` of them.
    """
    rows = np.flatnonzero(table.stacks.sides == side_grains(load.plates))
    rows = rows[table.stacks.sizes[rows] <= len(load.plates) + more_plates]
    found = table.stacks.counts[rows].tolist()
    found.sort(key=lambda counts: (sum(counts), [-count for count in counts]))
    return tuple(in_order(table.sorts, counts) for counts in found[:most])


def side_grains(stack: tuple[Plate, ...]) -> int:
    """Mass of a sleeve stack in grains."""
    return sum(grains(plate.mass_kg) for plate in stack)


def with_stack(table: PlateTable, stack: tuple[Plate, ...]) -> Load:
    """The load that a stack makes on these sleeves."""
    return _load(table.sleeves, side_grains(stack), stack)


def in_order(sorts: tuple[Plate, ...], counts: Sequence[int]) -> tuple[Plate, ...]:
    """The stack of so many plates of each sort, heaviest innermost."""
    return tuple(chain.from_iterable(map(repeat, sorts, counts)))


def _load(sleeves: Sleeves, side: int, stack: tuple[Plate, ...]) -> Load:
    return Load(
        kg=kilograms(_total(sleeves, side)),
        on=sleeves.key,
        pieces=sleeves.pieces,
        plates=stack,
        where=sleeves.where if stack else sleeves.bare,
    )


def _total(sleeves: Sleeves, side: int) -> int:
    own = grains(sleeves.own_kg)
    return own + sleeves.per_piece * (grains(sleeves.collar_kg) + side) if side else own
