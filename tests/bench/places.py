"""Where the databases to be measured lie: fresh ones, as durable as they are in use."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import psycopg
from tests.postgres import cluster

Fresh = Callable[[str], str]
"""The location of a database of that name, which nobody has used yet."""


def sqlite_in(folder: Path) -> Fresh:
    def fresh(name: str) -> str:
        folder.mkdir(parents=True, exist_ok=True)
        return str(folder / f"{name}.sqlite3")

    return fresh


@contextmanager
def postgresql() -> Iterator[Fresh]:
    """On a private cluster that waits for its disk, unlike that of the tests."""
    with cluster(durable=True) as address:

        def fresh(name: str) -> str:
            with psycopg.connect(address % "postgres", autocommit=True) as one:
                one.execute(f'CREATE DATABASE "{name}"'.encode())
            return address % name

        yield fresh
