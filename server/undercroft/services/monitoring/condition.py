"""How the athlete says they are: pain, readiness, body mass."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from undercroft.domain.ledger import Entry, fold
from undercroft.services import ledger
from undercroft.services.clock import start_of
from undercroft.services.monitoring.span import Span, span_of

KINDS = ("pain.reported", "readiness", "body_mass")
AHEAD = timedelta(days=1)
"""East of Greenwich it can be tomorrow already."""


@dataclass(frozen=True, slots=True)
class PainSeen:
    """`level` is on the scale of 0 to 10."""

    on: date
    where: str
    level: float
    comment: str | None


@dataclass(frozen=True, slots=True)
class ReadinessSeen:
    """`score` is on the scale of 1 to 5, 5 the best."""

    on: date
    score: int
    comment: str | None


@dataclass(frozen=True, slots=True)
class MassSeen:
    on: date
    kg: float


@dataclass(frozen=True, slots=True)
class Condition:
    """Each list oldest first, on the days that the phone's clock told."""

    first: date
    last: date
    pains: list[PainSeen]
    readiness: list[ReadinessSeen]
    body_masses: list[MassSeen]


def condition_of(athlete_id: str, weeks: int, now: int) -> Condition:
    """What the athlete reported in the span."""
    span = span_of(weeks, now)
    # Nothing comes in before it was said, and a day in the east begins before it does in UTC.
    told = fold(ledger.entries_of(athlete_id, kinds=KINDS, since=start_of(span.first - AHEAD)))
    return Condition(
        span.first,
        span.today,
        [
            PainSeen(on, body["where"], body["level"], body.get("comment"))
            for on, body in _within(told.pains, span)
        ],
        [
            ReadinessSeen(on, body["score"], body.get("comment"))
            for on, body in _within(told.readiness, span)
        ],
        [MassSeen(on, body["kg"]) for on, body in _within(told.body_masses, span)],
    )


def _within(entries: Iterable[Entry], span: Span) -> Iterator[tuple[date, dict[str, Any]]]:
    for one in sorted(entries, key=lambda one: one.at[:10]):
        on = date.fromisoformat(one.at[:10])
        if span.first <= on <= span.today + AHEAD:
            yield on, dict(one.body)
