"""The file in which a phone hands over what it could not send, to be taken in at the desk.

One entry a line, so that a file that was cut short or hurt in one place loses that place only.
"""

from dataclasses import dataclass
from typing import Any

from marshmallow import ValidationError, fields, validate

from undercroft.documents.faults import Fault, FaultyDocument, faults_of
from undercroft.documents.fields import Text, Whole
from undercroft.documents.reading import parse_json
from undercroft.documents.shape import Shape

FORMAT = "undercroft hand-over"
VERSION = 1
ENTRIES = '"entries": ['
"""Where the lines begin that are one entry each."""


@dataclass(frozen=True, slots=True)
class Whose:
    id: str
    name: str


@dataclass(frozen=True, slots=True)
class HandOver:
    """`count` is how many entries were put in; fewer `entries` where the file is damaged."""

    format: str
    v: int
    device: str
    epoch: str
    athlete: Whose
    made_at: str
    count: int
    entries: tuple[Any, ...]

    @property
    def lost(self) -> int:
        return max(0, self.count - len(self.entries))


class WhoseShape(Shape):
    builds = Whose
    id = Text(64, 1, required=True)
    name = Text(80, 1, required=True)


class HandOverShape(Shape):
    builds = HandOver
    format = Text(40, required=True, validate=validate.Equal(FORMAT, error="no hand-over file"))
    v = Whole(least=1, most=VERSION, required=True)
    device = Text(64, 1, required=True)
    epoch = Text(64, 1, required=True)
    athlete = fields.Nested(WhoseShape, required=True)
    made_at = Text(40, 1, required=True)
    count = Whole(least=0, most=1_000_000, required=True)
    entries = fields.Raw(required=True)


def read_hand_over(text: str) -> HandOver:
    """All that can still be read of such a file. Raises FaultyDocument where it is none."""
    data = _read(text)
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        raise FaultyDocument((_no_such_file(),))
    try:
        handed: HandOver = HandOverShape().load({**data, "entries": _items(data.get("entries"))})
    except ValidationError as fault:
        raise FaultyDocument(faults_of(fault.messages, data)) from None
    return handed


def _read(text: str) -> Any:
    try:
        return parse_json(text)
    except FaultyDocument:
        return _saved_from(text)


def _saved_from(text: str) -> Any:
    """The head, and each line that still is an entry."""
    head, found, lines = text.partition(ENTRIES)
    if not found:
        raise FaultyDocument((_no_such_file(),))
    read = [_entry(line.strip().removesuffix(",")) for line in lines.split("\n")]
    whole = parse_json(f"{head}{ENTRIES}]}}")
    return {**whole, "entries": [entry for entry in read if entry is not None]}


def _entry(line: str) -> Any:
    try:
        return parse_json(line) if line.startswith("{") else None
    except FaultyDocument:
        return None


def _items(entries: Any) -> tuple[Any, ...]:
    return tuple(entries) if isinstance(entries, list) else ()


def _no_such_file() -> Fault:
    return Fault(
        "the file",
        "",
        "is no hand-over file of the phone, or its beginning is damaged",
        "choose the file that the phone made, or have it made once more",
    )
