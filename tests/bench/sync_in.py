"""10,000 entries in batches of 500 over loopback, against the least that could be done."""

import json
from collections.abc import Iterator
from pathlib import Path

from tests.bench import bare
from tests.bench.places import Fresh, sqlite_in
from tests.bench.row import Row
from tests.bench.stage import BATCH, stage

ENTRIES = 10_000
ROUNDS = 3


def bench(folder: Path) -> Iterator[Row]:
    return measured(folder, sqlite_in(folder))


def measured(folder: Path, fresh: Fresh) -> Iterator[Row]:
    first, again, least = [], [], []
    for number in range(ROUNDS):
        with stage(folder, fresh(f"round-{number}")) as phone:
            entries = phone.writes.many(ENTRIES)
            first.append(phone.in_batches(entries))
            again.append(phone.in_batches(entries))
        texts = [json.dumps(entries[at : at + BATCH]) for at in range(0, ENTRIES, BATCH)]
        least.append(bare.seconds_for(fresh(f"bare-{number}"), texts))
    took, replayed, floor = min(first), min(again), min(least)
    context = f"{took:.2f} s against {floor * 1000:.0f} ms"
    yield Row("10,000 entries against bare loads and executemany", took / floor, "×", 12, context)
    context = f"{replayed:.2f} s against {took:.2f} s"
    yield Row(
        "replay of what is stored, against the first time", replayed / took, "×", 0.6, context
    )
