"""What the results answer of occlusion work."""

from marshmallow import Schema, fields


class IssueAnswer(Schema):
    severity = fields.String(metadata={"enum": ["stop", "warn", "note"]})
    what = fields.String()
    right = fields.String()


class NextLoadAnswer(Schema):
    kg = fields.Float()
    why = fields.String()


class OcclusionSeenAnswer(Schema):
    limb = fields.String()
    restriction = fields.String(metadata={"enum": ["wrap", "cuff"]})
    both_at_once = fields.Boolean()
    tightness = fields.Integer(allow_none=True)
    pressure_percent = fields.Float(allow_none=True)
    wear_s = fields.Integer(allow_none=True, metadata={"description": "as predicted"})
    limit_s = fields.Integer(allow_none=True)
    expected = fields.List(
        fields.Float(), metadata={"description": "mean repetitions of such sets to failure"}
    )
    next = fields.Nested(NextLoadAnswer, allow_none=True)
    asks = fields.List(fields.Nested(IssueAnswer))


class WornAnswer(Schema):
    limb = fields.String()
    seconds = fields.List(fields.Float(), metadata={"description": "each time that it was on"})
    closed = fields.Boolean(metadata={"description": "false: an end was never told"})
    issues = fields.List(fields.Nested(IssueAnswer))
