"""What the server has, asked behind its back."""

from typing import Any

from tests.people import Phone

from undercroft.store import database
from undercroft.store.models import Athlete, Change, Entry


def stored(phone: Phone) -> list[str]:
    """Ids of the entries that count, in the order of their positions."""
    database.connect()
    rows = (
        Entry.select(Entry.id)
        .where(Entry.athlete == phone.athlete_id, Entry.status == "stored")
        .order_by(Entry.position)
        .tuples()
    )
    ids = [row[0] for row in rows]
    database.disconnect()
    return ids


def positions(athlete_id: str) -> list[int]:
    """Every position that was given, by entries and changes together."""
    database.connect()
    found = [
        position
        for table in (Entry, Change)
        for (position,) in table.select(table.position).where(table.athlete == athlete_id).tuples()
    ]
    last = Athlete.get_by_id(athlete_id).position
    database.disconnect()
    assert sorted(found) == list(range(1, last + 1)), "positions have gaps or are given twice"
    return sorted(found)


def ids(entries: list[dict[str, Any]]) -> list[str]:
    return [entry["id"] for entry in entries]
