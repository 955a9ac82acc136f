"""How large a change of a test must be before it says anything.

Test-retest CV of a one-repetition maximum: median 4.2 % over 32 studies (Grgic et al. 2020, seen),
2.1 % in trained squatters (Banyard et al. 2017, seen).
"""

from collections.abc import Sequence
from math import sqrt
from statistics import stdev, variance

from undercroft.domain.errors import DomainError, not_negative, positive

Z_95 = 1.96
WORTHWHILE = 0.2
"""Share of the spread between people (Hopkins): a convention for means, no law for one person."""


def typical_error(first: Sequence[float], second: Sequence[float]) -> float:
    """Standard deviation of the differences between two tests of the same people, over √2."""
    if len(first) != len(second) or len(first) < 2:
        told = f"{len(first)} and {len(second)} results"
        raise DomainError("two tests", told, "should be as many of each, from two people up")
    return stdev(b - a for a, b in zip(first, second, strict=True)) / sqrt(2)


def error_from_cv(value: float, cv_percent: float) -> float:
    """Typical error in the unit of `value`, from a coefficient of variation in percent."""
    return positive("value", value) * not_negative("CV in percent", cv_percent) / 100


def least_change(error: float) -> float:
    """The smallest change between two tests that is not noise, at 95 %: 1.96 · √2 · error."""
    return Z_95 * sqrt(2) * not_negative("typical error", error)


def worthwhile_change(values: Sequence[float], error: float = 0.0) -> float:
    """0.2 of the spread between people, with the test's own noise taken out of it first."""
    if len(values) < 2:
        raise DomainError("results", f"are {len(values)}", "should be from two people up")
    true_variance = variance(values) - not_negative("typical error", error) ** 2
    return WORTHWHILE * sqrt(max(0.0, true_variance))
