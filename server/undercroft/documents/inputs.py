"""Inputs of a calculator: read strictly, and listed with units and limits."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from marshmallow import Schema, ValidationError, fields, missing

from undercroft.documents.faults import FaultyDocument, faults_of
from undercroft.documents.fields import Day, Many, Number, OneOf, Text, Whole
from undercroft.documents.shape import Shape

KINDS: tuple[tuple[type[Any], str], ...] = (
    (Whole, "whole number"),
    (Number, "number"),
    (OneOf, "choice"),
    (Day, "date"),
    (Text, "text"),
    (Many, "list"),
)
"""What an input may be; a kind stands before those that it is made from."""


class Inputs(Shape):
    """Loaded as a plain dictionary; `words` says what each field means."""

    builds = dict
    words: ClassVar[Mapping[str, str]] = {}


@dataclass(frozen=True, slots=True)
class InputLine:
    """One input as it is listed; limits are None where there are none, `of` a list's own fields.

    `above`: the least is not among what is allowed. `default` is None where the field is needed,
    or where leaving it out means that it plays no part.
    """

    name: str
    kind: str
    about: str
    unit: str
    least: float | None
    most: float | None
    above: bool
    needed: bool
    default: float | str | None
    choices: tuple[str, ...] = ()
    of: tuple["InputLine", ...] = ()


def read_inputs(shape: type[Inputs], data: Any) -> dict[str, Any]:
    """The inputs with defaults filled in. Raises FaultyDocument with `inputs.` before each path."""
    try:
        loaded: dict[str, Any] = shape().load(data)
    except ValidationError as fault:
        told = faults_of({"inputs": fault.messages}, {"inputs": data})
        raise FaultyDocument(told) from None
    return loaded


def lines_of(shape: type[Inputs]) -> tuple[InputLine, ...]:
    """Every input in the order in which it is written down."""
    return _lines(shape(), shape.words)


def _lines(shape: Schema, words: Mapping[str, str]) -> tuple[InputLine, ...]:
    return tuple(
        _line(name, field, words.get(name, "")) for name, field in shape.load_fields.items()
    )


def _line(name: str, field: fields.Field[Any], about: str) -> InputLine:
    kind = next(word for sort, word in KINDS if isinstance(field, sort))
    low = getattr(field, "above", None)
    return InputLine(
        name=name,
        kind=kind,
        about=about,
        unit=getattr(field, "unit", ""),
        least=getattr(field, "least", None) if low is None else low,
        most=getattr(field, "most", None),
        above=low is not None,
        needed=field.required,
        default=_default(field),
        choices=tuple(field.metadata["enum"]) if isinstance(field, OneOf) else (),
        of=_item_lines(field),
    )


def _item_lines(field: fields.Field[Any]) -> tuple[InputLine, ...]:
    if isinstance(field, Many) and isinstance(field.inner, fields.Nested):
        return _lines(field.inner.schema, {})
    return ()


def _default(field: fields.Field[Any]) -> float | str | None:
    value = field.load_default
    if value is missing or value is None or isinstance(value, tuple):
        return None
    return str(value) if isinstance(value, str) else float(value)
