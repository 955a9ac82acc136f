"""The feed: positions per athlete, given under that athlete's lock.

Because they are given under the lock, and read only up to the athlete's last committed position,
nobody can see position 9 before position 8 exists.
"""

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any, NamedTuple

from undercroft.store.database import compact, on_sqlite, writing
from undercroft.store.models import Athlete
from undercroft.store.sql import rows, run


class UnknownAthlete(LookupError):
    """No athlete has this id."""


_asked: ContextVar[tuple[str, Callable[[], None]] | None] = ContextVar("asked", default=None)


@contextmanager
def asking_under_lock(athlete_id: str, ask: Callable[[], None]) -> Iterator[None]:
    """In here whoever takes the athlete's lock asks first, and writes nothing where that raises.

    What was asked before the lock may be true no more once it is had.
    """
    before = _asked.set((athlete_id, ask))
    try:
        yield
    finally:
        _asked.reset(before)


@contextmanager
def hold(athlete_id: str) -> Iterator[int]:
    """A write transaction that alone may give positions to this athlete. May be nested.

    Yields the last position given so far. Raises UnknownAthlete. All that was written is undone
    when the block raises.
    """
    with writing():
        found = rows(_HOLD_SQLITE if on_sqlite() else _HOLD_POSTGRESQL, athlete_id)
        if not found:
            raise UnknownAthlete(athlete_id)
        ((last,),) = found
        asked = _asked.get()
        if asked is not None and asked[0] == athlete_id:
            asked[1]()
        yield last


_HOLD_SQLITE = "SELECT position FROM athlete WHERE id = ?"
_HOLD_POSTGRESQL = _HOLD_SQLITE + " FOR NO KEY UPDATE"


@contextmanager
def athlete_lock(athlete_id: str) -> Iterator[Athlete]:
    """Like `hold`, with the athlete's row at hand."""
    with hold(athlete_id):
        yield Athlete.get_by_id(athlete_id)


def take_positions(athlete_id: str, count: int) -> range:
    """The next `count` positions; call with the athlete's lock held."""
    if count == 0:
        return range(0)
    ((last,),) = rows(
        "UPDATE athlete SET position = position + ? WHERE id = ? RETURNING position",
        count,
        athlete_id,
    )
    return range(last - count + 1, last + 1)


def publish(athlete_id: str, kind: str, key: str, body: Any) -> int:
    """Put one change into the feed and return its position; call with the athlete's lock held.

    An earlier change of the same kind and key is superseded: readers skip it from now on, and only
    its place is kept.
    """
    (position,) = take_positions(athlete_id, 1)
    run(
        "UPDATE change SET superseded = TRUE, body = 'null'"
        " WHERE athlete_id = ? AND kind = ? AND key = ? AND NOT superseded",
        athlete_id,
        kind,
        key,
    )
    run(
        "INSERT INTO change (athlete_id, position, kind, key, body, superseded)"
        " VALUES (?, ?, ?, ?, ?, FALSE)",
        athlete_id,
        position,
        kind,
        key,
        compact(body),
    )
    return position


def newest(athlete_id: str, kind: str, key: str) -> Any:
    """What the feed last said of that kind and key; None where it never did."""
    found = rows(
        "SELECT body FROM change WHERE athlete_id = ? AND kind = ? AND key = ? AND NOT superseded",
        athlete_id,
        kind,
        key,
    )
    return json.loads(found[0][0]) if found else None


_LEFT = (
    "SELECT key FROM change AS c WHERE athlete_id = ? AND kind = ? AND NOT superseded"
    " AND NOT EXISTS (SELECT 1 FROM change AS w WHERE w.athlete_id = c.athlete_id AND w.kind = ?"
    " AND w.key = c.key AND NOT w.superseded AND w.position > c.position)"
)


def keys_left(athlete_id: str, kind: str, withdrawn: str) -> set[str]:
    """Keys of that kind that the other kind has not taken back since."""
    return {key for (key,) in rows(_LEFT, athlete_id, kind, withdrawn)}


def last_position(athlete_id: str) -> int:
    """The position up to which everything is committed."""
    ((position,),) = rows("SELECT position FROM athlete WHERE id = ?", athlete_id)
    return int(position)


class ChangeRow(NamedTuple):
    """One line of the feed; `body` is JSON text."""

    position: int
    kind: str
    key: str
    body: str


def changes(athlete_id: str, after: int, through: int, most: int) -> list[ChangeRow]:
    """Changes that count, oldest first."""
    found = rows(
        "SELECT position, kind, key, body FROM change"
        " WHERE athlete_id = ? AND position > ? AND position <= ? AND NOT superseded"
        " ORDER BY position LIMIT ?",
        athlete_id,
        after,
        through,
        most,
    )
    return [ChangeRow(*row) for row in found]
