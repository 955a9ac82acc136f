"""Sleeve stacks as rows of counts, and for each mass the one with the fewest plates."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Plate
from undercroft.domain.loads import grains
from undercroft.domain.sleeves import Sleeves

Whole = NDArray[np.int64]

MOST_STACKS = 200_000
NO_BOUND = 10_000


@dataclass(frozen=True, slots=True, eq=False)
class Stacks:
    """One sleeve stack a row, order left open: `counts[row, sort]`.

    `sides` are the masses in grains, `sizes` the numbers of plates, `depths` the thicknesses in
    micrometres.
    """

    counts: NDArray[np.int16]
    sides: Whole
    sizes: Whole
    depths: Whole

    def pick(self, rows: NDArray[np.intp] | NDArray[np.bool_]) -> "Stacks":
        return Stacks(self.counts[rows], self.sides[rows], self.sizes[rows], self.depths[rows])


def bare(sorts: tuple[Plate, ...]) -> Stacks:
    """The one stack of nothing."""
    zero = np.zeros(1, dtype=np.int64)
    return Stacks(np.zeros((1, len(sorts)), dtype=np.int16), zero, zero, zero)


def with_sort(
    stacks: Stacks, sleeves: Sleeves, sorts: tuple[Plate, ...], at: int, most_plates: int
) -> Stacks:
    """Every stack of `stacks` with 0 to all plates of sort `at` added, where it still fits."""
    mass, depth = grains(sorts[at].mass_kg), _micrometres(sorts[at].thickness_m)
    room = _micrometres(sleeves.length_m)
    times = min(sorts[at].count, room // depth, most_plates) + 1
    added = np.repeat(np.arange(times), len(stacks.sides))
    counts = np.tile(stacks.counts, (times, 1))
    counts[:, at] = added
    sides = np.tile(stacks.sides, times) + added * mass
    sizes = np.tile(stacks.sizes, times) + added
    depths = np.tile(stacks.depths, times) + added * depth
    fits = (sizes <= most_plates) & (depths <= room)
    if sleeves.limit_kg is not None:
        fits &= sides <= max(grains(sleeves.limit_kg) - grains(sleeves.collar_kg), 0)
    return Stacks(counts, sides, sizes, depths).pick(fits)


def fewest_plates(sleeves: Sleeves, sorts: tuple[Plate, ...]) -> Stacks:
    """For each mass that fits, lightest first, the stack with the fewest plates.

    Of stacks as small the thinnest, then the one with the heaviest plates. Adds one sort after the
    other and keeps what no stack of the same mass beats in number and thickness both; that is
    exact, because whatever is added later costs all of them the same. LoadError where the plates
    are of so many odd masses that their sums pass 200,000 on the way.
    """
    room = _micrometres(sleeves.length_m)
    tight = sum(sort.count * _micrometres(sort.thickness_m) for sort in sorts) > room
    squares = np.array([round(sort.mass_kg * 1e3) ** 2 for sort in sorts], dtype=np.int64)
    stacks = bare(sorts)
    for at, sort in enumerate(sorts):
        if len(stacks.sides) * (sort.count + 1) > MOST_STACKS:
            raise LoadError("sums of the plates", f"over {MOST_STACKS}", "fewer: drop odd plates")
        grown = with_sort(stacks, sleeves, sorts, at, NO_BOUND)
        stacks = _unbeaten(grown, grown.counts @ squares, tight)
    return _unbeaten(stacks, stacks.counts @ squares, tight=False)


def _unbeaten(stacks: Stacks, heaviness: Whole, tight: bool) -> Stacks:
    """By mass and size, the stacks to keep: one a mass, or where room is tight all not beaten."""
    order = np.lexsort((-heaviness, stacks.depths, stacks.sizes, stacks.sides))
    sides = stacks.sides[order]
    fresh = np.append(True, sides[1:] != sides[:-1])
    if not tight:
        return stacks.pick(order[fresh])
    falling = stacks.depths[order] - np.cumsum(fresh) * (int(stacks.depths.max()) + 1)
    least_before = np.append(np.int64(1), np.minimum.accumulate(falling)[:-1])
    return stacks.pick(order[falling < least_before])


def _micrometres(metres: float) -> int:
    return round(metres * 1e6)
