"""The scale of notches, in whole numbers.

A notch is a step of 1 %; places are kept in tenths: 1000 ln(kg), rounded. Everything here rounds
half away from zero, as `pwa/src/offline/notches.ts` does.
"""

from collections.abc import Sequence
from math import floor, log

from undercroft.domain.errors import positive

TENTHS = 10
PER_MILLE = 1000


def quotient(value: int, by: int) -> int:
    """value / by, rounded half away from zero; `by` above 0."""
    half = (2 * abs(value) + by) // (2 * by)
    return half if value >= 0 else -half


def to_tenths(value: float) -> int:
    """A natural logarithm in tenths of a notch."""
    size = floor(abs(value) * PER_MILLE + 0.5)
    return size if value >= 0 else -size


def position(load_kg: float) -> int:
    """Place of a load on the scale. LoadError for a load that is not above 0."""
    return to_tenths(log(positive("load in kg", load_kg)))


def at_n(values: Sequence[int], n: float) -> int:
    """The value for n = 1, 2 ...; half a repetition is the mean of its neighbours, rounded."""
    halves = min(max(floor(2 * n + 0.5), 2), 2 * len(values))
    low = values[halves // 2 - 1]
    return low if halves % 2 == 0 else quotient(low + values[halves // 2], 2)
