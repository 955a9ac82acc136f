"""Every budget with its figure: python -m tests.bench [name …]"""

import sys
import tempfile
import time
from pathlib import Path

import click
from tests.bench import history, lighthouse, loads, on_postgresql, one_set, phone, pouch, sync_in
from tests.bench.row import Bench, Row, lines

BENCHES: dict[str, Bench] = {
    "sync": sync_in.bench,
    "one-set": one_set.bench,
    "history": history.bench,
    "postgresql": on_postgresql.bench,
    "loads": loads.bench,
    "phone": phone.bench,
    "pouch": pouch.bench,
    "lighthouse": lighthouse.bench,
}


@click.command()
@click.argument("names", nargs=-1, type=click.Choice(list(BENCHES)))
def main(names: tuple[str, ...]) -> None:
    """Measure the budgets named, or all; exit status 1 where one is missed."""
    rows: list[Row] = []
    with tempfile.TemporaryDirectory(prefix="undercroft-bench-") as scratch:
        for name in names or BENCHES:
            start = time.monotonic()
            rows += BENCHES[name](Path(scratch) / name)
            click.echo(f"{name}: {time.monotonic() - start:.0f} s", err=True)
    click.echo("\n".join(lines(rows)))
    sys.exit(0 if all(row.met for row in rows) else 1)


main()
