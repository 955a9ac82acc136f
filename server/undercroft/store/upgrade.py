"""Bring a database up to date when a newer program starts on it, after a backup copy."""

from dataclasses import dataclass
from pathlib import Path

from undercroft.store import migrate
from undercroft.store.backup import copy_sqlite
from undercroft.store.database import is_postgresql


@dataclass(frozen=True, slots=True)
class Upgrade:
    """What was done: the scripts that ran, and the copy made before them."""

    scripts: tuple[str, ...]
    backup: Path | None


def bring_up_to_date(location: str) -> Upgrade:
    """Migrate the open database at `location`. Raises NewerDatabase, before touching anything.

    PostgreSQL runs all scripts in one transaction and is backed up by its own tools.
    """
    waiting = migrate.pending()
    backup = None
    if waiting and not is_postgresql(location) and not migrate.is_empty():
        backup = _free_name(Path(location), waiting[0])
        copy_sqlite(Path(location), backup)
    return Upgrade(migrate.migrate(), backup)


def _free_name(path: Path, script: str) -> Path:
    """A name beside the database that is not taken: an earlier try may have left a copy."""
    first = path.with_name(f"{path.name}.before-{script}")
    names = [first, *(first.with_name(f"{first.name}.{number}") for number in range(2, 1000))]
    return next(name for name in names if not name.exists())
