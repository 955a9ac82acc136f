"""Stories in which everything goes wrong: python -m tests.chaos --sequences 10000 --seed 1"""

import logging
import sys
import tempfile
from pathlib import Path

import click
from tests.chaos.story import Failed, Tally, tell_many
from tests.conftest import make_tables

from undercroft.store import database


@click.command()
@click.option("--sequences", default=200, show_default=True, help="How many stories.")
@click.option("--seed", default=1, show_default=True, help="Of the first; the next ones follow.")
def main(sequences: int, seed: int) -> None:
    """Tell stories from seeds; exit status 1 with the seed and its steps where one ends badly."""
    logging.disable(logging.CRITICAL)
    with tempfile.TemporaryDirectory(prefix="undercroft-chaos-") as scratch:
        pattern = Path(scratch) / "pattern.sqlite3"
        make_tables(str(pattern))
        database.close_all()
        try:
            with click.progressbar(length=sequences, label="stories", file=sys.stderr) as bar:
                seeds = range(seed, seed + sequences)
                tally = tell_many(seeds, pattern, lambda _: bar.update(1))
        except Failed as fault:
            raise click.ClickException(str(fault)) from None
    click.echo("\n".join(_lines(tally)))


def _lines(tally: Tally) -> list[str]:
    counts = tally.counts
    return [
        f"{tally.stories} stories in {tally.seconds:.0f} s, nothing lost, nothing doubled",
        f"{counts.confirmed} taps confirmed: {counts.stored} count, {counts.held} are held,",
        f"{counts.wiped} were on phones that were wiped before they could send",
        *(f"  {count} × {what}" for what, count in tally.steps.most_common()),
    ]


main()
