"""The ledger's lines as rows. Call what writes with the athlete's lock held."""

import json
from collections.abc import Collection, Sequence
from typing import Any, NamedTuple

from undercroft.store.models import Entry
from undercroft.store.sql import listed, marks, parsed, rows, run_many

STORED, HELD = "stored", "held"

ANY_POSITION = 2**63 - 1
"""Above every position."""


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
    """What is on the server under an id."""

    id: str
    digest: str
    status: str
    position: int
    problem: dict[str, str] | None
    accepted_at: int | None
    n: int | None

    @property
    def counts(self) -> bool:
        """Is it in the ledger, be it that the coach let it in?"""
        return self.status == STORED or self.accepted_at is not None


_COLUMNS = tuple(f'"{name}"' for name in Row._fields)
_INSERT = f"INSERT INTO entry ({', '.join(_COLUMNS)}) VALUES ({', '.join('?' for _ in _COLUMNS)})"


def add_rows(new: Sequence[Row]) -> None:
    run_many(_INSERT, new)


def known_ids(athlete_id: str, ids: Sequence[str]) -> list[Known]:
    """What the server has under any of these ids."""
    if not ids:
        return []
    found = rows(
        "SELECT id, digest, status, position, problem, accepted_at, n FROM entry"
        " WHERE athlete_id = ? AND id IN (*?)",
        athlete_id,
        listed(ids),
    )
    return [
        Known(id_, digest, status, position, problem and json.loads(problem), accepted, n)
        for id_, digest, status, position, problem, accepted, n in found
    ]


def newest_number(athlete_id: str, device_id: str) -> int:
    """The highest number of one device that the server has; 0 where it has none."""
    # Asked for MAX(n), PostgreSQL without statistics reads all of them.
    found = rows(
        "SELECT n FROM entry WHERE athlete_id = ? AND device = ? AND n IS NOT NULL"
        " ORDER BY n DESC LIMIT 1",
        athlete_id,
        device_id,
    )
    return int(found[0][0]) if found else 0


def known_numbers(athlete_id: str, device_id: str, numbers: Sequence[int]) -> list[tuple[int, str]]:
    """Which of these numbers of one device the server has, each with its entry's id."""
    if not numbers:
        return []
    found = rows(
        "SELECT n, id FROM entry WHERE athlete_id = ? AND device = ? AND n IN (*?)",
        athlete_id,
        device_id,
        listed(numbers),
    )
    return [(n, id_) for n, id_ in found]


def numbers_above(athlete_id: str, device_id: str, n: int, most: int) -> list[int]:
    """The device's numbers above `n` that are here, rising."""
    found = rows(
        "SELECT n FROM entry WHERE athlete_id = ? AND device = ? AND n > ? ORDER BY n LIMIT ?",
        athlete_id,
        device_id,
        n,
        most,
    )
    return [number for (number,) in found]


class Fresh(NamedTuple):
    """A stored line as the feed hands it out; `body` is JSON text."""

    position: int
    id: str
    v: int
    n: int | None
    kind: str
    replaces: str | None
    at: str
    revision: int | None
    session: str | None
    set: str | None
    body: str


_FRESH = (
    'SELECT position, id, v, n, kind, replaces, at, revision, session, "set", body FROM entry'
    " WHERE athlete_id = ? AND position > ? AND position <= ? AND status = 'stored'"
    " AND accepted_at IS NULL AND device <> ? AND received_at >= ? ORDER BY position LIMIT ?"
)


def fresh_for(
    athlete_id: str, after: int, through: int, most: int, not_from: str, since: int
) -> list[Fresh]:
    """Stored entries of one athlete between two positions, oldest first.

    Without those of device `not_from` ("": of none), and without those received before `since`.
    Accepted ones are left out: they went into the feed when they were accepted.
    """
    return [Fresh(*row) for row in rows(_FRESH, athlete_id, after, through, not_from, since, most)]


class Line(NamedTuple):
    """A stored entry as the ledger reads it.

    A tuple, because a year of them is read for one screen.
    """

    position: int
    id: str
    device: str
    n: int | None
    v: int | None
    kind: str
    at: str | None
    revision: int | None
    session: str | None
    set: str | None
    replaces: str | None
    body: Any


_LINE = ", ".join(f'"{name}"' for name in Line._fields)


def lines(where: str, *parameters: Any) -> list[Line]:
    """Stored entries for which that holds, oldest first."""
    found = rows(
        f"SELECT {_LINE} FROM entry WHERE {where} AND status = 'stored' ORDER BY position",
        *parameters,
    )
    bodies = parsed(row[-1] for row in found)
    return [Line._make((*row[:-1], body)) for row, body in zip(found, bodies, strict=True)]


def stored(
    athlete_id: str,
    session: str | None = None,
    kinds: Sequence[str] = (),
    revisions: Sequence[int] = (),
    since: int = 0,
) -> list[Line]:
    """Every entry that counts; of one session, certain kinds or revisions where that is asked.

    Those alone that came in at `since` or later, in ms.
    """
    where, parameters = "athlete_id = ?", [athlete_id, *kinds, *revisions]
    if kinds:
        where += f" AND kind IN ({marks(len(kinds))})"
    if revisions:
        where += f" AND revision IN ({marks(len(revisions))})"
    if session is not None:
        where += " AND session = ?"
        parameters.append(session)
    if since:
        where += " AND received_at >= ?"
        parameters.append(since)
    return lines(where, *parameters)


def stored_from(athlete_id: str, position: int) -> list[Line]:
    """Every entry that counts, from this position on."""
    return lines("athlete_id = ? AND position >= ?", athlete_id, position)


def held(athlete_id: str) -> list[Entry]:
    """Entries that wait for a person, oldest first; they have no kind, by which they are found."""
    return list(
        Entry.select()
        .where(
            Entry.athlete == athlete_id,
            Entry.kind == "",
            Entry.status == HELD,
            Entry.accepted_at.is_null(),
        )
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


def any_ended(athlete_id: str, session: str, revisions: Collection[int]) -> bool:
    """Was a session of this key finished or stopped, done from one of these revisions?"""
    found = rows(
        "SELECT 1 FROM entry WHERE athlete_id = ? AND session = ?"
        " AND kind IN ('session.finished', 'session.stopped')"
        f" AND revision IN ({marks(len(revisions))}) AND status = 'stored' LIMIT 1",
        athlete_id,
        session,
        *revisions,
    )
    return bool(found)


def any_before(athlete_id: str, kinds: Sequence[str], time: int) -> bool:
    """Did a stored entry of one of these kinds come in before a time in ms?"""
    found = rows(
        f"SELECT 1 FROM entry WHERE athlete_id = ? AND kind IN ({marks(len(kinds))})"
        " AND status = 'stored' AND received_at < ? ORDER BY position LIMIT 1",
        athlete_id,
        *kinds,
        time,
    )
    return bool(found)


def received_at(athlete_id: str, positions: Sequence[int]) -> dict[int, int]:
    """When the entries at these positions came in."""
    rows = Entry.select(Entry.position, Entry.received_at).where(
        Entry.athlete == athlete_id, Entry.position.in_(list(positions))
    )
    return {row.position: row.received_at for row in rows}


class Begun(NamedTuple):
    """A session that was begun, and the revision that it was begun from.

    `ended`: one of that key was finished or stopped, be it in an earlier run.
    """

    revision: int
    session: str
    ended: bool


_LAST_BEGUN = (
    "SELECT b.revision, b.session, EXISTS (SELECT 1 FROM entry AS e"
    " WHERE e.athlete_id = b.athlete_id AND e.session = b.session AND e.status = 'stored'"
    " AND e.kind IN ('session.finished', 'session.stopped'))"
    " FROM entry AS b WHERE b.athlete_id = ? AND b.kind = 'session.started'"
    " AND b.status = 'stored' AND b.revision IS NOT NULL AND b.position < ?"
    " ORDER BY b.position DESC LIMIT 1"
)


def last_begun(athlete_id: str, before: int = ANY_POSITION) -> Begun | None:
    """The session whose beginning reached the server last, or last before a position."""
    found = rows(_LAST_BEGUN, athlete_id, before)
    return Begun(*found[0]) if found else None
