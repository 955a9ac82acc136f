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
