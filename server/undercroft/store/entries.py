"""The ledger's lines as rows. Call what writes with the athlete's lock held."""

import json
from collections.abc import Sequence
from typing import Any, NamedTuple

from peewee import fn

from undercroft.store.database import database, execute_many, on_sqlite
from undercroft.store.models import Entry

STORED, HELD = "stored", "held"


class Row(NamedTuple):
    """A new line; `body`, `problem` and `sent` are JSON text already.

    A tuple, because thousands are made at once.
    """

    athlete_id: str
    position: int
    id: str
    twin: int
    device: str
    n: int | None
    v: int | None
    kind: str
    at: str | None
    received_at: int
    revision: int | None
    session: str | None
    set: str | None
    replaces: str | None
    body: str | None
    digest: str
    status: str
    problem: str | None
    sent: str | None


class Known(NamedTuple):
    """What is on the server under an id or a device's number."""

    id: str
    digest: str
    status: str
    position: int
    problem: dict[str, str] | None
    device: str
    n: int | None
    accepted_at: int | None

    @property
    def counts(self) -> bool:
        """Is it in the ledger, be it that the coach let it in?"""
        return self.status == STORED or self.accepted_at is not None


_COLUMNS = tuple(f'"{name}"' for name in Row._fields)
_INSERT = f"INSERT INTO entry ({', '.join(_COLUMNS)}) VALUES ({', '.join('?' for _ in _COLUMNS)})"


def add_rows(rows: Sequence[Row]) -> None:
    execute_many(_INSERT, rows)


def known_ids(athlete_id: str, ids: Sequence[str]) -> list[Known]:
    """What the server has under any of these ids."""
    return _known({"athlete_id": athlete_id}, "id", ids)


def known_numbers(athlete_id: str, device_id: str, numbers: Sequence[int]) -> list[Known]:
    """What the server has under these numbers of one device."""
    newest = (
        Entry.select(fn.MAX(Entry.n))
        .where(Entry.athlete == athlete_id, Entry.device == device_id)
        .scalar()
    )
    # A phone counts upwards: as a rule there is nothing to be found.
    wanted = [n for n in numbers if n <= (newest or 0)]
    return _known({"athlete_id": athlete_id, "device": device_id}, "n", wanted)


def _known(same: dict[str, str], column: str, values: Sequence[str | int]) -> list[Known]:
    """Raw SQL: building a thousand parameters through the mapper takes longer than the query."""
    if not values:
        return []
    mark = "?" if on_sqlite() else "%s"
    found = database.execute_sql(
        "SELECT id, digest, status, position, problem, device, n, accepted_at FROM entry"
        f" WHERE {' AND '.join(f'{name} = {mark}' for name in same)}"
        f" AND {column} IN ({', '.join([mark] * len(values))})",
        (*same.values(), *values),
    )
    return [
        Known(id_, digest, status, position, problem and json.loads(problem), device, n, accepted)
        for id_, digest, status, position, problem, device, n, accepted in found
    ]


def numbers_above(athlete_id: str, device_id: str, n: int, most: int) -> list[int]:
    """The device's numbers above `n` that are here, rising."""
    rows = (
        Entry.select(Entry.n)
        .where(Entry.athlete == athlete_id, Entry.device == device_id, Entry.n > n)
        .order_by(Entry.n)
        .limit(most)
    )
    return [row[0] for row in rows.tuples()]  # type: ignore[index]


def fresh_for(
    athlete_id: str,
    after: int,
    through: int,
    most: int,
    not_from: str | None,
    since: int,
) -> list[Entry]:
    """Stored entries of one athlete between two positions, oldest first.

    Without those of device `not_from`, and without those received before `since`. Accepted ones
    are left out: they went into the feed when they were accepted.
    """
    wanted = [
        Entry.athlete == athlete_id,
        Entry.position > after,
        Entry.position <= through,
        Entry.status == STORED,
        Entry.accepted_at.is_null(),
    ]
    if not_from is not None:
        wanted.append(Entry.device != not_from)
    if since:
        wanted.append(Entry.received_at >= since)
    return list(Entry.select().where(*wanted).order_by(Entry.position).limit(most))


def stored(athlete_id: str, session: str | None = None, kinds: Sequence[str] = ()) -> list[Entry]:
    """Every entry that counts, of one session or of certain kinds where that is asked."""
    wanted = [Entry.athlete == athlete_id, Entry.status == STORED]
    if session is not None:
        wanted.append(Entry.session == session)
    if kinds:
        wanted.append(Entry.kind.in_(list(kinds)))
    return list(Entry.select().where(*wanted).order_by(Entry.position))


def held(athlete_id: str) -> list[Entry]:
    """Entries that wait for a person, oldest first."""
    return list(
        Entry.select()
        .where(Entry.athlete == athlete_id, Entry.status == HELD, Entry.accepted_at.is_null())
        .order_by(Entry.position)
    )


def held_one(athlete_id: str, position: int) -> Entry | None:
    return Entry.get_or_none(
        Entry.athlete == athlete_id,
        Entry.position == position,
        Entry.status == HELD,
        Entry.accepted_at.is_null(),
    )


def mark_accepted(athlete_id: str, position: int, now: int, changes: dict[str, Any]) -> None:
    """Note that a held entry was let in, with the columns that this changes."""
    Entry.update(accepted_at=now, **changes).where(
        Entry.athlete == athlete_id, Entry.position == position
    ).execute()
