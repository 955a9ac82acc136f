"""A record of screening and occlusion work as one document, for work without a database."""

from marshmallow import fields

from undercroft.documents.fields import Day, Many, OneOf, Text, Truth, Whole
from undercroft.documents.screening import ClearanceShape, MeasuredShape, SignatureShape
from undercroft.documents.shape import Shape
from undercroft.domain import occlusion
from undercroft.domain.program.methods import Limb


class AnsweredShape(Shape):
    builds = occlusion.Answered
    id = Text(64, 1, required=True)
    on = Day(required=True)
    given = fields.Dict(keys=fields.String(), required=True)


class StoppedShape(Shape):
    builds = occlusion.Stopped
    on = Day(required=True)
    signs = Many(Text(40, 1), fewest=1, required=True)


class AfterCheckShape(Shape):
    builds = occlusion.AfterCheck
    on = Day(required=True)
    hours = Whole(least=0, most=336, unit="hours", required=True)
    signs = Many(Text(40, 1))


class ScreeningFileShape(Shape):
    builds = occlusion.ScreeningFile
    answered = Many(fields.Nested(AnsweredShape))
    signatures = Many(fields.Nested(SignatureShape))
    clearances = Many(fields.Nested(ClearanceShape))
    stopped = Many(fields.Nested(StoppedShape))
    after = Many(fields.Nested(AfterCheckShape))
    trains_alone = Truth()
    born = Day()


class OcclusionDayShape(Shape):
    builds = occlusion.OcclusionDay
    on = Day(required=True)
    limbs = Many(OneOf(Limb), fewest=1, required=True)


class OcclusionRecordShape(Shape):
    builds = occlusion.OcclusionRecord
    screening = fields.Nested(ScreeningFileShape, required=True)
    days = Many(fields.Nested(OcclusionDayShape), most=2000)
    pressures = Many(fields.Nested(MeasuredShape))
