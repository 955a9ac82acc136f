"""A photo or clip for an exercise: taken in, told in words, removed, handed out."""

from dataclasses import dataclass
from hashlib import sha256

from undercroft.pictures import Clean, Unusable, cleaned
from undercroft.services import picture_feed
from undercroft.services.catalogues import catalogue_of
from undercroft.services.clock import MINUTE_MS
from undercroft.services.limits import Limit, spend
from undercroft.services.refusals import Conflict, Invalid, NotFound
from undercroft.store import pictures
from undercroft.store.database import writing
from undercroft.store.pictures import Facts

MOST_SENT = 64 * 1024 * 1024
"""Bytes of a file as it comes: 20 s of a phone's 1080p, or ten of its 4K (own choice)."""

MOST_IN_ALL = 200_000_000
"""Bytes of one coach's pictures together: a hundred clips, or a thousand photos (own choice)."""

SENDING = Limit("picture", 10 * MINUTE_MS, 60, 300)
"""To draw a clip anew keeps a core busy for seconds (own choice)."""


@dataclass(frozen=True, slots=True)
class File:
    media: str
    data: bytes


def add(coach_id: str, key: str, sent: bytes, words: str, now: int, room: int = MOST_IN_ALL) -> str:
    """Keep a file as the exercise's picture, drawn anew, and return its hash.

    Raises NotFound, TooOften, Invalid for no photo or clip, Conflict where `room` is used up.
    """
    if key not in catalogue_of(coach_id):
        raise NotFound("there is no such exercise")
    spend(SENDING, (coach_id,), now)
    clean = _clean(sent)
    facts = Facts(key, sha256(clean.data).hexdigest(), clean.media, len(clean.data), words)
    with writing():
        _require_room(coach_id, facts, room)
        pictures.keep(coach_id, facts, clean.data, now)
    picture_feed.tell_all(coach_id, key)
    return facts.hash


def set_words(coach_id: str, key: str, words: str, now: int) -> None:
    """Tell the picture in other words. Raises NotFound."""
    _require(coach_id, key)
    with writing():
        pictures.set_words(coach_id, key, words, now)
    picture_feed.tell_all(coach_id, key)


def remove(coach_id: str, key: str) -> None:
    """Show the exercise no more; phones forget the picture. Raises NotFound."""
    _require(coach_id, key)
    with writing():
        pictures.remove(coach_id, key)
    picture_feed.tell_all(coach_id, key)


def of_coach(coach_id: str, digest: str) -> File:
    """The coach's picture with that hash. Raises NotFound."""
    return _there(pictures.file_of(coach_id, digest))


def for_athlete(athlete_id: str, digest: str) -> File:
    """That of the athlete's coach. Raises NotFound."""
    return _there(pictures.file_for(athlete_id, digest))


def _clean(sent: bytes) -> Clean:
    try:
        return cleaned(sent)
    except Unusable as fault:
        raise Invalid(fault.what, fault.right) from None


def _require_room(coach_id: str, facts: Facts, room: int) -> None:
    taken = pictures.bytes_beside(coach_id, facts.key)
    if taken + facts.bytes > room:
        what = f"your pictures take {_mb(taken)} of {_mb(room)} MB, and this one {_mb(facts.bytes)}"
        raise Conflict(what, "remove one that nobody needs any more")


def _mb(count: int) -> str:
    return f"{count / 1e6:.1f}"


def _require(coach_id: str, key: str) -> None:
    if pictures.one_of(coach_id, key) is None:
        raise NotFound("this exercise has no picture")


def _there(found: tuple[str, bytes] | None) -> File:
    if found is None:
        raise NotFound("there is no such picture")
    return File(*found)
