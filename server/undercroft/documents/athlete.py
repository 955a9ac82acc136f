"""The athlete document: history, measures, maxima. Screening answers are kept apart."""

from marshmallow import fields

from undercroft.documents.fields import (
    Day,
    Key,
    Many,
    Number,
    OneOf,
    Text,
    Truth,
    Whole,
)
from undercroft.documents.shape import Shape
from undercroft.domain import athlete


class MaximumShape(Shape):
    builds = athlete.Maximum
    lift = Key(required=True)
    kg = Number(above=0, most=600, unit="kg", required=True)
    kind = OneOf(athlete.MaximumKind, required=True)
    on = Day(required=True)
    doubt_percent = Number(least=0.5, most=40, unit="% (one standard deviation)")


class RangeShape(Shape):
    builds = athlete.Range
    exercise = Key(required=True)
    start_height_m = Number(least=0, most=3, unit="m", required=True)
    range_m = Number(above=0, most=2, unit="m", required=True)


class LeanShape(Shape):
    builds = athlete.Lean
    lift = Key(required=True)
    on_lift = Key(required=True)
    ratio = Number(least=0.05, most=3, required=True)


class InjuryShape(Shape):
    builds = athlete.Injury
    where = Text(80, 1, required=True)
    note = Text(500)
    avoid = Many(Key(), most=60)


class AthleteShape(Shape):
    builds = athlete.Athlete
    key = Key(required=True)
    name = Text(80, 1, required=True)
    experience = OneOf(athlete.Experience)
    born = Day()
    stature_m = Number(least=0.9, most=2.5, unit="m")
    body_mass_kg = Number(least=25, most=300, unit="kg")
    thigh_cm = Number(least=30, most=100, unit="cm")
    pounds = Truth()
    session_minutes = Whole(least=5, most=300, unit="minutes")
    trains_alone = Truth()
    maxima = Many(fields.Nested(MaximumShape), most=200)
    ranges = Many(fields.Nested(RangeShape), most=200)
    leans = Many(fields.Nested(LeanShape), most=60)
    injuries = Many(fields.Nested(InjuryShape), most=40)
    notes = Text(4000)
