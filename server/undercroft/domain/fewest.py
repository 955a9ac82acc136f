"""The cheapest way through sleeve stacks, set after set.

Over a row of sets every plate that goes on stays for an unbroken run of sets, and two runs on one
sleeve are either nested or apart, because what is on last comes off first. So the cheapest way
through sets i to j above a given inner stack is the cheapest of: one plate more that stays for all
of them, or a cut into i to t and t + 1 to j, or, for a single set, nothing more. That recursion
over runs of sets and sleeve stacks weighs every multiset in every order without listing orders.
"""

from collections.abc import Sequence

import numpy as np

from undercroft.domain.lattice import Lattice, levels
from undercroft.domain.stacks import Whole

HANDLING, GRAM_OFF, PLATE = 10**12, 10**4, 1
NEVER = 10**17


def fewest_handlings(
    of: Lattice, choices: Sequence[dict[int, int]], sets: Sequence[int], strip: bool
) -> list[list[int]]:
    """For each run of like sets the stack to load, as sorts, innermost first.

    `choices[i]` gives each sleeve mass in grains that run i may have, with the grams by which it
    misses; `sets[i]` is the number of sets in the run. Least are, in this order, plates put on and
    taken off (the last stack too with `strip`), grams missed, plates on the sleeve in all sets.
    """
    stays = _cost_of_staying(sets, strip)
    costs = _costs(of, np.array([_misses(of, masses) for masses in choices]).T, stays)
    stacks: list[list[int]] = [[] for _ in choices]
    _read_off(of, costs, stays, (0, len(choices) - 1, 0), stacks)
    return stacks


def _cost_of_staying(sets: Sequence[int], strip: bool) -> Whole:
    """`[i, j]`: cost of one plate that goes on for run i and stays to the end of run j."""
    done = np.cumsum([0, *sets])
    plates = done[None, 1:] - done[:-1, None]
    handlings = np.full(len(sets), 2)
    handlings[-1] = 2 if strip else 1
    stays: Whole = handlings * HANDLING + plates * PLATE
    return stays


def _misses(of: Lattice, masses: dict[int, int]) -> Whole:
    """Cost of leaving each stack as it is for one run; the row past the last stands for none."""
    sides = np.array(sorted(masses), dtype=np.int64)
    grams = np.array([masses[side] for side in sorted(masses)], dtype=np.int64)
    at = np.minimum(np.searchsorted(sides, of.sides), len(sides) - 1)
    costs = np.where(sides[at] == of.sides, grams[at] * GRAM_OFF, NEVER)
    return np.append(costs, NEVER)


def _costs(of: Lattice, singles: Whole, stays: Whole) -> list[Whole]:
    """`[length - 1][row, i]`: least cost of runs i to i + length - 1 above that row's stack."""
    tiers = levels(of)[1:]
    costs: list[Whole] = []
    for length in range(1, len(stays) + 1):
        best = singles if length == 1 else _cut(costs, length)
        staying = np.diagonal(stays, length - 1)
        for low, high in tiers:
            above = best[of.heavier[low:high]].min(axis=1) + staying
            np.minimum(best[low:high], above, out=best[low:high])
        costs.append(best)
    return costs


def _cut(costs: list[Whole], length: int) -> Whole:
    """The cheapest cut of every row of `length` runs in two."""
    starts = costs[0].shape[1] - length + 1
    best = np.full((len(costs[0]), starts), NEVER)
    for cut in range(1, length):
        second = costs[length - cut - 1][:, cut : cut + starts]
        np.minimum(best, costs[cut - 1][:, :starts] + second, out=best)
    return best


def _read_off(
    of: Lattice,
    costs: list[Whole],
    stays: Whole,
    at: tuple[int, int, int],
    stacks: list[list[int]],
) -> None:
    """Fill in the stacks of runs `first` to `last` above `row`, heaviest plate first."""
    first, last, row = at
    here = costs[last - first]
    due = here[row, first]
    for sort, above in enumerate(of.heavier[row].tolist()):
        if here[above, first] + stays[first, last] == due:
            for run in range(first, last + 1):
                stacks[run].append(sort)
            return _read_off(of, costs, stays, (first, last, above), stacks)
    for cut in range(first, last):
        if costs[cut - first][row, first] + costs[last - cut - 1][row, cut + 1] == due:
            _read_off(of, costs, stays, (first, cut, row), stacks)
            return _read_off(of, costs, stays, (cut + 1, last, row), stacks)
    return None
