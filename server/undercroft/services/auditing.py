"""Verify what is stored: positions and numbers without gaps, entries as sent, what they tell."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256

from undercroft.documents.entries import content_of, envelope
from undercroft.services.auditing_told import told_wrongly
from undercroft.services.ledger import from_row
from undercroft.store import audit
from undercroft.store.models import Entry


@dataclass(frozen=True, slots=True)
class Finding:
    """What is wrong, and with whom."""

    where: str
    what: str


def check() -> Iterator[Finding]:
    """Everything that is wrong with the open database, athlete by athlete."""
    for words in audit.damage():
        yield Finding("the database", words)
    for coach_id, key, digest, data in audit.pictures():
        if sha256(data).hexdigest() != digest:
            yield Finding(f"coach {coach_id}", f"the picture of {key} is not what was kept")
    for athlete_id in audit.athlete_ids():
        where = f"athlete {athlete_id}"
        for what in check_athlete(athlete_id):
            yield Finding(where, what)


def check_athlete(athlete_id: str) -> Iterator[str]:
    yield from _positions(athlete_id)
    yield from _entries(athlete_id)
    yield from _changes(athlete_id)
    yield from _devices(athlete_id)
    yield from told_wrongly(athlete_id)


def _positions(athlete_id: str) -> Iterator[str]:
    given = Counter(audit.positions(athlete_id))
    last = audit.last_position(athlete_id)
    missing = [place for place in range(1, last + 1) if place not in given]
    if missing:
        yield f"{len(missing)} positions are missing, the first is {missing[0]}"
    twice = [place for place, count in given.items() if count > 1]
    if twice:
        yield f"{len(twice)} positions are given twice, the first is {min(twice)}"
    beyond = [place for place in given if place > last]
    if beyond:
        yield f"position {max(beyond)} lies beyond the last one given, {last}"


def _entries(athlete_id: str) -> Iterator[str]:
    for row in audit.entries(athlete_id):
        if content_of(_as_sent(row)).digest != row.digest:
            yield f"the entry at position {row.position} is not what was sent"


def _as_sent(row: Entry) -> object:
    return envelope(from_row(row)) if row.sent is None else row.sent


def _changes(athlete_id: str) -> Iterator[str]:
    for kind, key, count in audit.newest_changes_with_rivals(athlete_id):
        yield f"{count} changes of {kind} {key} count at once"


def _devices(athlete_id: str) -> Iterator[str]:
    for device_id, through, numbers in audit.device_numbers(athlete_id):
        missing = set(range(1, through + 1)) - numbers
        if missing:
            yield f"device {device_id} lacks number {min(missing)} of the {through} promised"
