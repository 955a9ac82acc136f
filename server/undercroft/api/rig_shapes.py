"""Bodies and answers of the search for bands and chains."""

from marshmallow import Schema, fields

from undercroft.api.desk_shapes import LoadsAsked
from undercroft.documents.fields import Key
from undercroft.documents.wish import RigShape, SoughtRigShape


class RigsAsked(LoadsAsked):
    """`rig` says which share is wished and where; things that it names are left aside."""

    session = Key(required=True)
    exercise = Key(required=True)
    rig = fields.Nested(SoughtRigShape, required=True)


class RemarkAnswer(Schema):
    severity = fields.String(metadata={"enum": ["stop", "warn", "note"]})
    words = fields.String()


class OfferAnswer(Schema):
    """One rig, in kg at three points of the lift, below zero where it helps.

    `rig` is what a plan says to hang this very one. `kg` is what it gives at the point asked for:
    `share_percent` of `base_kg`, whatever its sign.
    """

    rig = fields.Nested(RigShape)
    words = fields.String(attribute="choice.words")
    start_kg = fields.Float()
    mean_kg = fields.Float()
    lockout_kg = fields.Float()
    kg = fields.Float(attribute="choice.kg")
    share_percent = fields.Float()
    off_kg = fields.Float(attribute="choice.off_kg")
    doubt_kg = fields.Float(metadata={"description": "of `kg`, one standard deviation"})
    unmeasured = fields.List(fields.String())
    remarks = fields.List(fields.Nested(RemarkAnswer), attribute="choice.remarks")


class OffersAnswer(Schema):
    """Best first, for `wanted_kg`; where there is none, `would_do` says what could hang."""

    load_kg = fields.Float(metadata={"description": "the heaviest wish of the exercise"})
    why = fields.String(metadata={"description": "how that load comes about"})
    base_kg = fields.Float(metadata={"description": "of which the share is one"})
    wanted_kg = fields.Float()
    offers = fields.List(fields.Nested(OfferAnswer))
    refused = fields.List(fields.String())
    would_do = fields.List(fields.String())


class NoRigAnswer(Schema):
    where = fields.String()
    what = fields.String()
    right = fields.String()


class FoundRigsAnswer(Schema):
    """`found`, or in `none` why nothing could be looked for; the other is null."""

    found = fields.Nested(OffersAnswer, allow_none=True)
    none = fields.Nested(NoRigAnswer, allow_none=True)
