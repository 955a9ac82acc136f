"""Whatever is asked, no answer is a surprise: python -m tests.fuzz --cases 10000 --seed 1"""

import logging
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import click
from tests.fuzz.asking import ENDPOINTS, ROLES, Heard, Round, ask, may_ask, operations
from tests.fuzz.stage import set_up

from undercroft.store import database

A_ROUND = 40
REFUSED = 8
"""Who is refused at the door asks once where others ask so often."""


@click.command()
@click.option("--cases", default=1000, show_default=True, help="How many in all.")
@click.option("--seed", default=1, show_default=True, help="Of the first pass; the next follow.")
@click.option("--endpoint", type=click.Choice(ENDPOINTS), help="This one alone.")
@click.option("--role", type=click.Choice(ROLES), help="As this person alone.")
def main(cases: int, seed: int, endpoint: str | None, role: str | None) -> None:
    """Ask every endpoint as each of the ROLES; exit status 1 on a surprise."""
    logging.disable(logging.CRITICAL)
    asked = list(product([endpoint] if endpoint else ENDPOINTS, [role] if role else ROLES))
    start = time.monotonic()
    with (
        tempfile.TemporaryDirectory(prefix="undercroft-fuzz-") as scratch,
        click.progressbar(length=cases, label="cases", file=sys.stderr) as bar,
    ):
        heard: dict[str, Heard] = {}
        for one, more in _all(Path(scratch), asked, cases, seed):
            heard.setdefault(one.endpoint, Heard()).add(more)
            bar.update(more.cases)
        database.close_all()
    click.echo("\n".join(_lines(heard, time.monotonic() - start)))
    surprises = [one for told in heard.values() for one in told.surprises]
    click.echo("\n".join(f"\n{one}" for one in surprises))
    sys.exit(1 if surprises else 0)


def _all(
    scratch: Path, asked: list[tuple[str, str]], cases: int, seed: int
) -> Iterator[tuple[Round, Heard]]:
    """Pass after pass until so many were asked; who has run out of questions is left out."""
    stage = set_up(scratch)
    known = operations(stage.app)
    left = cases
    while left > 0 and asked:
        each = min(A_ROUND, -(-left // len(asked)))
        fresh = []
        for endpoint, role in asked:
            due = min(left, each if may_ask(endpoint, role) else -(-each // REFUSED))
            if due <= 0:
                return
            one = Round(endpoint, role, seed, due)
            told = ask(stage, known[endpoint], one)
            yield one, told
            left -= told.cases
            if told.cases >= due:
                fresh.append((endpoint, role))
        asked, seed = fresh, seed + 1


def _lines(heard: dict[str, Heard], seconds: float) -> Iterator[str]:
    total: Counter[int] = sum((told.statuses for told in heard.values()), Counter())
    width = max(map(len, heard))
    for endpoint, told in sorted(heard.items()):
        yield f"{endpoint:{width}}  {told.cases:5}  {_statuses(told.statuses)}"
    surprises = sum(len(told.surprises) for told in heard.values())
    yield f"{total.total()} cases in {seconds:.0f} s: {_statuses(total)}"
    yield f"{surprises} surprises"


def _statuses(counted: Counter[int]) -> str:
    return ", ".join(f"{count} × {status}" for status, count in sorted(counted.items()))


main()
