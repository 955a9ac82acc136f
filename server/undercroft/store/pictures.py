"""Photos and clips of exercises: their facts, and the bytes themselves, which are read alone."""

from typing import Any, NamedTuple

from undercroft.store.models import Athlete, Picture
from undercroft.store.sql import rows


class Facts(NamedTuple):
    """All that is known of a picture beside its bytes; `key` is the exercise's."""

    key: str
    hash: str
    media: str
    bytes: int
    words: str


SELECT = "SELECT key, hash, media, bytes, words FROM picture WHERE coach_id = ?"


def facts_of(coach_id: str) -> list[Facts]:
    """Of all that the coach has, by key."""
    return [Facts(*row) for row in rows(f"{SELECT} ORDER BY key", coach_id)]


def one_of(coach_id: str, key: str) -> Facts | None:
    found = rows(f"{SELECT} AND key = ?", coach_id, key)
    return Facts(*found[0]) if found else None


def bytes_beside(coach_id: str, key: str) -> int:
    """What the coach's other pictures take."""
    return sum(one.bytes for one in facts_of(coach_id) if one.key != key)


def keep(coach_id: str, facts: Facts, data: bytes, now: int) -> None:
    """Add it, or put it in place of the one that the exercise has."""
    changed = {"hash": facts.hash, "media": facts.media, "bytes": facts.bytes}
    written = {**changed, "words": facts.words, "changed_at": now, "data": data}
    Picture.insert(coach=coach_id, key=facts.key, **written).on_conflict(
        conflict_target=[Picture.coach, Picture.key], update=written
    ).execute()


def set_words(coach_id: str, key: str, words: str, now: int) -> None:
    """Of one that is there."""
    Picture.update(words=words, changed_at=now).where(
        Picture.coach == coach_id, Picture.key == key
    ).execute()


def remove(coach_id: str, key: str) -> None:
    Picture.delete().where(Picture.coach == coach_id, Picture.key == key).execute()


def file_of(coach_id: Any, digest: str) -> tuple[str, bytes] | None:
    """Type and bytes of what the coach has under that hash."""
    found = Picture.select(Picture.media, Picture.data).where(
        Picture.coach == coach_id, Picture.hash == digest
    )
    return next(((row.media, bytes(row.data)) for row in found.limit(1)), None)


def file_for(athlete_id: str, digest: str) -> tuple[str, bytes] | None:
    """The same of the athlete's coach."""
    return file_of(Athlete.select(Athlete.coach).where(Athlete.id == athlete_id), digest)
