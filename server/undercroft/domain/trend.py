"""A maximum over time: as it was known on each day, and as it looks with all that came after."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date

from undercroft.domain.athlete import Athlete, Maximum, MaximumKind
from undercroft.domain.sheet.standing import DoneSession, guessed_state
from undercroft.domain.strength import (
    EstimatedMax,
    Evidence,
    StrengthSettings,
    TestedMax,
    TrackerState,
    estimate,
    smooth,
    track,
)


@dataclass(frozen=True, slots=True)
class TrendPoint:
    """The estimate after a day, with its 90 % band, and the smoothed one.

    `source` is "guess", "test" or "sets"; sets with a test among them are a test. A guess is the
    coach's word: nothing smooths it.
    """

    on: date
    known: EstimatedMax
    smoothed: EstimatedMax
    source: str


@dataclass(slots=True)
class _Stretch:
    """Days from one guess to the next: a guess begins the estimate anew."""

    guess: tuple[date, TrackerState] | None = None
    days: list[tuple[date, tuple[Evidence, ...], str]] = field(default_factory=list)


def trend(
    athlete: Athlete, lift: str, done: Sequence[DoneSession], settings: StrengthSettings
) -> tuple[TrendPoint, ...]:
    """One point for each maximum of the lift and each session that told of it, oldest first."""
    return tuple(
        point
        for stretch in _stretches(athlete, lift, done, settings)
        for point in _points(stretch, settings)
    )


def _stretches(
    athlete: Athlete, lift: str, done: Sequence[DoneSession], settings: StrengthSettings
) -> list[_Stretch]:
    stretches = [_Stretch()]
    for on, event in _events(athlete, lift, done):
        if isinstance(event, DoneSession):
            stretches[-1].days.append((on, event.evidence, _source(event.evidence)))
        elif event.kind is MaximumKind.TESTED:
            stretches[-1].days.append((on, (TestedMax(event.kg),), "test"))
        else:
            stretches.append(_Stretch((on, guessed_state(event, settings))))
    return stretches


def _source(evidence: Sequence[Evidence]) -> str:
    return "test" if any(isinstance(one, TestedMax) for one in evidence) else "sets"


def _events(
    athlete: Athlete, lift: str, done: Sequence[DoneSession]
) -> list[tuple[date, Maximum | DoneSession]]:
    maxima = [(m.on, m) for m in athlete.maxima if m.lift == lift]
    sessions = [(one.on, one) for one in done if one.evidence]
    return sorted([*maxima, *sessions], key=lambda event: event[0])


def _points(stretch: _Stretch, settings: StrengthSettings) -> Iterator[TrendPoint]:
    start = None
    if stretch.guess is not None:
        on, start = stretch.guess
        guessed = estimate(start, settings)
        yield TrendPoint(on, guessed, guessed, "guess")
    tracked = track(start, [(on.toordinal(), told) for on, told, _ in stretch.days], settings)
    lines = zip(stretch.days, tracked, smooth(tracked), strict=True)
    for (on, _, source), one, smoothed in lines:
        yield TrendPoint(on, estimate(one.after, settings), estimate(smoothed, settings), source)
