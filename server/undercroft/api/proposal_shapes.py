"""Bodies and answers about what the next loads should become."""

from typing import Any

from marshmallow import Schema, fields, post_load

from undercroft.api.desk_shapes import FindingAnswer, OverruleAsked
from undercroft.documents.fields import Many, Text
from undercroft.services.proposals import Accepted

MOST_SETS = 500


class SetProposalAnswer(Schema):
    set = fields.String()
    number = fields.Integer()
    kind = fields.String(metadata={"enum": ["proposed", "follows", "stays", "unknown"]})
    from_kg = fields.Float(
        allow_none=True,
        metadata={"description": "now; of what follows by itself, when it was sent"},
    )
    to_kg = fields.Float(allow_none=True)
    why = fields.String()


class ExerciseProposalsAnswer(Schema):
    key = fields.String()
    name = fields.String()
    sets = fields.List(fields.Nested(SetProposalAnswer))


class SessionProposalsAnswer(Schema):
    session = fields.String()
    name = fields.String()
    week_name = fields.String()
    on = fields.Date()
    exercises = fields.List(fields.Nested(ExerciseProposalsAnswer))


class LoadProposalsAnswer(Schema):
    revision = fields.Integer(allow_none=True)
    block = fields.String()
    waiting = fields.Integer(metadata={"description": "loads that can be accepted"})
    sessions = fields.List(fields.Nested(SessionProposalsAnswer))


class AcceptedLoad(Schema):
    """A proposed load as it was shown."""

    session = Text(80, 1, required=True)
    set = Text(80, 1, required=True)
    kg = fields.Float(required=True)


class AcceptAsked(Schema):
    """`revision` is the one that the loads were proposed for."""

    revision = fields.Integer(required=True, strict=True)
    sets = Many(fields.Nested(AcceptedLoad), fewest=1, most=MOST_SETS, required=True)
    overrules = Many(fields.Nested(OverruleAsked), most=500)

    @post_load
    def _by_place(self, data: dict[str, Any], **_: Any) -> dict[str, Any]:
        loads = {(one["session"], one["set"]): one["kg"] for one in data.pop("sets")}
        return {**data, "accepted": Accepted(data.pop("revision"), loads)}


class AcceptAnswer(Schema):
    """`revision` None: nothing was sent, and `stops` say why."""

    revision = fields.Integer(allow_none=True)
    sessions = fields.Integer()
    stops = fields.List(fields.Nested(FindingAnswer))
