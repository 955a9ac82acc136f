"""Every session that took place, with the athlete's rating of it."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from undercroft.domain.ledger import SessionKey, SessionRecord, fold
from undercroft.domain.program.monitoring import Rated, day_done
from undercroft.services import ledger
from undercroft.services.sessions_shown import KnownSession, known_sessions

KINDS = ("session.started", "session.finished", "session.stopped")


def sessions_rated(athlete_id: str, today: date) -> list[Rated]:
    """All that the ledger knows, oldest first; one begun today and not yet over is left out."""
    known = [one for one in known_sessions(athlete_id) if one.numbers and one.sent.on]
    records = _records(athlete_id, known)
    rated = []
    for one in known:
        record = records.get((one.run, one.sent.session))
        if record is not None:
            on = day_done(record, date.fromisoformat(one.sent.on), today)
            if on < today or record.finished or record.stopped:
                rated.append(_rated(on, record))
    return sorted(rated, key=lambda one: one.on)


def _rated(on: date, record: SessionRecord) -> Rated:
    body = record.finished.body if record.finished else {}
    return Rated(on, body.get("rpe"), body.get("minutes"))


def _records(athlete_id: str, known: Sequence[KnownSession]) -> dict[SessionKey, SessionRecord]:
    """Beginnings and ends alone, by run and session."""
    run = {(number, one.sent.session): one.run for one in known for number in one.numbers}
    told = [
        replace(entry, revision=run[entry.revision, entry.session])
        for entry in ledger.entries_of(athlete_id, kinds=KINDS)
        if entry.revision is not None
        and entry.session is not None
        and (entry.revision, entry.session) in run
    ]
    return dict(fold(told).sessions)
