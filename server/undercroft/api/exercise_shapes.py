"""Exercises: those that can be prescribed, a coach's own, and what they are for one athlete."""

from marshmallow import Schema, fields

from undercroft.api.picture_shapes import PictureAnswer
from undercroft.documents.fields import Many, Text


class ExerciseAnswer(Schema):
    key = fields.String()
    name = fields.String()
    implement = fields.String()
    prime = fields.List(fields.String())
    helpers = fields.List(fields.String())
    needs = fields.List(fields.String())
    cues = fields.List(fields.String())
    alternatives = fields.List(fields.String())
    one_sided = fields.Boolean()
    needs_safeties = fields.Boolean()
    start_share = fields.Float(allow_none=True, metadata={"description": "of stature"})
    range_share = fields.Float(allow_none=True)
    hands_sink = fields.Boolean()
    overhead = fields.Boolean()


class ExerciseSeenAnswer(ExerciseAnswer):
    own = fields.Boolean(metadata={"description": "the coach's own"})
    own_cues = fields.Boolean(metadata={"description": "in place of the catalogue's"})
    archived = fields.Boolean(metadata={"description": "offered no more"})


class CatalogueAnswer(Schema):
    exercises = fields.List(fields.Nested(ExerciseSeenAnswer))


class ExerciseMade(Schema):
    key = fields.String()


class OwnCues(Schema):
    """None at all leave the catalogue's."""

    cues = Many(Text(120, 1), most=8, required=True)


class AvoidedByAnswer(Schema):
    id = fields.String()
    name = fields.String()
    where = fields.String()
    note = fields.String()


class ExercisePageAnswer(Schema):
    exercise = fields.Nested(ExerciseSeenAnswer)
    picture = fields.Nested(PictureAnswer, allow_none=True)
    avoided_by = fields.List(fields.Nested(AvoidedByAnswer))


class WayAnswer(Schema):
    start_cm = fields.Float(metadata={"description": "above the floor"})
    end_cm = fields.Float()
    range_cm = fields.Float()
    measured = fields.Boolean(metadata={"description": "by tape, not worked out from stature"})


class ForAthleteAnswer(Schema):
    key = fields.String()
    lacking = fields.List(fields.String(), metadata={"description": "what the kit does not have"})
    avoid = fields.List(fields.String(), metadata={"description": "places that hurt"})
    way = fields.Nested(WayAnswer, allow_none=True)
    told_by = fields.String(
        allow_none=True,
        metadata={"enum": ["stature", "tape"], "description": "what would tell the way"},
    )


class AthleteExercisesAnswer(Schema):
    kit = fields.String(allow_none=True, metadata={"description": "its name"})
    stature_cm = fields.Float(allow_none=True)
    exercises = fields.List(fields.Nested(ForAthleteAnswer))
