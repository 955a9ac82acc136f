"""undercroft import and export: documents in and out of the database."""

import json
from functools import partial
from pathlib import Path

import click

from undercroft.commands.opening import database_option, opened
from undercroft.commands.reading import read_block_file, read_file
from undercroft.documents.athlete import AthleteShape
from undercroft.documents.block import BlockShape
from undercroft.documents.canonical import plain, to_json
from undercroft.documents.kit import KitShape
from undercroft.documents.reading import read_athlete, read_kit
from undercroft.services import archive, athlete_page, athletes, blocks
from undercroft.services.catalogues import catalogue_of
from undercroft.services.clock import now_ms
from undercroft.services.refusals import Refusal

FILE = click.Path(exists=True, dir_okay=False, path_type=Path)
coach_option = click.option("--coach", "email", required=True, help="E-mail address of the coach.")


@click.group("import")
def import_() -> None:
    """Take documents into the database."""


@import_.command("block")
@click.argument("file", type=FILE)
@coach_option
@database_option
def import_block(file: Path, email: str, location: str | None) -> None:
    """Add the block in FILE (.json or .csv) to a coach's blocks."""
    with opened(location):
        coach_id = _coach(email)
        block = read_block_file(file, catalogue_of(coach_id))
        blocks.add(coach_id, plain(BlockShape().dump(block)), now_ms())
    click.echo(f"{block.name} is on the desk of {email}")


@import_.command("athlete")
@click.argument("file", type=FILE)
@click.option("--kit", "kit_file", type=FILE, help="The kit that stands in the athlete's gym.")
@coach_option
@database_option
def import_athlete(file: Path, kit_file: Path | None, email: str, location: str | None) -> None:
    """Add the athlete in FILE (.json) to a coach's squad."""
    kit = read_file(kit_file, read_kit) if kit_file else None
    with opened(location):
        coach_id = _coach(email)
        athlete = read_file(file, partial(read_athlete, catalogue=catalogue_of(coach_id)))
        athlete_id = athletes.add_athlete(coach_id, athlete.name, now_ms()).id
        athlete_page.save_document(athlete_id, plain(AthleteShape().dump(athlete)))
        if kit is not None:
            athlete_page.save_kit(athlete_id, plain(KitShape().dump(kit)))
    click.echo(f"{athlete.name} is in the squad of {email}")


@click.group()
def export() -> None:
    """Write documents out of the database."""


@export.command("block")
@click.argument("name")
@click.option("--format", "form", type=click.Choice(["json", "csv"]), default="json")
@coach_option
@database_option
def export_block(name: str, form: str, email: str, location: str | None) -> None:
    """Print the coach's block called NAME."""
    with opened(location):
        coach_id = _coach(email)
        found = [line.id for line in blocks.blocks_of(coach_id) if line.name == name]
        if not found:
            names = ", ".join(line.name for line in blocks.blocks_of(coach_id)) or "none"
            raise click.ClickException(f"no block is called {name!r}; there are: {names}")
        text = blocks.export(coach_id, found[0], form)
    click.echo(text, nl=False)


@export.command("athlete")
@click.argument("name")
@coach_option
@database_option
def export_athlete(name: str, email: str, location: str | None) -> None:
    """Print everything about the athlete called NAME as one JSON document."""
    with opened(location):
        squad = athletes.own_athletes(_coach(email))
        found = [one.id for one in squad if one.name == name]
        if not found:
            names = ", ".join(one.name for one in squad) or "none"
            raise click.ClickException(f"no athlete is called {name!r}; there are: {names}")
        text = to_json(json.loads(json.dumps(archive.of_athlete(found[0]))))
    click.echo(text, nl=False)


def _coach(email: str) -> str:
    try:
        return archive.coach_id(email)
    except Refusal as refused:
        raise click.ClickException(f"{refused.what}; {refused.right}") from None
