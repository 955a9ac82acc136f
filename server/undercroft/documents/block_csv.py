"""A block as a table, one row a set: written here, read in block_table.py.

Columns that a person may leave out when writing by hand: all keys, and everything that is empty.
What is written here and read again is the identical document.
"""

import csv
from collections.abc import Iterator
from io import StringIO
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.cells import guarded, write_object, write_value
from undercroft.domain.program.block import Block

BLOCK_COLUMNS = {"block_key": "key", "block": "name", "block_note": "note"}
WEEK_COLUMNS = {"week_key": "key", "week": "name"}
SESSION_COLUMNS = {"session_key": "key", "session": "name", "day": "day", "session_note": "note"}
EXERCISE_COLUMNS = {
    "exercise_key": "key",
    "exercise": "exercise",
    "method": "method",
    "details": "details",
    "implement": "implement",
    "group": "group",
    "rest": "rest",
    "cue": "cue",
    "rig": "rig",
    "warm_up": "warm_up",
    "tolerance_percent": "tolerance_percent",
    "hold_the_plan": "hold_the_plan",
    "progression": "progression",
}
SET_COLUMNS = {
    "set_key": "key",
    "load": "load",
    "reps": "reps",
    "rir": "rir",
    "to_failure": "to_failure",
    "seconds": "seconds",
    "distance_m": "distance_m",
    "blocks": "blocks",
}
LEVELS = (BLOCK_COLUMNS, WEEK_COLUMNS, SESSION_COLUMNS, EXERCISE_COLUMNS, SET_COLUMNS)
COLUMNS = tuple(column for level in LEVELS for column in level)

TAGS = {"load": "basis", "progression": "rule"}
"""Cells whose object begins with a tag, and the tag's name in the document."""


def write_block_csv(block: Block) -> str:
    """The table of a block, with a header, in one spelling."""
    text = StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(COLUMNS)
    table.writerows(_rows(BlockShape().dump(block)))
    return text.getvalue()


def _rows(block: dict[str, Any]) -> Iterator[list[str]]:
    for week in block["weeks"]:
        for session in week["sessions"] or [{}]:
            for exercise in session.get("exercises", [{}]):
                for one in exercise.get("sets", [{}]):
                    yield _row((block, week, session, exercise, one))


def _row(levels: tuple[dict[str, Any], ...]) -> list[str]:
    return [
        guarded(_cell(name, thing.get(name)))
        for thing, columns in zip(levels, LEVELS, strict=True)
        for name in columns.values()
    ]


def _cell(name: str, value: Any) -> str:
    if value is None:
        return ""
    if name == "rest":
        return f"{value['from_s']}-{value['to_s']}"
    if name == "warm_up":
        return " ".join(f"{s['reps']}@{write_value(s['share'])}" for s in value) or "none"
    if name == "blocks":
        return "+".join(str(reps) for reps in value)
    if isinstance(value, dict):
        return write_object(value, TAGS.get(name))
    return write_value(value)
