"""Every session that took place, with the athlete's rating of it."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta

from undercroft.domain.ledger import Entry, SessionRecord, fold
from undercroft.domain.program.monitoring import REMEMBERED, Rated, day_done
from undercroft.domain.program.monitoring.day_done import BELIEVED
from undercroft.services import ledger
from undercroft.services.clock import start_of
from undercroft.services.monitoring.span import Span
from undercroft.services.sessions_shown import KnownSession, known_sessions
from undercroft.store.entries import any_before

KINDS = ("session.started", "session.finished", "session.stopped")
EAST = timedelta(days=1)
"""On a phone far in the east a day begins before it does in UTC."""


@dataclass(frozen=True, slots=True)
class TookPlace:
    """Sessions oldest first; `since` is the day from which they count, None where none is known."""

    since: date | None
    sessions: list[Rated]


def took_place(athlete_id: str, span: Span) -> TookPlace:
    """What was begun in the span or so shortly before that its load is still felt in it.

    In the plan or not; one under way today is left out. Read by when it came in: nothing comes in
    before it was done.
    """
    since = span.first - REMEMBERED
    earliest = start_of(since - EAST)
    known = known_sessions(athlete_id, (since - BELIEVED, span.today + BELIEVED))
    told = ledger.entries_of(athlete_id, kinds=KINDS, since=earliest)
    found = sorted(_rated(told, known, span.today), key=lambda one: one.on)
    recent = [one for one in found if one.on >= since]
    if any_before(athlete_id, KINDS[:1], earliest):
        return TookPlace(since, recent)
    return TookPlace(recent[0].on if recent else None, recent)


def _rated(told: Iterable[Entry], known: Iterable[KnownSession], today: date) -> Iterable[Rated]:
    run = {(number, one.sent.session): one.run for one in known for number in one.numbers}
    planned = {(one.run, one.sent.session): one.sent.on for one in known}
    by_run = (
        replace(entry, revision=run.get((entry.revision or 0, entry.session or ""), entry.revision))
        for entry in told
    )
    for (number, session), record in fold(by_run).sessions.items():
        rated = _of(record, planned.get((number or 0, session)), today)
        if rated is not None:
            yield rated


def _of(record: SessionRecord, planned: str | None, today: date) -> Rated | None:
    on = day_done(record, date.fromisoformat(planned) if planned else None, today)
    if on == today and not (record.finished or record.stopped):
        return None
    body = record.finished.body if record.finished else {}
    return Rated(on, body.get("rpe"), body.get("minutes"))
