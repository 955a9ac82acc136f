"""What is in the database, to be compared before and after."""

from typing import Any

from undercroft.store import database
from undercroft.store.models import ALL, CoachLogin, Device, RateLimit

COARSE = {CoachLogin: {"last_used_at"}, Device: {"last_used_at"}}
"""When somebody was last there is no content."""


def everything() -> dict[str, list[dict[str, Any]]]:
    """All rows of all tables but the counts of tries."""
    database.connect()
    try:
        return {
            table.__name__: sorted(
                (_without(row, COARSE.get(table, set())) for row in table.select().dicts()),
                key=repr,
            )
            for table in ALL
            if table is not RateLimit
        }
    finally:
        database.disconnect()


def _without(row: dict[str, Any], names: set[str]) -> dict[str, Any]:
    return {name: value for name, value in row.items() if name not in names}
