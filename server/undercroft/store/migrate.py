"""Bring a database to this program's tables: numbered scripts, each run once, with history.

A database that knows a script this program lacks was made by a newer program and is left alone.
"""

import uuid
from pathlib import Path

from playhouse.migrations import Runner

from undercroft.store.database import database, on_sqlite, writing
from undercroft.store.models import Meta
from undercroft.store.sql import rows

SCRIPTS = Path(__file__).parent / "migrations"


class NewerDatabase(RuntimeError):
    """The database was written by a newer program than this one."""


def pending() -> tuple[str, ...]:
    """Names of the scripts that have yet to run. Raises NewerDatabase."""
    status = _runner().status()
    unknown = [script.name for script in status if script.path is None]
    if unknown:
        raise NewerDatabase(
            f"this database was written by a newer Undercroft (it has {', '.join(unknown)}); "
            "install that version or a later one, or restore an older backup"
        )
    return tuple(script.name for script in status if not script.applied)


def is_empty() -> bool:
    """Has no script ever been run here?"""
    return not _runner().applied()


def migrate() -> tuple[str, ...]:
    """Run what is pending and return its names; several processes may start at once."""
    with writing():
        if not on_sqlite():
            database.execute_sql("SELECT pg_advisory_xact_lock(7235)")
        names = tuple(_runner().up()) if pending() else ()
        if Meta.get_or_none(Meta.name == "epoch") is None:
            new_epoch()
    return names


def new_epoch() -> str:
    """Begin a new life of the database: phones will take a snapshot and send again."""
    name = str(uuid.uuid4())
    Meta.insert(name="epoch", value=name).on_conflict(
        conflict_target=[Meta.name], update={Meta.value: name}
    ).execute()
    return name


def epoch() -> str:
    """The name of the database's life."""
    ((name,),) = rows("SELECT value FROM meta WHERE name = 'epoch'")
    return str(name)


def _runner() -> Runner:
    return Runner(database.obj, str(SCRIPTS))
