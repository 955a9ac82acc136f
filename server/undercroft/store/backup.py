"""Consistent copies of a SQLite database, taken while it is in use, and put back."""

import sqlite3
from contextlib import closing
from pathlib import Path

SIDE_FILES = ("-wal", "-shm", "-journal")


class NoBackup(ValueError):
    """A file that is no sound database of this program; the text says why."""


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


def require_backup(path: Path) -> None:
    """Raises NoBackup unless the file is a whole SQLite database that this program made."""
    try:
        with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as connection:
            (verdict,) = connection.execute("PRAGMA integrity_check(1)").fetchone()
            epoch = connection.execute("SELECT 1 FROM meta WHERE name = 'epoch'").fetchone()
    except sqlite3.Error as fault:
        raise NoBackup(f"{path} is no backup of Undercroft ({fault})") from None
    if verdict != "ok" or epoch is None:
        raise NoBackup(f"{path} is damaged: {verdict}; take an older backup")


def put_back(backup: Path, target: Path, aside: Path) -> Path | None:
    """Put a copy of the backup in the place of `target`; what stood there is moved to `aside`.

    Returns `aside` if there was something to move. No server may be running on it.
    """
    moved = None
    if target.exists():
        with closing(sqlite3.connect(target)) as connection:
            connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        target.rename(aside)
        moved = aside
    for ending in SIDE_FILES:
        target.with_name(target.name + ending).unlink(missing_ok=True)
    target.parent.mkdir(parents=True, exist_ok=True)
    copy_sqlite(backup, target)
    return moved
