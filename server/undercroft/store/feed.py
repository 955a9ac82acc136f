"""The feed: positions per athlete, given under that athlete's lock.

Because they are given under the lock, and read only up to the athlete's last committed position,
nobody can see position 9 before position 8 exists.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from undercroft.store.database import on_sqlite, writing
from undercroft.store.models import Athlete, Change


class UnknownAthlete(LookupError):
    """No athlete has this id."""


@contextmanager
def athlete_lock(athlete_id: str) -> Iterator[Athlete]:
    """A write transaction that alone may give positions to this athlete. May be nested.

    Raises UnknownAthlete. All that was written is undone when the block raises.
    """
    with writing():
        rows = Athlete.select().where(Athlete.id == athlete_id)
        if not on_sqlite():
            rows = rows.for_update("FOR NO KEY UPDATE")  # type: ignore[arg-type]
        athlete = rows.get_or_none()
        if athlete is None:
            raise UnknownAthlete(athlete_id)
        yield athlete


def take_positions(athlete_id: str, count: int) -> range:
    """The next `count` positions; call with the athlete's lock held."""
    if count == 0:
        return range(0)
    raised = (
        Athlete.update(position=Athlete.position + count)
        .where(Athlete.id == athlete_id)
        .returning(Athlete.position)
    )
    last: int = next(iter(raised.execute())).position
    return range(last - count + 1, last + 1)


def publish(athlete_id: str, kind: str, key: str, body: Any) -> int:
    """Put one change into the feed and return its position; call with the athlete's lock held.

    An earlier change of the same kind and key is superseded: readers skip it from now on.
    """
    (position,) = take_positions(athlete_id, 1)
    Change.update(superseded=True).where(
        Change.athlete == athlete_id,
        Change.kind == kind,
        Change.key == key,
        ~Change.superseded,
    ).execute()
    Change.insert(
        athlete=athlete_id, position=position, kind=kind, key=key, body=body, superseded=False
    ).execute()
    return position


def last_position(athlete_id: str) -> int:
    """The position up to which everything is committed."""
    row = Athlete.select(Athlete.position).where(Athlete.id == athlete_id).get()
    return int(row.position)


def changes(athlete_id: str, after: int, through: int, most: int) -> list[dict[str, Any]]:
    """Changes that count, oldest first, as {"position", "kind", "key", "body"}."""
    rows = (
        Change.select(Change.position, Change.kind, Change.key, Change.body)
        .where(
            Change.athlete == athlete_id,
            Change.position > after,
            Change.position <= through,
            ~Change.superseded,
        )
        .order_by(Change.position)
        .limit(most)
    )
    return [dict(row) for row in rows.dicts()]  # type: ignore[call-overload]
