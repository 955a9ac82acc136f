"""On which day a session counts."""

from datetime import date, timedelta

from undercroft.domain.ledger import SessionRecord

BELIEVED = timedelta(days=14)
"""A phone's clock further than this from the planned day is taken for a wrong clock: our choice."""


def day_done(record: SessionRecord, planned: date | None, today: date) -> date:
    """The day that the phone's clock told when the session was begun, never after `today`.

    The planned day, where there is one, if no beginning was told or none that can be believed.
    """
    told = _told(record)
    if planned is None:
        return min(told or today, today)
    believed = told is not None and abs(told - planned) <= BELIEVED
    return min(told if told and believed else planned, today)


def _told(record: SessionRecord) -> date | None:
    over = record.finished or record.stopped
    moment = record.started_at or (over.at if over else min(_sets(record), default=None))
    return date.fromisoformat(moment[:10]) if moment else None


def _sets(record: SessionRecord) -> list[str]:
    return [one.at for one in record.sets.values()]
