"""Exponentially weighted daily load over a week and over four (Williams et al. 2017, seen).

E = λ · load + (1 - λ) · E of the day before, λ = 2/(N + 1), seeded by the first day's load. The two
are shown side by side. Their ratio says nothing on injury: dividing by a random number gives the
same kind of effect (Impellizzeri et al. 2021, seen), and ten faults of method are listed in
Impellizzeri et al. 2020 (seen).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from itertools import accumulate

from undercroft.domain.errors import DomainError, whole

SHORT_DAYS, LONG_DAYS = 7, 28

REMEMBERED = timedelta(days=364)
"""What lies further back has less than 10⁻¹¹ of its weight left: (1 - 2/29)³⁶⁴ (derived)."""

DISPUTED = (
    "No injury is foretold from these: whether their ratio means anything is disputed"
    " (Impellizzeri et al. 2020)."
)


@dataclass(frozen=True, slots=True)
class SmoothedLoad:
    """A day's load, weighted over 7 and 28 days; `settled` once 28 days lie behind it."""

    load: float
    short: float
    long: float
    settled: bool

    @property
    def difference(self) -> float:
        """How far the short average lies above the long one, in the loads' unit."""
        return self.short - self.long

    @property
    def change_percent(self) -> float | None:
        """The same as a share of the long one; None where that is zero."""
        return 100 * self.difference / self.long if self.long > 0 else None


def weight(days: int) -> float:
    """λ = 2/(N + 1)."""
    return 2 / (whole("days", days, least=1) + 1)


def weighted(loads: Sequence[float], days: int) -> tuple[float, ...]:
    """The weighted load of each day, seeded by the first."""
    w = weight(days)
    return tuple(accumulate(loads, lambda before, load: w * load + (1 - w) * before))


def smoothed_loads(loads: Sequence[float]) -> tuple[SmoothedLoad, ...]:
    """Every day's load with its short and long average; rest days are among them as zero."""
    both = zip(loads, weighted(loads, SHORT_DAYS), weighted(loads, LONG_DAYS), strict=True)
    return tuple(
        SmoothedLoad(load, short, long, settled=number >= LONG_DAYS)
        for number, (load, short, long) in enumerate(both, start=1)
    )


def rolling_ratio(weeks: Sequence[float], coupled: bool) -> float | None:
    """The last week over the mean of four weeks with it (coupled) or of the three before it.

    Kept to show how much hangs on that choice alone; nothing is decided by it. None for no load to
    compare with; DomainError for fewer than four weeks.
    """
    if len(weeks) < 4:
        raise DomainError("weeks of load", f"are {len(weeks)}", "should be at least four")
    before = weeks[-4:] if coupled else weeks[-4:-1]
    mean = sum(before) / len(before)
    return weeks[-1] / mean if mean > 0 else None
