"""What a sync costs on PostgreSQL, against the same peers there."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain
from pathlib import Path

from tests.bench import history, one_set, sync_in
from tests.bench.places import postgresql
from tests.bench.row import Row


def bench(folder: Path) -> Iterator[Row]:
    with postgresql() as fresh:
        for row in chain(
            sync_in.measured(folder, fresh),
            one_set.measured(folder, fresh),
            history.measured(folder, fresh),
        ):
            yield replace(row, what=f"on PostgreSQL: {row.what}")
