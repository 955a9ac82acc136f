"""Erase an athlete: every table that names them does so by a key that goes with them."""

from collections.abc import Iterator
from contextlib import contextmanager

from undercroft.store.database import database, on_sqlite
from undercroft.store.models import Athlete, ErasedDevice
from undercroft.store.sql import rows, run


@contextmanager
def leaving_no_trace() -> Iterator[None]:
    """What a SQLite file deletes within is overwritten, and its side file emptied afterwards.

    PostgreSQL frees the space by its own vacuum, a while later.
    """
    if not on_sqlite():
        yield
        return
    database.execute_sql("PRAGMA secure_delete = ON").fetchall()
    try:
        yield
    finally:
        database.execute_sql("PRAGMA secure_delete = OFF").fetchall()
    database.execute_sql("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()


def remember_phones(athlete_id: str, now: int, forget_before: int) -> None:
    """Keep the fingerprints of the athlete's phones, so that each can be told what happened."""
    ErasedDevice.delete().where(ErasedDevice.erased_at < forget_before).execute()
    run(
        "INSERT INTO erased_device (token_hash, erased_at)"
        " SELECT token_hash, ? FROM device WHERE athlete_id = ?",
        now,
        athlete_id,
    )


def erase(athlete_id: str) -> None:
    """The athlete and everything that hangs on them."""
    Athlete.delete().where(Athlete.id == athlete_id).execute()


def was_erased(token_hash: str) -> bool:
    """Was this the phone of an athlete who was erased?"""
    return bool(rows("SELECT 1 FROM erased_device WHERE token_hash = ?", token_hash))
