"""Consistent copies of a SQLite database, taken while it is in use."""

import sqlite3
from contextlib import closing
from pathlib import Path


def copy_sqlite(source: Path, target: Path) -> None:
    """Copy the database as it is at one moment; `target` must not exist yet.

    Written beside it first: a copy that was broken off never carries the final name.
    """
    if target.exists():
        raise FileExistsError(f"{target} exists; name a file that does not")
    unfinished = target.with_name(target.name + ".unfinished")
    unfinished.unlink(missing_ok=True)
    unfinished.touch(mode=0o600)
    with closing(sqlite3.connect(source)) as here, closing(sqlite3.connect(unfinished)) as there:
        here.backup(there)
        there.execute("PRAGMA journal_mode=DELETE")
    unfinished.rename(target)
