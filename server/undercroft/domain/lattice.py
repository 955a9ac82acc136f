"""Every sleeve stack of a kit, each tied to those with one plate more."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Plate
from undercroft.domain.loads import grains
from undercroft.domain.sleeves import Sleeves
from undercroft.domain.stacks import NO_BOUND, Stacks, Whole, bare, with_sort

Rows = NDArray[np.intp]

MOST_LISTED = 8_192
PLATE_BOUNDS = (NO_BOUND, 12, 10, 9, 8, 7, 6, 5, 4, 3)


@dataclass(frozen=True, slots=True, eq=False)
class Lattice:
    """Stacks in rows, smallest first, the bare sleeve in row 0, order within a stack left open.

    `heavier[row, sort]` is the row with one plate of that sort more, or the number of rows where
    there is none. Stacks of n plates are rows `starts[n]` to `starts[n + 1]`. All stacks of up to
    `plates_listed` plates are there; None: all that fit the sleeve.
    """

    counts: NDArray[np.int16]
    sides: Whole
    sizes: Whole
    heavier: Rows
    starts: tuple[int, ...]
    plates_listed: int | None


def lattice(sleeves: Sleeves, sorts: tuple[Plate, ...]) -> Lattice:
    """Every stack that fits; of more than 8,192, those of as many plates as keep within that."""
    for most in PLATE_BOUNDS:
        stacks = bare(sorts)
        for at in range(len(sorts)):
            stacks = with_sort(stacks, sleeves, sorts, at, most)
            if len(stacks.sides) > MOST_LISTED:
                break
        else:
            return _tied(stacks, None if most == NO_BOUND else most)
    raise LoadError("stacks of three plates", f"over {MOST_LISTED}", "fewer sorts of plates")


def paths(sorts: tuple[Plate, ...], stacks: Iterable[tuple[Plate, ...]]) -> Lattice:
    """Only these stacks and what is passed on the way, each put on from the inside outwards."""
    place = {sort: at for at, sort in enumerate(sorts)}
    passed = {(0,) * len(sorts)}
    for stack in stacks:
        counts = [0] * len(sorts)
        for plate in stack:
            counts[place[plate]] += 1
            passed.add(tuple(counts))
    rows = np.array(sorted(passed), dtype=np.int16)
    masses = np.array([grains(sort.mass_kg) for sort in sorts], dtype=np.int64)
    sizes = rows.sum(axis=1, dtype=np.int64)
    return _tied(Stacks(rows, rows @ masses, sizes, np.zeros_like(sizes)), None)


def only_beneath(whole: Lattice, tops: Iterable[int]) -> Lattice:
    """The part of a lattice that leads up to stacks of the given masses in grains."""
    wanted = np.append(np.isin(whole.sides, np.fromiter(tops, dtype=np.int64)), False)
    for low, high in levels(whole):
        wanted[low:high] |= wanted[whole.heavier[low:high]].any(axis=1)
    rows = np.flatnonzero(wanted)
    renamed = np.full(len(wanted), len(rows))
    renamed[rows] = np.arange(len(rows))
    sizes = whole.sizes[rows]
    return Lattice(
        whole.counts[rows],
        whole.sides[rows],
        sizes,
        renamed[whole.heavier[rows]],
        _starts(sizes),
        whole.plates_listed,
    )


def levels(of: Lattice) -> list[tuple[int, int]]:
    """First and last-but-one row of the stacks of each size, largest size first."""
    return list(zip(of.starts, of.starts[1:], strict=False))[::-1]


def _tied(stacks: Stacks, plates_listed: int | None) -> Lattice:
    stacks = stacks.pick(np.lexsort((stacks.sides, stacks.sizes)))
    radix = _radix(stacks)
    codes = stacks.counts @ radix
    order = np.argsort(codes)
    wanted = codes[:, None] + radix
    found = np.minimum(np.searchsorted(codes, wanted, sorter=order), len(codes) - 1)
    rows = order[found]
    heavier = np.where(codes[rows] == wanted, rows, len(codes))
    starts = _starts(stacks.sizes)
    return Lattice(stacks.counts, stacks.sides, stacks.sizes, heavier, starts, plates_listed)


def _radix(stacks: Stacks) -> Whole:
    """One place value a sort, with room for one plate more than any stack has of it."""
    places = [1]
    for most in stacks.counts.max(axis=0).tolist()[:-1]:
        places.append(places[-1] * (most + 2))
    if places[-1] > 2**50:
        raise LoadError("plates", "of too many sorts", "fewer sorts of plates")
    return np.array(places[: stacks.counts.shape[1]], dtype=np.int64)


def _starts(sizes: Whole) -> tuple[int, ...]:
    return tuple(np.searchsorted(sizes, np.arange(int(sizes[-1]) + 2)).tolist())
