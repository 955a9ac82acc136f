"""A maximum over time: as it was known on each day, and as it looks with all that came after."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.domain.strength import (
    EstimatedMax,
    Evidence,
    StrengthSettings,
    TrackerState,
    estimate,
    smooth,
    track,
)


@dataclass(frozen=True, slots=True)
class TrendPoint:
    """The estimate after a day's evidence, with its 90 % band, and the smoothed one."""

    on: date
    known: EstimatedMax
    smoothed: EstimatedMax


def trend(
    start: TrackerState | None,
    days: Sequence[tuple[date, Sequence[Evidence]]],
    settings: StrengthSettings,
) -> tuple[TrendPoint, ...]:
    """One point for each day with evidence, oldest first; `start` is what was known before."""
    with_evidence = [(on, evidence) for on, evidence in days if evidence]
    tracked = track(start, [(on.toordinal(), told) for on, told in with_evidence], settings)
    lines = zip(with_evidence, tracked, smooth(tracked), strict=True)
    return tuple(
        TrendPoint(on, estimate(one.after, settings), estimate(smoothed, settings))
        for (on, _), one, smoothed in lines
    )
