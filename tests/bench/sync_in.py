"""10,000 entries in batches of 500 over loopback, against the least that could be done."""

import json
import sqlite3
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from tests.bench.row import Row
from tests.bench.stage import BATCH, stage

ENTRIES = 10_000
ROUNDS = 3


def bench(folder: Path) -> Iterator[Row]:
    first, again, bare = [], [], []
    for number in range(ROUNDS):
        with stage(folder / f"round-{number}") as phone:
            entries = phone.writes.many(ENTRIES)
            first.append(phone.in_batches(entries))
            again.append(phone.in_batches(entries))
        bare.append(_bare(folder / f"bare-{number}.sqlite3", entries))
    took, replayed, least = min(first), min(again), min(bare)
    context = f"{took:.2f} s against {least * 1000:.0f} ms"
    yield Row("10,000 entries against bare loads and executemany", took / least, "×", 12, context)
    context = f"{replayed:.2f} s against {took:.2f} s"
    yield Row(
        "replay of what is stored, against the first time", replayed / took, "×", 0.6, context
    )


def _bare(path: Path, entries: Sequence[Any]) -> float:
    """`json.loads` and one `executemany` of the same rows, durably."""
    texts = [json.dumps(entries[at : at + BATCH]) for at in range(0, len(entries), BATCH)]
    connection = sqlite3.connect(path)
    connection.executescript(
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;"
        "CREATE TABLE line (id TEXT PRIMARY KEY, n INTEGER, at TEXT, body TEXT)"
    )
    start = time.perf_counter()
    for text in texts:
        rows = [
            (one["id"], one["n"], one["at"], json.dumps(one["body"])) for one in json.loads(text)
        ]
        with connection:
            connection.executemany("INSERT INTO line VALUES (?, ?, ?, ?)", rows)
    return time.perf_counter() - start
