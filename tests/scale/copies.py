"""Athletes who did what another one did: their rows, copied by the database itself.

A row that has the athlete first in its key says nothing else of who it belongs to, but for three:
an entry names its phone, and the feed's word on the athlete holds id and name.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from peewee import CompositeKey

from undercroft.services import devices, tokens
from undercroft.services.people import feed_body
from undercroft.store import athletes
from undercroft.store.database import compact
from undercroft.store.models import ALL, Athlete, Device, Entry, Table
from undercroft.store.sql import run


def tables() -> Iterator[type[Table]]:
    """Those that have the athlete first in their key."""
    for table in ALL:
        key = table._meta.primary_key
        if isinstance(key, CompositeKey) and key.field_names[0] == "athlete":
            yield table


@dataclass(frozen=True, slots=True)
class Copy:
    """Somebody with another one's history, on a phone of their own, which knows its token."""

    id: str
    phone: str
    token: str


def copy(athlete_id: str, name: str, now: int, coach_id: str | None = None) -> Copy:
    """A new athlete of that name with the same history; of another coach where one is given."""
    new = tokens.new_id(now)
    whose = {} if coach_id is None else {"coach_id": coach_id}
    _row(Athlete, athlete_id, {"id": new, "name": name, **whose})
    (old,) = devices.devices_of(athlete_id)
    phone, token = tokens.new_id(now), tokens.new_token()
    told = {"id": phone, "athlete_id": new, "token_hash": tokens.fingerprint(token)}
    _row(Device, old.id, told)
    for table in tables():
        _rows(table, athlete_id, new, {"device": phone} if table is Entry else {})
    _rename(athlete_id, new)
    return Copy(new, phone, token)


def _row(table: type[Table], id_: str, changed: dict[str, str]) -> None:
    _insert(table, changed, "id = ?", id_)


def _rows(table: type[Table], old: str, new: str, changed: dict[str, str]) -> None:
    _insert(table, {"athlete_id": new, **changed}, "athlete_id = ?", old)


def _insert(table: type[Table], changed: dict[str, str], where: str, which: str) -> None:
    """Rows as they are, but for the columns that are changed."""
    names = [field.column_name for field in table._meta.sorted_fields]
    into = ", ".join(f'"{name}"' for name in names)
    taken = ", ".join("?" if name in changed else f'"{name}"' for name in names)
    values = [changed[name] for name in names if name in changed]
    name = table._meta.table_name
    run(f'INSERT INTO "{name}" ({into}) SELECT {taken} FROM "{name}" WHERE {where}', *values, which)


def _rename(old: str, new: str) -> None:
    """The feed's word on the athlete, which is the same kind under another key."""
    row = athletes.athlete_with_coach(new)
    run(
        "UPDATE change SET key = ?, body = CASE WHEN superseded THEN body ELSE ? END"
        " WHERE athlete_id = ? AND kind = 'athlete' AND key = ?",
        new,
        compact(feed_body(row, row.coach.name)),
        new,
        old,
    )
