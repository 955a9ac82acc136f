"""Body and answer of unfolding a week."""

from marshmallow import Schema, fields

from undercroft.api.desk_shapes import Draft, FaultAnswer, FindingAnswer
from undercroft.documents.fields import Key, Many, Tagged, Text, Truth, Whole
from undercroft.documents.wish import PROGRESSIONS, LightWeekShape
from undercroft.services.unfolding import MOST_WEEKS


class RuleAsked(Schema):
    """The rule of one exercise, named by the keys of its session and its own."""

    session = Key(required=True)
    exercise = Key(required=True)
    progression = Tagged("rule", PROGRESSIONS, required=True)


class UnfoldAsked(Draft):
    """`week` is the key of the week, `weeks` how many it becomes, itself among them.

    An exercise without a rule goes by the one in the draft, or is repeated. `anew`: weeks that were
    unfolded from it before are made again; else they stay as they were edited. Without `athlete`
    nothing is worked out; with `block` the athlete's own changes to that block count.
    """

    week = Key(required=True)
    weeks = Whole(least=2, most=MOST_WEEKS, unit="weeks, itself among them", required=True)
    rules = Many(fields.Nested(RuleAsked), most=420)
    light_week = fields.Nested(LightWeekShape)
    anew = Truth()
    athlete = Text(64, 1)
    block = Text(64, 1)


class CellAnswer(Schema):
    """One set in one week; `change_kg` is what it is more than in the column before."""

    path = fields.String()
    reps = fields.Integer(allow_none=True)
    kg = fields.Float(allow_none=True)
    wish_kg = fields.Float(allow_none=True)
    change_kg = fields.Float(allow_none=True)
    why = fields.String()


class TableRowAnswer(Schema):
    """An exercise: for each week its sets, none where it does not stand."""

    day = fields.Integer()
    session = fields.String()
    key = fields.String()
    exercise = fields.String()
    name = fields.String()
    weeks = fields.List(fields.List(fields.Nested(CellAnswer)))


class UnfoldAnswer(Schema):
    """`weeks` are the places of the table's columns among the document's weeks, from 0.

    Where there are faults there is no document.
    """

    faults = fields.List(fields.Nested(FaultAnswer))
    document = fields.Dict(keys=fields.String(), allow_none=True)
    weeks = fields.List(fields.Integer())
    findings = fields.List(fields.Nested(FindingAnswer))
    table = fields.List(fields.Nested(TableRowAnswer))
