"""Plain SQL for the few statements of a sync: building them anew takes longer than running them.

`?` marks a parameter on both engines, `IN (*?)` one that holds a whole list (`listed`).
"""

import json
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Any

from peewee import __exception_wrapper__  # type: ignore[attr-defined]

from undercroft.store.database import compact, database, on_sqlite


def rows(sql: str, *parameters: Any) -> list[tuple[Any, ...]]:
    """All rows of the answer."""
    with __exception_wrapper__:
        found: list[tuple[Any, ...]] = _execute(sql, parameters).fetchall()
    return found


def run(sql: str, *parameters: Any) -> None:
    """A statement that answers nothing."""
    with __exception_wrapper__:
        _execute(sql, parameters)


def run_many(sql: str, parameters: Sequence[tuple[Any, ...]]) -> None:
    """One statement for many rows."""
    if parameters:
        with __exception_wrapper__:
            database.cursor().executemany(_for_engine(sql), parameters)


def parsed(texts: Iterable[str | None]) -> list[Any]:
    """What columns of JSON text hold; one text for all is read several times as fast as each."""
    found: list[Any] = json.loads(f"[{','.join(text or 'null' for text in texts)}]")
    return found


def marks(count: int) -> str:
    """So many parameters, for IN (…)."""
    return ", ".join("?" * count)


def listed(values: Sequence[str] | Sequence[int]) -> str | list[Any]:
    """The parameter of `IN (*?)`: hundreds of values in a statement that stays the same.

    With a mark for each PostgreSQL compares every line with every value.
    """
    return compact(values) if on_sqlite() else list(values)


def _execute(sql: str, parameters: tuple[Any, ...]) -> Any:
    """A cursor of sqlite3 or psycopg; both drivers run a statement on the connection itself."""
    return database.connection().execute(_for_engine(sql), parameters)


def _for_engine(sql: str) -> str:
    return _for_sqlite(sql) if on_sqlite() else _for_postgresql(sql)


@lru_cache(maxsize=256)
def _for_sqlite(sql: str) -> str:
    return sql.replace("IN (*?)", "IN (SELECT value FROM json_each(?))")


@lru_cache(maxsize=256)
def _for_postgresql(sql: str) -> str:
    return sql.replace("IN (*?)", "= ANY(?)").replace("?", "%s")
