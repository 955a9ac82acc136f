"""A block from a table with one row a set, as written by block_csv.py or by hand."""

import csv
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from io import StringIO
from typing import Any

from undercroft.documents.block_csv import (
    BLOCK_COLUMNS,
    COLUMNS,
    EXERCISE_COLUMNS,
    SESSION_COLUMNS,
    SET_COLUMNS,
    TAGS,
    WEEK_COLUMNS,
)
from undercroft.documents.cells import read_object, read_value, unguarded
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import read_block
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block

REPEAT = "sets"
"""Column for writing by hand: how many equal sets the row stands for."""

TEXTS = frozenset({"key", "name", "note", "exercise", "method", "implement", "group", "cue"})
LISTS = frozenset({"percents", "rirs", "sets", "things"})
NAMES = frozenset({"things", "of"})


@dataclass(slots=True)
class _Table:
    """The document as it grows, and the line on which each set stands."""

    block: dict[str, Any] = field(default_factory=lambda: {"weeks": []})
    lines: dict[str, int] = field(default_factory=dict)
    last: dict[str, dict[str, Any]] = field(default_factory=dict)


def read_block_csv(text: str, catalogue: Catalogue) -> Block:
    """A block from a table. Raises FaultyDocument whose faults name the line."""
    table = _Table()
    faults: list[Fault] = []
    for line, row in _lines(text):
        try:
            _add(table, row, line)
        except _CellFault as fault:
            faults.append(Fault(f"line {line}, column {fault.column}", "", fault.what, fault.right))
    if faults:
        raise FaultyDocument(tuple(faults))
    try:
        return read_block(table.block, catalogue)
    except FaultyDocument as fault:
        raise FaultyDocument(tuple(_on_line(f, table.lines) for f in fault.faults)) from None


class _CellFault(Exception):
    """A cell that cannot be read: its column, what is wrong, what would be right."""

    def __init__(self, column: str, what: str, right: str) -> None:
        super().__init__(column, what, right)
        self.column, self.what, self.right = column, what, right


def _lines(text: str) -> Iterator[tuple[int, dict[str, str]]]:
    try:
        yield from _lines_of_csv(text)
    except csv.Error as fault:
        right = "save it as CSV, with text that holds line ends in quotes"
        raise FaultyDocument((Fault("the table", "", f"is no CSV ({fault})", right),)) from None


def _lines_of_csv(text: str) -> Iterator[tuple[int, dict[str, str]]]:
    rows = csv.DictReader(StringIO(text.removeprefix("\ufeff")))
    unknown = [name for name in rows.fieldnames or [""] if name not in (*COLUMNS, REPEAT)]
    if unknown:
        what = f"column {unknown[0]!r} is not known"
        raise FaultyDocument((Fault("line 1", "", what, f"use {', '.join(COLUMNS)}"),))
    for row in rows:
        if None in row:
            what = "has more cells than the header"
            raise FaultyDocument(
                (Fault(f"line {rows.line_num}", "", what, "quote cells with commas"),)
            )
        cells = {name: unguarded(value) for name, value in row.items() if value}
        if cells:
            yield rows.line_num, cells


def _add(table: _Table, row: dict[str, str], line: int) -> None:
    table.block = {**_level(row, BLOCK_COLUMNS), **table.block}
    table.block = {"key": "block", "name": "Imported block", **table.block}
    week = _item(table, "week", table.block["weeks"], _level(row, WEEK_COLUMNS), "sessions", "w")
    session_of = _level(row, SESSION_COLUMNS)
    if not session_of:
        return
    session = _item(table, "session", week["sessions"], session_of, "exercises", f"{week['key']}-s")
    exercise_of = _level(row, EXERCISE_COLUMNS)
    exercise = _item(
        table, "exercise", session["exercises"], exercise_of, "sets", f"{session['key']}-"
    )
    one = _level(row, SET_COLUMNS)
    for _ in range(_repeat(row)):
        place = len(exercise["sets"])
        key = one.get("key") or f"{exercise['key']}.{place + 1}"
        exercise["sets"].append({**one, "key": key})
        table.lines[_path(table, week, session, place)] = line


def _item(
    table: _Table, level: str, items: list[Any], fields: dict[str, Any], below: str, stem: str
) -> dict[str, Any]:
    """The item that this row belongs to: the last one, or a new one where its fields differ."""
    if items and table.last.get(level) == fields:
        return items[-1]
    item = {"key": f"{stem}{len(items) + 1}", **fields, below: []}
    items.append(item)
    table.last[level] = fields
    for lower in {"week": ("session", "exercise"), "session": ("exercise",)}.get(level, ()):
        table.last.pop(lower, None)
    return item


def _level(row: dict[str, str], columns: dict[str, str]) -> dict[str, Any]:
    return {
        name: _value(column, name, row[column]) for column, name in columns.items() if column in row
    }


def _value(column: str, name: str, text: str) -> Any:
    if name in TEXTS:
        return text
    try:
        return READERS.get(name, read_value)(text.strip())
    except ValueError as fault:
        what, _, right = str(fault).partition("; ")
        raise _CellFault(column, what, right) from None


def _rest(text: str) -> dict[str, Any]:
    first, dash, last = text.partition("-")
    if not first.strip().isdigit() or (dash and not last.strip().isdigit()):
        raise ValueError(f"{text!r} is no rest; write seconds like 90 or 75-90")
    return {"from_s": int(first), "to_s": int(last or first)}


def _warm_up(text: str) -> list[dict[str, Any]]:
    steps = [] if text == "none" else text.split()
    pairs = [step.partition("@") for step in steps]
    if any(not at or not reps.isdigit() for reps, at, _ in pairs):
        raise ValueError(f"{text!r} is no ramp; write steps like 8@0.4 5@0.55, or none")
    return [{"reps": int(reps), "share": read_value(share)} for reps, _, share in pairs]


def _blocks(text: str) -> list[Any]:
    return [read_value(reps) for reps in text.split("+")]


def _object(name: str) -> Callable[[str], Any]:
    return lambda text: read_object(text, TAGS.get(name), LISTS, NAMES)


READERS: dict[str, Callable[[str], Any]] = {
    "rest": _rest,
    "warm_up": _warm_up,
    "blocks": _blocks,
    **{name: _object(name) for name in ("load", "progression", "details", "rig")},
}


def _repeat(row: dict[str, str]) -> int:
    text = row.get(REPEAT, "1")
    if not text.isdigit() or not 1 <= int(text) <= 30:
        raise _CellFault(REPEAT, f"{text!r} is no number of sets", "write 1 to 30")
    return int(text)


def _path(table: _Table, week: dict[str, Any], session: dict[str, Any], place: int) -> str:
    spot = (len(table.block["weeks"]), len(week["sessions"]), len(session["exercises"]))
    w, s, e = (count - 1 for count in spot)
    return f"weeks.{w}.sessions.{s}.exercises.{e}.sets.{place}"


def _on_line(fault: Fault, lines: dict[str, int]) -> Fault:
    """The same fault, told by the first line that holds the thing it speaks of."""
    steps = fault.path.split(".") if fault.path else []
    while steps:
        stem = ".".join(steps) + "."
        near = [line for path, line in lines.items() if f"{path}.".startswith(stem)]
        if near:
            return replace(fault, where=f"line {min(near)}: {fault.where}")
        steps.pop()
    return fault
