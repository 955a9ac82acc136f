"""What a check of the whole database has to read."""

from collections.abc import Iterator

from undercroft.store.database import on_sqlite
from undercroft.store.models import Athlete, Entry
from undercroft.store.sql import rows


def damage() -> list[str]:
    """What SQLite itself finds wrong; PostgreSQL has tools of its own for that."""
    if not on_sqlite():
        return []
    found = [words for (words,) in rows("PRAGMA integrity_check(10)") if words != "ok"]
    broken = rows("PRAGMA foreign_key_check")
    return found + [f"a row of {table} points to nothing" for table, *_ in broken]


def athlete_ids() -> list[str]:
    return [row.id for row in Athlete.select(Athlete.id).order_by(Athlete.id)]


def last_position(athlete_id: str) -> int:
    return int(Athlete.get_by_id(athlete_id).position)


def positions(athlete_id: str) -> list[int]:
    """Of entries and changes together."""
    found = rows(
        "SELECT position FROM entry WHERE athlete_id = ?"
        " UNION ALL SELECT position FROM change WHERE athlete_id = ?",
        athlete_id,
        athlete_id,
    )
    return [position for (position,) in found]


def entries(athlete_id: str) -> Iterator[Entry]:
    return iter(Entry.select().where(Entry.athlete == athlete_id).order_by(Entry.position))


def newest_changes_with_rivals(athlete_id: str) -> list[tuple[str, str, int]]:
    """Kinds and keys of which more than one change is not superseded."""
    found = rows(
        "SELECT kind, key, COUNT(*) FROM change WHERE athlete_id = ? AND NOT superseded"
        " GROUP BY kind, key HAVING COUNT(*) > 1",
        athlete_id,
    )
    return [(kind, key, int(count)) for kind, key, count in found]


def device_numbers(athlete_id: str) -> Iterator[tuple[str, int, set[int]]]:
    """Each device with the number up to which it was promised to have no gap, and its numbers."""
    for device_id, through in rows(
        "SELECT id, stored_through FROM device WHERE athlete_id = ?", athlete_id
    ):
        numbers = rows(
            "SELECT n FROM entry WHERE athlete_id = ? AND device = ? AND n IS NOT NULL",
            athlete_id,
            device_id,
        )
        yield device_id, int(through), {n for (n,) in numbers}


def pictures() -> Iterator[tuple[str, str, str, bytes]]:
    """Coach, exercise, hash and bytes of each, one read at a time."""
    keys = rows("SELECT coach_id, key, hash FROM picture ORDER BY coach_id, key")
    for coach_id, key, digest in keys:
        found = rows("SELECT data FROM picture WHERE coach_id = ? AND key = ?", coach_id, key)
        yield from ((coach_id, key, digest, bytes(data)) for (data,) in found)
