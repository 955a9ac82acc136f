"""Repetitions in reserve, and the share of a maximum that goes with them.

phi(n) is the share of the one-repetition maximum that can be lifted n times to failure. A set short
of failure counts as n = reps + reps in reserve. By this definition any "reps at RPE" value follows
from the repetition curve alone: 5 reps at RPE 8 are a 7RM, 83 %.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import isfinite, log

from undercroft.domain.errors import DomainError

FEWEST, MOST = 1, 15
"""Range of n in which a set says something about the maximum."""

LEAST_RPE = 6.5
"""Below this a rating of effort says nothing about the reserve (Zourdos et al. 2016; Helms et al.
2016)."""

CENTRE = 5
"""Where most evidence lies; the tracker's level is strength as seen at this n."""

_BOOK = "load chart of the NSCA's Essentials of Strength Training and Conditioning"


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One printed value of the load chart, with its standing."""

    reps: int
    percent: float
    mark: str
    source: str


CHART: tuple[ChartRow, ...] = (
    *(
        ChartRow(reps, percent, "seen", _BOOK)
        for reps, percent in enumerate((100, 95, 93, 90, 87, 85, 83, 80, 77, 75), start=1)
    ),
    ChartRow(11, 70, "from memory", _BOOK),
    ChartRow(12, 67, "from memory", f"{_BOOK}; the association's stand-alone chart prints 70"),
    ChartRow(15, 65, "from memory", _BOOK),
)


@dataclass(frozen=True, slots=True)
class RepCurve:
    """phi at n = 1, 2 ... 15, falling from 1; linear in between."""

    name: str
    shares: tuple[float, ...]


def _fill(rows: tuple[ChartRow, ...]) -> tuple[float, ...]:
    shares: list[float] = []
    for low, high in pairwise(rows):
        span = high.reps - low.reps
        step = (high.percent - low.percent) / span
        shares += [(low.percent + step * i) / 100 for i in range(span)]
    return (*shares, rows[-1].percent / 100)


HANDBOOK = RepCurve("handbook", _fill(CHART))


def share(n: float, curve: RepCurve = HANDBOOK) -> float:
    """phi(n) for n from 1 to 15, fractions allowed. DomainError outside."""
    if not FEWEST <= n <= MOST:
        raise DomainError("repetitions to failure", f"are {n:g}", f"should be {FEWEST} to {MOST}")
    below = min(int(n), MOST - 1)
    low, high = curve.shares[below - 1 : below + 1]
    return low + (n - below) * (high - low)


def share_for(reps: float, rir: float, curve: RepCurve = HANDBOOK) -> float:
    """Share of the maximum for a set of `reps` with `rir` left. DomainError outside 1 to 15."""
    return share(reps + rir, curve)


def repetitions_at(wanted: float, curve: RepCurve = HANDBOOK) -> float:
    """n at which a share of the maximum can just be lifted; the inverse of `share`.

    DomainError above 1 or below the curve's last share, where it does not tell.
    """
    if not curve.shares[-1] <= wanted <= 1:
        span = f"should be {curve.shares[-1]:.3f} to 1, where the curve tells repetitions"
        raise DomainError("share of the maximum", f"is {wanted:.3f}", span)
    n = next(i for i in range(FEWEST, MOST) if curve.shares[i] <= wanted)
    high, low = curve.shares[n - 1 : n + 1]
    return n + (high - wanted) / (high - low)


def rir_from_rpe(rpe: float) -> float | None:
    """Repetitions in reserve, 10 - RPE, from 6.5 up; None below, where the rating tells nothing.

    DomainError outside the scale of 1 to 10.
    """
    if not (isfinite(rpe) and 1 <= rpe <= 10):
        raise DomainError("RPE", f"is {rpe:g}", "should be on the scale of 1 to 10")
    return 10 - rpe if rpe >= LEAST_RPE else None


def log_share(n: float, curve: RepCurve = HANDBOOK) -> float:
    """ln phi(n)."""
    return log(share(n, curve))


def lean(n: float, curve: RepCurve = HANDBOOK) -> float:
    """ln phi(n) - ln phi(5): how strongly an athlete's own curve shows at n."""
    return log_share(n, curve) - log_share(CENTRE, curve)


def steepness(n: float, curve: RepCurve = HANDBOOK) -> float:
    """Size of d ln phi / dn, taken over one repetition on each side: the error that is likely."""
    low, high = max(FEWEST, n - 1), min(MOST, n + 1)
    return (log_share(low, curve) - log_share(high, curve)) / (high - low)
