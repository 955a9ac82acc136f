"""Put what an athlete's phone has to know of screening into the feed."""

from datetime import date

from undercroft.documents import screening_feed as documents
from undercroft.domain.occlusion import Lock, OcclusionRecord
from undercroft.store.feed import last_position, publish
from undercroft.store.models import Athlete


def lock_now(record: OcclusionRecord) -> Lock:
    """The lock on the day of the last record."""
    return record.locks([date.min])[date.min]


def publish_questions(athlete_id: str) -> None:
    """Call with the athlete's lock held."""
    publish(athlete_id, "screening.questions", "", documents.questions())


def publish_standing(row: Athlete, record: OcclusionRecord) -> None:
    """How it stands, for an athlete who was asked; call with the athlete's lock held."""
    if row.screening_asked_at is None:
        return
    latest = record.screening.latest
    on = None if latest is None else latest.on.isoformat()
    read, through = record.screening.read, last_position(row.id)
    publish(row.id, "screening", "", documents.standing(lock_now(record), on, read, through))
