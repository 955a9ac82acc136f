"""Bodies and answers of the desk's endpoints about screening."""

from marshmallow import Schema, fields

from undercroft.api.shapes import Moment

OUTCOMES = ["open", "needs-reading", "not-today", "incomplete", "doctor-first", "clinical",
            "locked"]  # fmt: skip


class LockAnswer(Schema):
    open = fields.Boolean()
    outcome = fields.String(metadata={"enum": OUTCOMES})
    why = fields.List(fields.String())
    what_opens_it = fields.List(fields.String())
    do_now = fields.List(fields.String())
    until = fields.Date(allow_none=True)
    company = fields.Boolean()
    as_prescribed = fields.Boolean()


class ScreeningReplyAnswer(Schema):
    key = fields.String()
    question = fields.String()
    answer = fields.String()
    outcome = fields.String(metadata={"description": "where it leads; empty: nowhere"})


class AnsweredAnswer(Schema):
    id = fields.String()
    on = fields.Date()
    kind = fields.String(metadata={"enum": ["screening", "today"]})
    answers = fields.List(fields.Nested(ScreeningReplyAnswer))


class ScreeningReasonAnswer(Schema):
    key = fields.String()
    outcome = fields.String(metadata={"enum": OUTCOMES})
    words = fields.String()
    opens = fields.String()
    urgent = fields.String()
    coverable = fields.Boolean()
    covered = fields.Boolean()


class AfterAnswer(Schema):
    on = fields.Date()
    hours = fields.Integer()
    signs = fields.List(fields.String())
    do_now = fields.List(fields.String())
    locks = fields.Boolean()


class ScreeningRecordAnswer(Schema):
    number = fields.Integer()
    kind = fields.String(metadata={"enum": ["signature", "clearance", "pressure"]})
    recorded_at = Moment()
    withdrawn_at = Moment(allow_none=True)
    body = fields.Dict(keys=fields.String())


class ExposureAnswer(Schema):
    limb = fields.String()
    number = fields.Integer()
    rung = fields.String()


class ScreeningPageAnswer(Schema):
    asked_at = Moment(allow_none=True)
    lock = fields.Nested(LockAnswer)
    signed = fields.Boolean()
    latest = fields.Nested(AnsweredAnswer, allow_none=True)
    earlier = fields.List(fields.Nested(AnsweredAnswer))
    reasons = fields.List(fields.Nested(ScreeningReasonAnswer))
    after = fields.List(fields.Nested(AfterAnswer))
    records = fields.List(fields.Nested(ScreeningRecordAnswer))
    exposures = fields.List(fields.Nested(ExposureAnswer))


class PatternSetAnswer(Schema):
    reps = fields.Integer()
    to_failure = fields.Boolean()


class PatternAnswer(Schema):
    key = fields.String()
    name = fields.String()
    sets = fields.List(fields.Nested(PatternSetAnswer))
    rest_s = fields.List(fields.Integer(), metadata={"description": "from, to"})
    load_percent = fields.Float(metadata={"description": "of the one-repetition maximum"})
    most_tightness = fields.Integer(allow_none=True)
    both_at_once = fields.Boolean()


class OcclusionLimitsAnswer(Schema):
    load_percent = fields.Float()
    wear_minutes = fields.Float()
    days_a_week = fields.Integer()
    tightness = fields.Integer()
    pressure_percent = fields.Float()


class OcclusionGuideAnswer(Schema):
    patterns = fields.List(fields.Nested(PatternAnswer))
    limits = fields.Nested(OcclusionLimitsAnswer)
