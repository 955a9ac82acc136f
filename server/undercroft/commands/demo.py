"""undercroft demo: an invented squad in a data folder of its own, ready to be looked at."""

import json
import secrets
from dataclasses import dataclass, replace
from pathlib import Path

import click

from undercroft.commands.opening import opened, settings_or_exit
from undercroft.commands.serve import serve_until_stopped
from undercroft.config import Settings, default_data_folder
from undercroft.demo.scenario import COACH_EMAIL
from undercroft.demo.seed import seed
from undercroft.services import accounts, pairing
from undercroft.services.clock import now_ms

DATA = "undercroft.sqlite3"

NOTES = "demo.json"
"""Beside the data: the made-up password and whose phone is to be paired."""

MARK = "demo-is-being-filled"
"""Beside the data until they are whole: what stands here is the demo's, and half of it."""


@dataclass(frozen=True, slots=True)
class Notes:
    password: str
    athlete: str


@click.command()
@click.option("--fresh", is_flag=True, help="Throw the demo's data away and begin anew.")
@click.option(
    "--folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where the demo's data are kept, apart from your own.",
)
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option("--port", type=click.IntRange(0, 65535), default=8000, show_default=True)
@click.option("--no-serve", is_flag=True, help="Fill the data folder and print, but serve nothing.")
def demo(fresh: bool, folder: Path | None, host: str, port: int, no_serve: bool) -> None:
    """Show an invented mountain-rescue squad and its coach's desk.

    The first start fills a data folder of its own; later ones keep what was done there. A start
    that was broken off while filling is begun anew.
    """
    folder = folder or default_data_folder("undercroft-demo")
    _prepare(folder, fresh=fresh)
    location = str(folder / DATA)
    settings = replace(settings_or_exit(location), host=host, port=port)
    with opened(location):
        notes = _read(folder) or _fill(folder, settings)
        _print(notes, settings)
    if not no_serve:
        serve_until_stopped(settings)


def _prepare(folder: Path, *, fresh: bool) -> None:
    """Clear away the demo's own data if asked to, or if half of them are missing.

    Raises ClickException for a folder with anything in it that no demo began.
    """
    folder.mkdir(parents=True, exist_ok=True)
    whole, half = (folder / NOTES).exists(), (folder / MARK).exists()
    if not (whole or half) and any(folder.iterdir()):
        raise click.ClickException(
            f"{folder} holds something that is not the demo's; give --folder an empty or new one"
        )
    if half or (whole and fresh):
        (folder / MARK).touch()
        for file in (*folder.glob(f"{DATA}*"), folder / NOTES):
            file.unlink(missing_ok=True)
    if not (folder / NOTES).exists():
        (folder / MARK).touch()


def _read(folder: Path) -> Notes | None:
    file = folder / NOTES
    return Notes(**json.loads(file.read_text(encoding="utf-8"))) if file.exists() else None


def _fill(folder: Path, settings: Settings) -> Notes:
    click.echo("filling the demo with an invented squad:")
    password = "-".join(secrets.token_hex(2) for _ in range(4))
    hasher = accounts.make_hasher(cheap=settings.cheap_passwords)
    notes = Notes(password, seed(hasher, password, now_ms(), click.echo))
    text = json.dumps({"password": notes.password, "athlete": notes.athlete})
    (folder / NOTES).touch(mode=0o600)
    (folder / NOTES).write_text(text, encoding="utf-8")
    (folder / MARK).unlink()
    return notes


def _print(notes: Notes, settings: Settings) -> None:
    origin = settings.origin or f"http://localhost:{settings.port}"
    _, secret, _ = pairing.invite(notes.athlete, now_ms())
    code, _ = pairing.make_code(notes.athlete, now_ms())
    click.echo("Everybody and every place in this demo is invented.")
    click.echo(f"  desk          {origin}/desk")
    click.echo(f"  log in        {COACH_EMAIL}  {notes.password}")
    click.echo(f"  pairing link  {origin}/pair#{secret}")
    click.echo(f"  or type       {code}  (good for ten minutes, at {origin})")
