"""The layer document: one athlete's own changes to a block."""

from typing import Any

from marshmallow import ValidationError, fields, validates_schema

from undercroft.documents.block import ExerciseShape
from undercroft.documents.canonical import plain
from undercroft.documents.fields import Day, Key, Many, Text, Truth, Whole
from undercroft.documents.made import made
from undercroft.documents.shape import Shape
from undercroft.domain.program import own

MOST_CHANGES = 2000
"""To be decided on at once: more than 52 weeks of 5 sessions with 7 exercises."""

WITHOUT_END = 10**6
"""Nobody but the server writes a layer, and what it has written it must be able to read."""


class HeadShape(Shape):
    builds = own.SessionHead
    name = Text(80, 1, required=True)
    day = Whole(least=1, most=7, required=True)
    note = Text(1000)


class PartField(fields.Field[own.Part]):
    """A session's head or an exercise, told apart by the method that every exercise has."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> own.Part:
        exercise = isinstance(value, dict) and "method" in value
        part: own.Part = made(ExerciseShape if exercise else HeadShape).load(value)
        return part

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Any:
        if value is None:
            return None
        head = isinstance(value, own.SessionHead)
        return made(HeadShape if head else ExerciseShape).dump(value)


class OwnChangeShape(Shape):
    builds = own.OwnChange
    session = Key(required=True)
    exercise = Text(64, load_default="")
    beneath = PartField(load_default=None)
    own = PartField(load_default=None)
    since = Day(required=True)
    after = Text(64)
    accepted = Truth()

    @validates_schema
    def _says_something(self, data: dict[str, Any], **_: Any) -> None:
        if data["beneath"] is None and data["own"] is None:
            raise ValidationError({"own": ["neither it nor beneath is given; give one of them"]})


class LayerShape(Shape):
    builds = own.Layer
    changes = Many(fields.Nested(OwnChangeShape), most=WITHOUT_END)


def write_layer(layer: own.Layer) -> dict[str, Any]:
    """Plain data that `read_layer` reads."""
    data: dict[str, Any] = plain(made(LayerShape).dump(layer))
    return data


def read_layer(data: Any) -> own.Layer:
    """What `write_layer` wrote."""
    layer: own.Layer = made(LayerShape).load(data)
    return layer
