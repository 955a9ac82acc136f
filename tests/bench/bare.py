"""The least that can be done with a database: one insert in a bare Flask route, many at once.

`python -m tests.bench.bare LOCATION PORT` serves the route.
"""

import json
import sqlite3
import sys
import threading
import time
from collections.abc import Sequence
from typing import Any

import psycopg
from flask import Flask, request
from waitress import serve


def opened(location: str) -> Any:
    """A connection that commits each statement by itself, durably."""
    if _on_postgresql(location):
        return psycopg.connect(location, autocommit=True)
    connection = sqlite3.connect(location, isolation_level=None)
    connection.executescript("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL")
    return connection


def insertion(location: str, columns: int) -> str:
    mark = "%s" if _on_postgresql(location) else "?"
    return f"INSERT INTO line VALUES ({', '.join([mark] * columns)})"


def seconds_for(location: str, texts: Sequence[str]) -> float:
    """For `json.loads` of each text and one `executemany` of its entries, a commit for each."""
    connection, insert = opened(location), insertion(location, 4)
    connection.execute("CREATE TABLE line (id TEXT PRIMARY KEY, n INTEGER, at TEXT, body TEXT)")
    start = time.perf_counter()
    for text in texts:
        rows = [
            (one["id"], one["n"], one["at"], json.dumps(one["body"])) for one in json.loads(text)
        ]
        connection.execute("BEGIN")
        connection.cursor().executemany(insert, rows)
        connection.execute("COMMIT")
    return time.perf_counter() - start


def main(location: str, port: int) -> None:
    app, here, insert = Flask("bare"), threading.local(), insertion(location, 2)
    opened(location).execute("CREATE TABLE line (id TEXT PRIMARY KEY, body TEXT)")

    def connection() -> Any:
        if not hasattr(here, "one"):
            here.one = opened(location)
        return here.one

    @app.post("/")
    def take() -> dict[str, str]:
        entry = json.loads(request.get_data())
        connection().execute(insert, (entry["id"], json.dumps(entry)))
        return {"status": "stored"}

    serve(app, host="127.0.0.1", port=port, threads=8, _quiet=True)


def _on_postgresql(location: str) -> bool:
    return location.startswith("postgresql:")


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
