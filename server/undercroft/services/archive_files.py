"""Everything about an athlete as files to leave with: JSON for programs, CSV for people."""

import io
import json
import zipfile
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from typing import Any

from undercroft.documents.canonical import plain
from undercroft.documents.csv_table import Cell, Table, write_table
from undercroft.domain.ledger import Entry, heads
from undercroft.services import archive, ledger
from undercroft.services.catalogues import catalogue_for
from undercroft.services.clock import day_of
from undercroft.services.monitoring.span import MOST_WEEKS
from undercroft.services.monitoring.tables import TABLES, table_of
from undercroft.store import revisions

READ_ME = """What Undercroft had of {name} on {day}.

athlete.json   everything: documents, kit, revisions as they were sent, own changes, screening
               records, every entry of the ledger, and entries that wait to be placed
entries.csv    the ledger, one entry a line, oldest first; what an entry says is JSON
sets.csv       every answer to a set that no later one replaces
numbers/       what the desk works out from it, of the last {weeks} weeks; maxima of all times

Masses are in kilograms, lengths in metres, times in ISO 8601 with the phone's own offset.
In CSV a cell that a spreadsheet would run as a formula begins with an apostrophe.
No password, link or token is in here.
"""

SAID = ("load_kg", "reps", "rir", "side", "quality", "why")
"""Of a set, what has a column of its own; the rest stands beside it as JSON."""


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
    yield "athlete.json", json.dumps(plain(whole), indent=1, ensure_ascii=False)
    entries = ledger.entries_of(athlete_id)
    yield "entries.csv", write_table(_entries(entries))
    yield "sets.csv", write_table(_sets(athlete_id, entries))
    for name in TABLES:
        yield f"numbers/{name}.csv", write_table(table_of(athlete_id, name, MOST_WEEKS, now))


def _entries(entries: list[Entry]) -> Table:
    columns = ("position", "at", "kind", "revision", "session", "set", "id", "replaces", "says")
    rows: list[tuple[Cell, ...]] = [
        (e.position, e.at, e.kind, e.revision, e.session, e.set, e.id, e.replaces, _json(e.body))
        for e in entries
    ]
    return Table(columns, rows)


def _sets(athlete_id: str, entries: list[Entry]) -> Table:
    columns = ("at", "revision", "session", "session_name", "exercise", "set", "answer")
    names = _names_of_sets(athlete_id)
    answers = heads([e for e in entries if e.kind in ("set.done", "set.skipped")])
    rows = [_set(e, names) for e in sorted(answers, key=lambda e: e.position)]
    return Table((*columns, *SAID, "more"), rows)


def _set(entry: Entry, names: Mapping[tuple[int, str], tuple[str, str]]) -> tuple[Cell, ...]:
    session, exercise = names.get((entry.revision or 0, entry.set or ""), (None, None))
    answer = entry.kind.removeprefix("set.")
    where = (entry.at, entry.revision, entry.session, session, exercise, entry.set, answer)
    rest = {name: value for name, value in entry.body.items() if name not in SAID}
    return (*where, *(entry.body.get(name) for name in SAID), _json(rest) if rest else None)


def _names_of_sets(athlete_id: str) -> dict[tuple[int, str], tuple[str, str]]:
    """By revision and set, the names of session and exercise."""
    known = catalogue_for(athlete_id)
    return {
        (row.number, one["key"]): (session.get("name", session["key"]), _name(plan, known))
        for row in revisions.all_revisions(athlete_id)
        for week in row.document["weeks"]
        for session in week["sessions"]
        for plan in session["exercises"]
        for one in plan["sets"]
    }


def _name(plan: Mapping[str, Any], known: Mapping[str, Any]) -> str:
    exercise = known.get(plan["exercise"])
    return str(plan["exercise"] if exercise is None else exercise.name)


def _json(body: Any) -> str:
    return json.dumps(body, ensure_ascii=False, separators=(",", ":"))
