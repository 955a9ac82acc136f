"""undercroft sheet: a block worked out into load sheets, without a database."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from functools import partial
from pathlib import Path

import click

from undercroft.commands.reading import read_block_file, read_file, refuse
from undercroft.commands.sheet_text import sheet_lines
from undercroft.documents.canonical import to_json
from undercroft.documents.catalogue import catalogue
from undercroft.documents.reading import read_athlete, read_kit, read_occlusion_record
from undercroft.documents.sheet import LoadSheetShape
from undercroft.domain.errors import DomainError
from undercroft.domain.program.calendar import monday_of
from undercroft.domain.program.finding import Severity
from undercroft.domain.sheet import Order, explain, standing_of, work_out
from undercroft.domain.sheet.session import NOTHING_ON_RECORD

FILE = click.Path(exists=True, dir_okay=False, path_type=Path)

LAST_START = date(9998, 12, 28)
"""The longest block ends a year later, before the calendar does."""


@click.command()
@click.argument("block", type=FILE)
@click.argument("kit", type=FILE)
@click.argument("athlete", type=FILE)
@click.option("--json", "as_json", is_flag=True, help="Print the sheets as JSON.")
@click.option(
    "--starts-on",
    type=click.DateTime(["%Y-%m-%d"]),
    help="Monday of the first week; the next Monday unless given.",
)
@click.option(
    "--screening",
    type=FILE,
    help="What is on record of occlusion work, a .json file; locked unless given.",
)
@click.option("--explain", "set_key", help="Show step by step how the load of this set came about.")
def sheet(
    block: Path,
    kit: Path,
    athlete: Path,
    as_json: bool,
    starts_on: datetime | None,
    screening: Path | None,
    set_key: str | None,
) -> None:
    """Work BLOCK out into load sheets for ATHLETE on KIT.

    BLOCK is a .json or .csv file, KIT and ATHLETE are .json files. A document with faults is
    refused with every fault's place and mend, and exit status 2.
    """
    starts = starts_on.date() if starts_on else next_monday(date.today())  # noqa: DTZ011
    if starts != monday_of(starts) or starts > LAST_START:
        raise click.BadParameter(f"{starts} is no Monday up to {LAST_START}; give one")
    person = read_file(athlete, partial(read_athlete, catalogue=catalogue()))
    order = Order(
        block=read_block_file(block, catalogue()),
        athlete=person,
        kit=read_file(kit, read_kit),
        catalogue=catalogue(),
        standing=standing_of(person),
        starts_on=starts,
        occlusion=read_file(screening, read_occlusion_record) if screening else NOTHING_ON_RECORD,
    )
    done = work_out(order)
    stops = [finding for finding in done.findings if finding.severity is Severity.STOP]
    if stops:
        refuse(block, stops)
    if set_key is not None:
        click.echo("\n".join(_explained(order, set_key)))
        return
    if as_json:
        shape = LoadSheetShape()
        click.echo(to_json({"sheets": [shape.dump(one) for one in done.sheets]}), nl=False)
        return
    click.echo("\n\n".join("\n".join(sheet_lines(one)) for one in done.sheets))


def _explained(order: Order, set_key: str) -> Iterator[str]:
    try:
        steps = explain(order, set_key)
    except DomainError as fault:
        raise click.ClickException(str(fault)) from None
    for number, step in enumerate(steps, start=1):
        yield f"{number}. {step.title}"
        yield from (f"   {line}" for line in step.lines)


def next_monday(today: date) -> date:
    """Today if it is a Monday, else the Monday to come."""
    return today + timedelta(days=-today.weekday() % 7)
