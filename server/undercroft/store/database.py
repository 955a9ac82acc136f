"""The one database of this process: SQLite in WAL mode with full durability, or PostgreSQL.

Peewee binds its tables to a proxy; `open_database` points it at the real thing. Connections are
pooled: closing the last SQLite connection would check-point the log on every request.
"""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from peewee import (
    Database,
    DatabaseProxy,
    OperationalError,
    PeeweeException,
    SqliteDatabase,
    TextField,
)
from playhouse.pool import PooledPostgresqlDatabase, PooledSqliteDatabase

LOCK_WAIT_S = 5
MOST_CONNECTIONS = 40

database = DatabaseProxy()

DatabaseFault = PeeweeException
"""Whatever the database answers instead of doing what it was asked."""

SQLITE_PRAGMAS = {
    "journal_mode": "wal",
    "synchronous": "full",
    "foreign_keys": 1,
    "busy_timeout": LOCK_WAIT_S * 1000,
    "cache_size": -16_000,
    # A page that is written again and again is carried into the file less often.
    "wal_autocheckpoint": 4000,
}


NOTHING_TO_ROLL_BACK = ("cannot rollback - no transaction is active", "no such savepoint")


class TransactionLost(OperationalError):
    """SQLite rolled the whole transaction back itself, as it does on a full disk.

    What is executed after that would stand alone: nobody may go on as if nothing had happened.
    """


def is_postgresql(location: str) -> bool:
    return location.startswith(("postgresql://", "postgres://"))


def open_database(location: str) -> Database:
    """Point this process at a database; connects to nothing yet."""
    real = _postgresql(location) if is_postgresql(location) else _sqlite(location)
    database.initialize(real)
    return real


def _sqlite(path: str) -> Database:
    """SQLite gives its side files the rights of the main one: nobody else may read these data."""
    Path(path).parent.mkdir(parents=True, exist_ok=True)
    Path(path).touch(mode=0o600)
    return PooledSqliteDatabase(
        path,
        pragmas=SQLITE_PRAGMAS,
        check_same_thread=False,
        max_connections=MOST_CONNECTIONS,
        timeout=LOCK_WAIT_S,
    )


def _postgresql(address: str) -> Database:
    return PooledPostgresqlDatabase(
        address.replace("postgres://", "postgresql://", 1),
        prefer_psycopg3=True,
        options=f"-c lock_timeout={LOCK_WAIT_S * 1000}",
        max_connections=MOST_CONNECTIONS,
        timeout=LOCK_WAIT_S,
    )


def on_sqlite() -> bool:
    return isinstance(database.obj, SqliteDatabase)


def connect() -> None:
    database.connect(reuse_if_open=True)


def disconnect() -> None:
    """Give this thread's connection back to the pool."""
    if not database.is_closed():
        database.close()


def close_all() -> None:
    """Close every connection; for the end of the process and of a test."""
    if database.obj is not None:
        database.close_all()


@contextmanager
def writing() -> Iterator[None]:
    """One write transaction, all or nothing. Within another one it is a savepoint.

    SQLite begins IMMEDIATE: a transaction that read first and wants to write later would fail
    with "database is locked" at once, without waiting.
    Raises TransactionLost where SQLite gave the transaction up by itself.
    """
    try:
        with database.atomic("IMMEDIATE") if on_sqlite() else database.atomic():
            yield
    except OperationalError as fault:
        if _nothing_to_roll_back(fault):
            raise TransactionLost(_first_reason(fault)) from fault
        raise


@contextmanager
def reading() -> Iterator[None]:
    """All that is read within is of one moment, whatever is written meanwhile; write nothing.

    Within another transaction it is that one's moment.
    """
    if database.in_transaction():
        yield
    else:
        with database.atomic("DEFERRED" if on_sqlite() else "REPEATABLE READ"):
            yield


def _nothing_to_roll_back(fault: BaseException) -> bool:
    return any(words in str(fault) for words in NOTHING_TO_ROLL_BACK)


def _first_reason(fault: BaseException) -> str:
    """Why the transaction was given up: what had happened before the roll-back failed."""
    reason: BaseException | None = fault
    while reason is not None and _nothing_to_roll_back(reason):
        reason = reason.__context__
    return str(reason)


class JsonText(TextField):
    """JSON kept as text on both engines, so that bytes and order come back as they went in.

    PostgreSQL's jsonb would sort the names and rewrite the numbers; nothing here asks the
    database to look inside a document.
    """

    def db_value(self, value: Any) -> str | None:
        return None if value is None else compact(value)

    def python_value(self, value: Any) -> Any:
        return None if value is None else json.loads(value)


compact = json.JSONEncoder(separators=(",", ":"), allow_nan=False).encode
"""JSON without spaces, all ASCII: NUL and lone surrogates stay escapes that both engines take."""


def is_full(fault: BaseException) -> bool:
    """Is this the database's way of saying that the disk is full?"""
    text = str(fault).lower()
    return isinstance(fault, OperationalError) and (
        "disk is full" in text or "no space left" in text or "could not extend" in text
    )
