"""Taking in a sync with ten years of history behind it, against one month."""

import time
from collections.abc import Iterator
from pathlib import Path

from tests.bench.places import Fresh, sqlite_in
from tests.bench.row import Row
from tests.bench.stage import BATCH, Paired, stage

SETS_A_YEAR = 6_000
"""Four sessions of thirty sets in fifty weeks: our own choice."""

ASKED = 300


def bench(folder: Path) -> Iterator[Row]:
    return measured(folder, sqlite_in(folder))


def measured(folder: Path, fresh: Fresh) -> Iterator[Row]:
    month = _after(folder, fresh("month"), SETS_A_YEAR // 12)
    decade = _after(folder, fresh("decade"), 10 * SETS_A_YEAR)
    context = f"{decade * 1000:.2f} ms against {month * 1000:.2f} ms a request, medians"
    yield Row("one set after ten years, against one month", decade / month, "×", 1.2, context)


def _after(folder: Path, location: str, sets: int) -> float:
    """The median of many exchanges of one set, with so many sets stored before."""
    with stage(folder, location) as phone:
        for _ in range(0, sets, BATCH):
            # As the app does: what a phone has read it does not ask for again.
            phone.reads(phone.sends(phone.writes.many(BATCH)))
        return sorted(_one(phone) for _ in range(ASKED))[ASKED // 2]


def _one(phone: Paired) -> float:
    entry = phone.writes.done("squat.1")
    start = time.perf_counter()
    phone.sends([entry])
    return time.perf_counter() - start
