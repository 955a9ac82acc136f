"""How many statements a piece of work asks of the database."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import peewee
import pytest

from undercroft.store import sql


@contextmanager
def counted() -> Iterator[list[str]]:
    """The statements of the block, as they are asked, whichever way they go."""
    told: list[str] = []
    by_peewee, plain = peewee.Database.execute_sql, sql._execute

    def execute_sql(self: Any, statement: str, params: Any = None) -> Any:
        told.append(statement)
        return by_peewee(self, statement, params)

    def execute(statement: str, parameters: tuple[Any, ...]) -> Any:
        told.append(statement)
        return plain(statement, parameters)

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(peewee.Database, "execute_sql", execute_sql)
        patched.setattr(sql, "_execute", execute)
        yield told
