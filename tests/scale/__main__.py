"""A squad with years behind it, and what each request costs then: python -m tests.scale …"""

import sqlite3
import sys
import tempfile
import time
from contextlib import closing
from datetime import date
from pathlib import Path

import click
from tests.conftest import make_tables
from tests.people import PASSWORD
from tests.scale import growth, squad, timings
from tests.scale.paper import put_down
from tests.scale.screens import scene_in

from undercroft.api import create_app
from undercroft.commands.demo import DATA
from undercroft.config import Settings
from undercroft.services.clock import HOUR_MS, Clock, day_of, now_ms
from undercroft.store import database

MEASURED = {
    "history": growth.by_history,
    "squad": growth.by_squad,
    "athletes": growth.by_athletes,
    "batch": growth.by_batch,
}

PARTS = 1000
"""Of the progress bar."""


@click.group()
def main() -> None:
    """A squad with years behind it, and what each request costs then."""


FOLDER = click.option(
    "--folder",
    type=click.Path(file_okay=False, path_type=Path),
    required=True,
    help="Where the data are, or will be.",
)


@main.command()
@click.option("--athletes", type=click.IntRange(1, 20_000), default=200, show_default=True)
@click.option("--years", type=click.FloatRange(0.02, 20), default=2.0, show_default=True)
@click.option("--until", type=click.DateTime(["%Y-%m-%d"]), help="The last day; today.")
@click.option("--seed", "number", default=1, show_default=True, help="Of the training.")
@FOLDER
def seed(athletes: int, years: float, until: date | None, number: int, folder: Path) -> None:
    """Fill an empty folder with so many athletes and so many years of training each."""
    if folder.exists() and any(folder.iterdir()):
        raise click.ClickException(f"{folder} holds something; give --folder an empty or new one")
    last = date(until.year, until.month, until.day) if until else day_of(now_ms())
    size = squad.Size(athletes, max(1, round(years * 52)), last)
    start = time.monotonic()
    folder.mkdir(parents=True, exist_ok=True)
    make_tables(str(folder / DATA))
    database.open_database(str(folder / DATA))
    database.connect()
    try:
        _fill(size, number)
    finally:
        database.close_all()
    click.echo(f"{athletes} athletes, {size.weeks} weeks each, in {time.monotonic() - start:.0f} s")
    click.echo(f"  undercroft serve --database {folder / DATA}")
    click.echo(f"  log in  {squad.COACH_EMAIL}  {PASSWORD}")


def _fill(size: squad.Size, number: int) -> None:
    with click.progressbar(length=PARTS, label="training", file=sys.stderr) as bar:
        done = 0.0

        def step(share: float) -> None:
            nonlocal done
            done += share * PARTS
            bar.update(int(done) - bar.pos)

        squad.seed(size, number, step)


@main.command("timings")
@click.option("--rounds", type=click.IntRange(1, 1000), default=20, show_default=True)
@click.option("--only", default="", help="Those with this text in the endpoint's name.")
@FOLDER
def timings_of_desk(rounds: int, folder: Path, only: str) -> None:
    """Print what each request of the desk costs; exit status 1 where the budget is missed."""
    app = create_app(Settings(database=str(folder / DATA), cheap_passwords=True), _clock(folder))
    scene = scene_in(app, rounds)
    lines = list(timings.measure(scene, rounds, only))
    click.echo("\n".join(timings.table(lines)))
    for endpoint in sorted(missing := timings.without_row(app)):
        click.echo(f"{endpoint} has no row in tests/scale/screens.py", err=True)
    sys.exit(0 if all(one.met for one in lines) and not missing else 1)


@main.command("growth")
@click.argument("names", nargs=-1, type=click.Choice(list(MEASURED)))
@click.option(
    "--folder",
    type=click.Path(file_okay=False, path_type=Path),
    default=Path(__file__).parents[2] / "server/docs/growth",
    help="Where plots and tables go; those of the documentation.",
)
def growth_of_costs(names: tuple[str, ...], folder: Path) -> None:
    """Measure how costs grow, and draw it; all, or those named. Takes some ten minutes."""
    with tempfile.TemporaryDirectory(prefix="undercroft-growth-") as scratch:
        for name in names or MEASURED:
            click.echo(f"{name}:", err=True)
            found = MEASURED[name](Path(scratch), lambda words: click.echo(f"  {words}", err=True))
            put_down(name, found.costs(), folder)
            database.close_all()


def _clock(folder: Path) -> Clock:
    """An hour after the squad was last heard, so that old data are not measured as old."""
    path = folder / DATA
    if not path.exists():
        raise click.ClickException(f"{folder} holds no squad; fill it with the command seed")
    with closing(sqlite3.connect(path)) as connection:
        ((last,),) = connection.execute("SELECT MAX(last_used_at) FROM device")
    return lambda: int(last) + HOUR_MS


main()
