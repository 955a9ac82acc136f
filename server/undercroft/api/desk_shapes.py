"""Bodies and answers of the desk's endpoints about documents, sending and results."""

from typing import Any

from marshmallow import Schema, fields, post_load
from marshmallow.validate import OneOf

from undercroft.api.occlusion_shapes import OcclusionSeenAnswer, WornAnswer
from undercroft.api.shapes import DeviceAnswer, Moment, Named, WithRight
from undercroft.documents.athlete import AthleteShape
from undercroft.documents.block import BlockShape
from undercroft.documents.fields import Day, Many, Text
from undercroft.documents.kit import KitShape
from undercroft.documents.sheet import LoadSheetShape

FORMS = ("json", "csv")
MOST_BLOCK_BYTES = 2_000_000
"""Of a request that holds a block; one of 52 weeks with everything in it has half of that."""


class Draft(Schema):
    """A document that may still hold faults."""

    document = fields.Dict(keys=fields.String(), required=True)


class FaultAnswer(Schema):
    where = fields.String()
    path = fields.String()
    what = fields.String()
    right = fields.String()


class MaximumAnswer(Schema):
    lift = fields.String()
    name = fields.String()
    kg = fields.Float()
    low_kg = fields.Float()
    high_kg = fields.Float()
    source = fields.String()


class ScreeningAnswer(Schema):
    state = fields.String()
    text = fields.String()


class TrainedBlock(Named):
    """The block that was sent last."""

    mine = fields.Boolean(metadata={"description": "it is among the blocks of the coach who asks"})


class HandedOverAnswer(Schema):
    at = Moment()
    by = fields.String(metadata={"description": "the coach until then, who paired older phones"})


class AthletePageAnswer(WithRight):
    id = fields.String()
    name = fields.String()
    document = fields.Dict(keys=fields.String())
    kit = fields.Dict(keys=fields.String(), allow_none=True)
    block = fields.Nested(TrainedBlock, allow_none=True)
    revision = fields.Integer(allow_none=True)
    maxima = fields.List(fields.Nested(MaximumAnswer))
    devices = fields.List(fields.Nested(DeviceAnswer))
    handed_over = fields.Nested(HandedOverAnswer, allow_none=True)
    screening = fields.Nested(ScreeningAnswer)


class AthleteDocument(Schema):
    document = fields.Nested(AthleteShape)


class KitDocument(Schema):
    document = fields.Nested(KitShape)


class BlockDocument(Schema):
    document = fields.Nested(BlockShape)


class BlockLineAnswer(Schema):
    id = fields.String()
    name = fields.String()
    updated_at = Moment()
    weeks = fields.Integer()
    sessions = fields.Integer()


class BlocksAnswer(Schema):
    blocks = fields.List(fields.Nested(BlockLineAnswer))


class BlockAnswer(Schema):
    id = fields.String()
    document = fields.Dict(keys=fields.String())
    updated_at = Moment()


class SavedAnswer(Schema):
    id = fields.String()
    updated_at = Moment()
    faults = fields.List(fields.Nested(FaultAnswer))


class BlockText(Schema):
    """As long as its request may be: what was exported can be read again."""

    text = Text(MOST_BLOCK_BYTES, 1, required=True)
    format = fields.String(required=True, validate=OneOf(FORMS))


class ExportAsked(Schema):
    format = fields.String(load_default="json", validate=OneOf(FORMS))


class LoadsAsked(Draft):
    """With `block` the athlete's own changes to that block count."""

    athlete = Text(64, 1, required=True)
    block = Text(64, 1)


class FindingAnswer(Schema):
    severity = fields.String(metadata={"enum": ["stop", "warn", "note"]})
    check = fields.String(metadata={"description": "its name; empty where working out found it"})
    where = fields.String()
    path = fields.String()
    what = fields.String()
    right = fields.String()
    may_overrule = fields.Boolean()


class OwnLineAnswer(Schema):
    """One place where an athlete does otherwise than the block says."""

    session = fields.String()
    exercise = fields.String(metadata={"description": "its key; empty for the session itself"})
    stand = fields.String(metadata={"enum": ["kept", "clash", "same", "gone"]})
    where = fields.String()
    what = fields.String()
    beneath = fields.String(metadata={"description": "what became of the block's line since"})
    since = fields.Date()
    accepted = fields.Boolean(metadata={"description": "loads that were proposed, nothing else"})


class LoadsAnswer(Schema):
    faults = fields.List(fields.Nested(FaultAnswer))
    findings = fields.List(fields.Nested(FindingAnswer))
    sheets = fields.List(fields.Nested(LoadSheetShape))
    changes = fields.List(
        fields.String(), metadata={"description": "against what the athlete has, in words"}
    )
    own = fields.List(fields.Nested(OwnLineAnswer))


class OverruleAsked(Schema):
    """A stop set aside: the finding's check, path and words, and the reason in writing."""

    check = Text(80, 1, required=True)
    path = Text(200, required=True)
    what = Text(500, 1, required=True)
    why = Text(500, 3, required=True)


class SendAsked(Schema):
    """`starts_on` is the Monday of the first week; this week's where it is not given.

    An athlete who is named twice is sent the block once.
    """

    athletes = Many(Text(64, 1), fewest=1, required=True)
    starts_on = Day()
    overrules = Many(fields.Nested(OverruleAsked), most=500)

    @post_load
    def _each_athlete_once(self, data: dict[str, Any], **_: Any) -> dict[str, Any]:
        return {**data, "athletes": tuple(dict.fromkeys(data["athletes"]))}


class SentOne(Schema):
    athlete = fields.String()
    revision = fields.Integer()
    sessions = fields.Integer()


class RefusedOne(Schema):
    athlete = fields.String()
    stops = fields.List(fields.Nested(FindingAnswer))


class SendAnswer(Schema):
    sent = fields.List(fields.Nested(SentOne))
    refused = fields.List(fields.Nested(RefusedOne))


class AttentionAnswer(Schema):
    level = fields.String(metadata={"enum": ["now", "soon", "note"]})
    text = fields.String()


class StatesAnswer(Schema):
    sent_at = Moment(allow_none=True)
    delivered_at = Moment(allow_none=True)
    opened_at = Moment(allow_none=True)
    started_at = Moment(allow_none=True)
    finished_at = Moment(allow_none=True)
    synced_at = Moment(allow_none=True)


class NextAnswer(Schema):
    session = fields.String()
    name = fields.String()
    week_name = fields.String()
    day = fields.Integer()
    on = fields.String(metadata={"format": "date"})


class SquadLineAnswer(WithRight):
    id = fields.String()
    name = fields.String()
    last_heard_at = Moment(allow_none=True)
    block = fields.Nested(TrainedBlock, allow_none=True)
    revision = fields.Integer(allow_none=True)
    states = fields.Nested(StatesAnswer)
    next = fields.Nested(NextAnswer, allow_none=True)
    devices = fields.Integer()
    unplaced = fields.Integer()
    attention = fields.List(fields.Nested(AttentionAnswer))


class SquadAnswer(Schema):
    athletes = fields.List(fields.Nested(SquadLineAnswer))


class PlannedAnswer(Schema):
    reps = fields.Integer(allow_none=True)
    rir = fields.Float(allow_none=True)
    load_kg = fields.Float(allow_none=True)
    seconds = fields.Float(allow_none=True)
    to_failure = fields.Boolean()
    distance_m = fields.Float(allow_none=True)
    blocks = fields.List(fields.Integer())


class DoneAnswer(Schema):
    kind = fields.String(metadata={"enum": ["done", "skipped"]})
    load_kg = fields.Float(allow_none=True)
    reps = fields.Integer(allow_none=True)
    rir = fields.Float(allow_none=True)
    to_failure = fields.Boolean()
    seconds = fields.Float(allow_none=True)
    distance_m = fields.Float(allow_none=True)
    blocks = fields.List(fields.Integer(), metadata={"description": "repetitions of each"})
    velocities_m_s = fields.List(fields.Float(), metadata={"description": "mean of each rep"})
    mean_m_s = fields.Float(allow_none=True, metadata={"description": "over all its reps"})
    quality = fields.Integer(allow_none=True)
    side = fields.String(allow_none=True, metadata={"enum": ["left", "right"]})
    tightness = fields.Float(allow_none=True, metadata={"description": "felt, of 10"})
    why = fields.String(allow_none=True)
    at = fields.String(metadata={"description": "what the phone's clock said"})
    two_answers = fields.Boolean()
    wild = fields.Boolean()


class SetResultAnswer(Schema):
    key = fields.String()
    number = fields.Integer()
    planned = fields.Nested(PlannedAnswer)
    done = fields.Nested(DoneAnswer, allow_none=True)
    sides = fields.List(
        fields.Nested(DoneAnswer),
        metadata={"description": "left and right where told apart; done is the later one"},
    )
    instead = fields.String(
        allow_none=True, metadata={"description": "as what it was done, where not as planned"}
    )


class ExerciseResultAnswer(Schema):
    key = fields.String()
    name = fields.String()
    method = fields.String()
    done_instead = fields.String(
        allow_none=True, metadata={"description": "name of the exercise done in its place"}
    )
    why_instead = fields.String(allow_none=True, metadata={"description": "what failed there"})
    sets = fields.List(fields.Nested(SetResultAnswer))
    occlusion = fields.Nested(OcclusionSeenAnswer, allow_none=True)


class SessionResultAnswer(Schema):
    revision = fields.Integer()
    session = fields.String()
    name = fields.String()
    week_name = fields.String()
    day = fields.Integer()
    on = fields.String(allow_none=True)
    state = fields.String(metadata={"enum": ["planned", "started", "finished", "stopped"]})
    started_at = fields.String(allow_none=True)
    finished_at = fields.String(allow_none=True)
    rpe = fields.Float(allow_none=True)
    minutes = fields.Integer(allow_none=True)
    comment = fields.String(allow_none=True)
    why_stopped = fields.String(allow_none=True)
    exercises = fields.List(fields.Nested(ExerciseResultAnswer))
    worn = fields.List(fields.Nested(WornAnswer))


class OutsideSetAnswer(Schema):
    key = fields.String()
    added_to = fields.String(
        allow_none=True, metadata={"description": "the exercise that the athlete added it to"}
    )
    done = fields.Nested(DoneAnswer)


class OutsideAnswer(Schema):
    revision = fields.Integer(allow_none=True)
    session = fields.String()
    why = fields.String(metadata={"description": "what is not known here"})
    at = fields.String(allow_none=True, metadata={"description": "what the phone's clock said"})
    rpe = fields.Float(allow_none=True)
    minutes = fields.Integer(allow_none=True)
    comment = fields.String(allow_none=True)
    why_stopped = fields.String(allow_none=True)
    sets = fields.List(fields.Nested(OutsideSetAnswer))


class MessageAnswer(Schema):
    id = fields.String()
    at = fields.String(metadata={"format": "date-time", "description": "by the phone's clock"})
    text = fields.String()


class ResultsAnswer(Schema):
    sessions = fields.List(fields.Nested(SessionResultAnswer))
    outside = fields.List(
        fields.Nested(OutsideAnswer),
        metadata={"description": "work that names a revision, session or set that was never sent"},
    )
    messages = fields.List(
        fields.Nested(MessageAnswer),
        metadata={"description": "what the athlete wrote, newest first"},
    )


class PointAnswer(Schema):
    on = fields.String(metadata={"format": "date"})
    kg = fields.Float()
    low_kg = fields.Float()
    high_kg = fields.Float()
    smooth_kg = fields.Float()
    low_smooth_kg = fields.Float()
    high_smooth_kg = fields.Float()
    source = fields.String(metadata={"enum": ["guess", "test", "sets"]})


class TrendAnswer(Schema):
    lift = fields.String()
    name = fields.String()
    points = fields.List(fields.Nested(PointAnswer))


def sent_and_refused(results: list[Any]) -> dict[str, list[Any]]:
    """The two lists of a sending's answer."""
    return {
        "sent": [one for one in results if not one.stops],
        "refused": [one for one in results if one.stops],
    }
