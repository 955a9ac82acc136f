"""Servers and browsers killed: python -m tests.kills --server 200 --browser 50 --seed 1"""

import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from random import Random

import click
from playwright.sync_api import sync_playwright
from tests import postgres
from tests.browser.chromium import PHONE, Handset, handset
from tests.browser.conftest import Squad, database_in, squad_in
from tests.kills.browsers import kill_browsers
from tests.kills.servers import kill_servers
from tests.server_process import ServerProcess


@click.command()
@click.option("--server", default=24, show_default=True, help="Servers, half on either database.")
@click.option("--browser", default=10, show_default=True, help="Browsers, each after a tap.")
@click.option("--seed", default=1, show_default=True, help="Of what is done and where they die.")
def main(server: int, browser: int, seed: int) -> None:
    """Kill servers in the middle of commits and browsers after taps, and check the claim."""
    for engine, kills in (("SQLite", server - server // 2), ("PostgreSQL", server // 2)):
        if kills:
            with _database(engine) as (location, folder), _bar(engine, kills) as bar:
                tally = kill_servers(location, folder, kills, seed, lambda: bar.update(1))
            click.echo("\n".join(tally.lines(engine)))
    if browser:
        with _phone() as (running, squad, handset), _bar("Chromium", browser) as bar:
            taps = kill_browsers(
                running, squad, handset, browser, Random(seed), lambda: bar.update(1)
            )
        click.echo("\n".join(taps.lines()))


@contextmanager
def _phone() -> Iterator[tuple[ServerProcess, Squad, Handset]]:
    """A phone, and the server that it is to be paired with."""
    with tempfile.TemporaryDirectory(prefix="undercroft-kills-") as scratch:
        folder = Path(scratch)
        location = database_in(folder)
        squad, server = squad_in(location), ServerProcess(location, folder / "server.log")
        server.start()
        try:
            with (
                sync_playwright() as playwright,
                handset(playwright, folder / "phone", viewport=PHONE) as phone,
            ):
                yield server, squad, phone
        finally:
            server.stop()


@contextmanager
def _database(engine: str) -> Iterator[tuple[str, Path]]:
    """Where it is, and a folder to write in."""
    with tempfile.TemporaryDirectory(prefix="undercroft-kills-") as scratch:
        folder = Path(scratch)
        if engine == "SQLite":
            yield str(folder / "undercroft.sqlite3"), folder
        else:
            with postgres.cluster() as address:
                yield address % "postgres", folder


def _bar(label: str, length: int) -> "click._termui_impl.ProgressBar[int]":
    return click.progressbar(length=length, label=label, file=sys.stderr)


if __name__ == "__main__":
    main()
