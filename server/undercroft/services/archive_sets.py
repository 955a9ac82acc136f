"""What became of each set, as a table to leave with: under the name of what was in fact done."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from undercroft.documents.canonical import to_json
from undercroft.documents.csv_table import Cell, Table
from undercroft.domain.exercise import Catalogue
from undercroft.domain.ledger import Entry, SessionRecord, SetRecord, fold
from undercroft.domain.swap import swapped_exercise, swapped_rig
from undercroft.services.catalogues import catalogue_for
from undercroft.store import revisions, sessions

SAID = ("load_kg", "reps", "rir", "side", "quality", "why")
"""Of a set, what has a column of its own; the rest stands beside it as JSON."""

COLUMNS = ("at", "revision", "session", "session_name", "exercise", "planned", "set", "answer")


@dataclass(frozen=True, slots=True)
class _Line:
    """An exercise of a session by its keys, and the session's name."""

    session: str
    key: str
    exercise: str


Lines = Mapping[tuple[int | None, str, str], _Line]
"""By revision, session, and the key of a set or of the line itself, to which sets are added."""


def sets_table(athlete_id: str, entries: Sequence[Entry]) -> Table:
    """In the order in which the answers came in; where two phones gave two, the one that counts."""
    lines, known = _lines(athlete_id), catalogue_for(athlete_id)
    by_id = {entry.id: entry for entry in entries}
    rows = [
        (by_id[answer.id], _named(by_id[answer.id], answer, record, lines, known))
        for record in _records(athlete_id, entries)
        for told in record.sets.values()
        for answer in told.answers()
    ]
    rows.sort(key=lambda row: row[0].position)
    return Table((*COLUMNS, *SAID, "more"), [_row(*row) for row in rows])


def _records(athlete_id: str, entries: Sequence[Entry]) -> list[SessionRecord]:
    """A session is one key of one run, under whichever of its revisions it was done."""
    runs: dict[int | None, int] = dict(sessions.runs_of(athlete_id).items())
    told = fold(replace(one, revision=runs.get(one.revision, one.revision)) for one in entries)
    return list(told.sessions.values())


def _lines(athlete_id: str) -> Lines:
    found: dict[tuple[int | None, str, str], _Line] = {}
    for row in revisions.all_revisions(athlete_id):
        for session in (one for week in row.document["weeks"] for one in week["sessions"]):
            for plan in session["exercises"]:
                name = session.get("name", session["key"])
                line = _Line(name, plan["key"], plan["exercise"])
                for key in (plan["key"], *(one["key"] for one in plan["sets"])):
                    found[row.number, session["key"], key] = line
    return found


def _named(
    entry: Entry, answer: SetRecord, record: SessionRecord, lines: Lines, known: Catalogue
) -> tuple[Cell, Cell, Cell]:
    """Names of the session, of what was done, and of what was planned where that is another."""
    where = (entry.revision, entry.session or "")
    line = lines.get((*where, answer.added_to or entry.set or ""))
    if line is None:
        return None, None, None
    done_as = record.done_as(line.key, line.exercise, answer)
    planned = _name(line.exercise, known)
    done = _name(done_as, known)
    return line.session, done, None if done == planned else planned


def _name(to: str, known: Catalogue) -> str:
    exercise = known.get(swapped_exercise(to))
    rigged = f", {swapped_rig(to).replace('-', ' ')}" if swapped_rig(to) else ""
    return to if exercise is None else exercise.name + rigged


def _row(entry: Entry, named: tuple[Cell, Cell, Cell]) -> tuple[Cell, ...]:
    answer = entry.kind.removeprefix("set.")
    where = (entry.at, entry.revision, entry.session, *named, entry.set, answer)
    rest: dict[str, Any] = {k: value for k, value in entry.body.items() if k not in SAID}
    more = to_json(rest, indent=None) if rest else None
    return (*where, *(entry.body.get(name) for name in SAID), more)
