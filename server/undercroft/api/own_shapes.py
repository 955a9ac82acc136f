"""Bodies and answers about what one athlete does otherwise than a block says."""

from typing import Any

from marshmallow import Schema, fields, post_load
from marshmallow.validate import OneOf

from undercroft.api.desk_shapes import Draft, FaultAnswer, OwnLineAnswer
from undercroft.api.shapes import Moment
from undercroft.documents.fields import Many, Text
from undercroft.documents.own import MOST_CHANGES
from undercroft.services.own_changes import Take


class OwnAnswer(Schema):
    as_of = fields.String(metadata={"description": "the state that this was made from"})
    changed_at = Moment(allow_none=True)
    document = fields.Dict(keys=fields.String())
    changes = fields.List(fields.Nested(OwnLineAnswer))


class OwnAsked(Draft):
    """The block as the athlete is to do it, changed from the state `as_of`."""

    as_of = Text(80, 1, required=True)


class OwnSavedAnswer(Schema):
    as_of = fields.String()
    changed_at = Moment(allow_none=True)
    faults = fields.List(
        fields.Nested(FaultAnswer), metadata={"description": "with any, nothing was changed"}
    )
    changes = fields.List(fields.Nested(OwnLineAnswer))


class OwnPlace(Schema):
    """Without an exercise the session itself."""

    session = Text(64, 1, required=True)
    exercise = Text(64, load_default="")


class DecideAsked(Schema):
    """At these places: `block` drops the own change, `own` keeps it to what the block says now."""

    places = Many(fields.Nested(OwnPlace), fewest=1, most=MOST_CHANGES, required=True)
    take = fields.String(required=True, validate=OneOf([one.value for one in Take]))

    @post_load
    def _places(self, data: dict[str, Any], **_: Any) -> dict[str, Any]:
        places = [(one["session"], one["exercise"]) for one in data["places"]]
        return {"places": places, "take": Take(data["take"])}
