"""Every session that took place, with the athlete's rating of it."""

from dataclasses import replace
from datetime import date

from undercroft.domain.ledger import SessionRecord, fold
from undercroft.domain.program.monitoring import Rated, day_done
from undercroft.services import ledger
from undercroft.services.sessions_shown import known_sessions

KINDS = ("session.started", "session.finished", "session.stopped")


def sessions_rated(athlete_id: str, today: date) -> list[Rated]:
    """All that were begun, in the plan or not, oldest first; one under way today is left out."""
    known = known_sessions(athlete_id)
    run = {(number, one.sent.session): one.run for one in known for number in one.numbers}
    planned = {(one.run, one.sent.session): one.sent.on for one in known}
    told = [
        replace(entry, revision=run.get((entry.revision or 0, entry.session or ""), entry.revision))
        for entry in ledger.entries_of(athlete_id, kinds=KINDS)
    ]
    rated = [
        _rated(record, planned.get((key[0] or 0, key[1])), today)
        for key, record in fold(told).sessions.items()
    ]
    return sorted((one for one in rated if one is not None), key=lambda one: one.on)


def _rated(record: SessionRecord, planned: str | None, today: date) -> Rated | None:
    on = day_done(record, date.fromisoformat(planned) if planned else None, today)
    if on == today and not (record.finished or record.stopped):
        return None
    body = record.finished.body if record.finished else {}
    return Rated(on, body.get("rpe"), body.get("minutes"))
