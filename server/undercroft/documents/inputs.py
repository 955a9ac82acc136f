"""Inputs of a calculator: read strictly, and listed with units and limits."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
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


AskedFor = Mapping[str, Mapping[StrEnum, tuple[str, ...]]]
"""By the name of a choice, for each of its values, the fields that this one needs."""


class Inputs(Shape):
    """Loaded as a plain dictionary.

    `words` say what each field means: its label and, after a semicolon, more about it. The fields
    of a list's items stand there as "list.field", the values of a choice as "choice.value".
    """

    builds = dict
    words: ClassVar[Mapping[str, str]] = {}
    asked_for: ClassVar[AskedFor] = {}


@dataclass(frozen=True, slots=True)
class When:
    """The field is asked for where the choice called `name` is one of these."""

    name: str
    one_of: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class InputLine:
    """One input as it is listed; limits are None where there are none, `of` a list's own fields.

    `above`: the least is not among what is allowed. `default` is None where the field is needed,
    or where leaving it out means that it plays no part. `when` is None for what is always asked;
    elsewhere the field is needed where it is asked for. `choice_names` go with `choices`.
    """

    name: str
    kind: str
    label: str
    about: str
    unit: str
    least: float | None
    most: float | None
    above: bool
    needed: bool
    default: float | str | None
    choices: tuple[str, ...] = ()
    choice_names: tuple[str, ...] = ()
    when: When | None = None
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
    return tuple(
        replace(line, when=_when(shape.asked_for, line.name))
        for line in _lines(shape(), shape.words, "")
    )


def _lines(schema: Schema, words: Mapping[str, str], inside: str) -> tuple[InputLine, ...]:
    fields_of = schema.load_fields.items()
    return tuple(_line(name, field, words, inside + name) for name, field in fields_of)


def _line(name: str, field: fields.Field[Any], words: Mapping[str, str], place: str) -> InputLine:
    kind = next(word for sort, word in KINDS if isinstance(field, sort))
    label, _, about = words.get(place, name).partition("; ")
    low = getattr(field, "above", None)
    choices = tuple(field.metadata["enum"]) if isinstance(field, OneOf) else ()
    return InputLine(
        name=name,
        kind=kind,
        label=label,
        about=about,
        unit=getattr(field, "unit", ""),
        least=getattr(field, "least", None) if low is None else low,
        most=getattr(field, "most", None),
        above=low is not None,
        needed=field.required,
        default=_default(field),
        choices=choices,
        choice_names=tuple(_named(words, place, choice) for choice in choices),
        of=_item_lines(field, words, place),
    )


def _named(words: Mapping[str, str], place: str, choice: str) -> str:
    return words.get(f"{place}.{choice}", choice.replace("-", " "))


def _when(asked_for: AskedFor, name: str) -> When | None:
    for choice, needs in asked_for.items():
        values = tuple(value.value for value, names in needs.items() if name in names)
        if values:
            return When(choice, values)
    return None


def _item_lines(
    field: fields.Field[Any], words: Mapping[str, str], place: str
) -> tuple[InputLine, ...]:
    if isinstance(field, Many) and isinstance(field.inner, fields.Nested):
        return _lines(field.inner.schema, words, f"{place}.")
    return ()


def _default(field: fields.Field[Any]) -> float | str | None:
    value = field.load_default
    if value is missing or value is None or isinstance(value, tuple):
        return None
    return str(value) if isinstance(value, str) else float(value)
