"""What the desk is told of done work; units stand in the names of the fields."""

from marshmallow import Schema, fields
from marshmallow.validate import Range

from undercroft.services.monitoring.span import MOST_WEEKS, USUAL_WEEKS


class WeeksAsked(Schema):
    """How many weeks back, this one among them."""

    weeks = fields.Integer(load_default=USUAL_WEEKS, validate=Range(1, MOST_WEEKS))


class DayAnswer(Schema):
    """Arbitrary units (au): session RPE times minutes."""

    on = fields.Date()
    load_au = fields.Float()
    weighted_7_days_au = fields.Float()
    weighted_28_days_au = fields.Float()
    difference_au = fields.Float(
        metadata={"description": "the 7-day weighted load less the 28-day one"}
    )
    change_percent = fields.Float(allow_none=True)
    settled = fields.Boolean(metadata={"description": "28 days of history lie behind it"})


class WeekAnswer(Schema):
    monday = fields.Date()
    load_au = fields.Float()
    day_mean_au = fields.Float()
    day_sd_au = fields.Float()
    monotony = fields.Float(
        allow_none=True,
        metadata={"description": "null: undefined, as all days are equal, or not whole yet"},
    )
    strain_au = fields.Float(allow_none=True)
    unrated_sessions = fields.Integer()
    whole = fields.Boolean(metadata={"description": "over, and a phone was heard since"})


class LoadAnswer(Schema):
    sd = fields.String(metadata={"description": "which standard deviation monotony goes by"})
    caution = fields.String()
    heard_through = fields.Date(
        allow_none=True, metadata={"description": "later days count as rest until a phone is heard"}
    )
    days = fields.List(fields.Nested(DayAnswer))
    weeks = fields.List(fields.Nested(WeekAnswer))


class AdherenceAnswer(Schema):
    """Sets whose day has come; of the unknown ones no phone has told."""

    planned_sets = fields.Integer(attribute="planned")
    done_sets = fields.Integer(attribute="done")
    changed_sets = fields.Integer(attribute="changed")
    skipped_sets = fields.Integer(attribute="skipped")
    unknown_sets = fields.Integer(attribute="unknown")


class LimbAnswer(Schema):
    """Minutes of wear and repetitions of one restricted limb."""

    limb = fields.String(attribute="site.limb")
    side = fields.String(attribute="site.side")
    minutes = fields.Float()
    reps = fields.Integer()
    sessions = fields.Integer()


class WorkWeekAnswer(Schema):
    monday = fields.Date()
    adherence = fields.Nested(AdherenceAnswer)
    hard_sets = fields.Dict(
        keys=fields.String(), values=fields.Float(), metadata={"description": "by muscle"}
    )
    untold_sets = fields.Integer(metadata={"description": "done with no word of the reserve"})
    tonnage_kg = fields.Float(attribute="tonnage.kg")
    reps = fields.Integer(attribute="tonnage.reps")
    mean_resistance_kg = fields.Float(attribute="tonnage.mean_kg", allow_none=True)
    left_out_sets = fields.Integer(
        attribute="tonnage.left_out",
        metadata={"description": "not in the tonnage: resistance or repetitions are unknown"},
    )
    limbs = fields.List(fields.Nested(LimbAnswer))


class WorkAnswer(Schema):
    weeks = fields.List(fields.Nested(WorkWeekAnswer))


class SpeedSetAnswer(Schema):
    """Velocity and power are null where nobody measured; the body is not counted in the power."""

    number = fields.Integer()
    load_kg = fields.Float(allow_none=True)
    mean_resistance_kg = fields.Float(allow_none=True)
    reps = fields.Integer(allow_none=True)
    mean_velocity_m_s = fields.Float(allow_none=True)
    fastest_velocity_m_s = fields.Float(allow_none=True)
    mean_power_w = fields.Float(allow_none=True)
    peak_power_w = fields.Float(allow_none=True)
    quality = fields.Integer(allow_none=True, metadata={"description": "1 to 5"})


class CourseAnswer(Schema):
    """Rise from the first set to the best, drop from the best to the last, by mean power."""

    best_set = fields.Integer(attribute="best")
    best_w = fields.Float()
    rise_percent = fields.Float()
    drop_percent = fields.Float()


class SpeedSessionAnswer(Schema):
    on = fields.Date()
    session = fields.String()
    sets = fields.List(fields.Nested(SpeedSetAnswer))
    course = fields.Nested(CourseAnswer, allow_none=True)


class VelocityPointAnswer(Schema):
    """A set's load and the velocity of its fastest repetition."""

    on = fields.Date()
    load_kg = fields.Float()
    velocity_m_s = fields.Float()


class VelocityLineAnswer(Schema):
    """velocity = intercept + slope * load; the band of the maximum is 90 %."""

    intercept_m_s = fields.Float()
    slope_m_s_per_kg = fields.Float()
    r2 = fields.Float()
    standard_error_m_s = fields.Float()
    standard_error_kg = fields.Float()
    lightest_kg = fields.Float()
    heaviest_kg = fields.Float()
    velocity_at_lightest_m_s = fields.Float()
    velocity_at_heaviest_m_s = fields.Float()
    minimal_velocity_m_s = fields.Float()
    minimal_velocity_from = fields.String()
    maximum_kg = fields.Float()
    maximum_low_kg = fields.Float()
    maximum_high_kg = fields.Float()


class VelocityAnswer(Schema):
    points = fields.List(fields.Nested(VelocityPointAnswer))
    line = fields.Nested(VelocityLineAnswer, allow_none=True)
    why_no_line = fields.String()


class SpeedExerciseAnswer(Schema):
    exercise = fields.String()
    name = fields.String()
    sessions = fields.List(fields.Nested(SpeedSessionAnswer))
    velocity = fields.Nested(VelocityAnswer)


class SpeedAnswer(Schema):
    exercises = fields.List(fields.Nested(SpeedExerciseAnswer))


class PainAnswer(Schema):
    on = fields.Date()
    where = fields.String()
    level = fields.Float(metadata={"description": "0 to 10"})
    comment = fields.String(allow_none=True)


class ReadinessAnswer(Schema):
    on = fields.Date()
    score = fields.Integer(metadata={"description": "1 to 5, 5 the best"})
    comment = fields.String(allow_none=True)


class BodyMassAnswer(Schema):
    on = fields.Date()
    kg = fields.Float()


class ConditionAnswer(Schema):
    """What was reported between two days, oldest first."""

    first = fields.Date()
    last = fields.Date()
    pains = fields.List(fields.Nested(PainAnswer))
    readiness = fields.List(fields.Nested(ReadinessAnswer))
    body_masses = fields.List(fields.Nested(BodyMassAnswer))
