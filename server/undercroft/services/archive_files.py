"""Everything about an athlete as files to leave with: JSON for programs, CSV for people."""

import io
import zipfile
from collections.abc import Iterator
from datetime import UTC, datetime

from undercroft.documents.canonical import to_json
from undercroft.documents.csv_table import Cell, Table, write_table
from undercroft.domain.ledger import Entry
from undercroft.services import archive, ledger
from undercroft.services.archive_sets import sets_table
from undercroft.services.clock import day_of
from undercroft.services.monitoring.span import MOST_WEEKS
from undercroft.services.monitoring.tables import TABLES, table_of

READ_ME = """What Undercroft had of {name} on {day}.

athlete.json   everything: documents, kit, revisions as they were sent, own changes, screening
               records, every entry of the ledger, and entries that wait to be placed
entries.csv    the ledger, one entry a line, oldest first; what an entry says is JSON
sets.csv       what became of each set, under the name of what was done
numbers/       what the desk works out from it, of the last {weeks} weeks; maxima of all times

Masses are in kilograms, lengths in metres, times in ISO 8601 with the phone's own offset.
In CSV a cell that a spreadsheet would run as a formula begins with an apostrophe.
No password, link or token is in here.
"""


def file_name(now: int) -> str:
    return f"undercroft-archive-{day_of(now).isoformat()}.zip"


def zipped(athlete_id: str, now: int) -> bytes:
    """The files as one zip."""
    at = datetime.fromtimestamp(now // 1000, UTC)
    stamp = (at.year, at.month, at.day, at.hour, at.minute, at.second)
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as archived:
        for name, text in files(athlete_id, now):
            archived.writestr(zipfile.ZipInfo(name, stamp), text, zipfile.ZIP_DEFLATED)
    return held.getvalue()


def files(athlete_id: str, now: int) -> Iterator[tuple[str, str]]:
    """Name and text of each."""
    whole = archive.of_athlete(athlete_id)
    day = day_of(now).isoformat()
    yield "READ ME.txt", READ_ME.format(name=whole["name"], day=day, weeks=MOST_WEEKS)
    yield "athlete.json", to_json(whole, indent=1)
    entries = ledger.entries_of(athlete_id)
    yield "entries.csv", write_table(_entries(entries))
    yield "sets.csv", write_table(sets_table(athlete_id, entries))
    for name in TABLES:
        yield f"numbers/{name}.csv", write_table(table_of(athlete_id, name, MOST_WEEKS, now))


def _entries(entries: list[Entry]) -> Table:
    columns = ("position", "at", "kind", "revision", "session", "set", "id", "replaces")
    rows: list[tuple[Cell, ...]] = [
        (*(getattr(one, name) for name in columns), to_json(one.body, indent=None))
        for one in entries
    ]
    return Table((*columns, "says"), rows)
