"""The load sheet on the wire."""

from typing import Any

from marshmallow import fields

from undercroft.documents.block import MethodDetails, RestShape
from undercroft.documents.fields import Day, Key, Many, Number, OneOf, Text, Truth, Whole
from undercroft.documents.shape import Shape, defaults_of
from undercroft.domain import load_sheet
from undercroft.domain.occlusion import next_load
from undercroft.domain.program.methods import Method, Side
from undercroft.domain.strength import notches


class SheetImplementShape(Shape):
    builds = load_sheet.SheetImplement
    kind = Text(required=True)
    name = Text(required=True)
    key = Key()
    mass_kg = Number()
    collars_kg = Number()
    sides = Whole()
    sleeve_length_m = Number()


class SheetPlateShape(Shape):
    builds = load_sheet.SheetPlate
    kg = Number(required=True)
    thickness_m = Number(required=True)
    label = Text(40)


class SheetLoadShape(Shape):
    builds = load_sheet.SheetLoad
    kg = Number(required=True)
    position = Whole(required=True)
    side = Many(Number())
    pin_kg = Number()
    add_ons_kg = Many(Number())
    piece_kg = Number()


class ForceCurveShape(Shape):
    builds = load_sheet.ForceCurve
    start_kg = Number(required=True)
    mean_kg = Number(required=True)
    end_kg = Number(required=True)
    doubt_kg = Number()
    points_kg = Many(Number())


class TargetShape(Shape):
    builds = load_sheet.Target
    reps = Whole()
    rir = Number()
    to_failure = Truth()
    percent = Number()
    seconds = Number()
    distance_m = Number()
    blocks = Many(Whole())


class SheetSetShape(Shape):
    builds = load_sheet.SheetSet
    key = Key(required=True)
    number = Whole(required=True)
    target = fields.Nested(TargetShape, required=True)
    wish_kg = Number()
    load = Whole()  # type: ignore[assignment]
    off_kg = Number()
    below = Whole()
    above = Whole()
    cap = Whole()
    ladder = Many(Whole())
    after = Many(Whole(), most=2000)
    turn = Whole()
    curve = fields.Nested(ForceCurveShape)
    why = Text(500)


class SheetMoveShape(Shape):
    builds = load_sheet.SheetMove
    side = OneOf(Side, required=True)
    kg = Number(required=True)
    on = Truth(required=True)


class SheetOrderShape(Shape):
    builds = load_sheet.SheetOrder
    moves = Many(fields.Nested(SheetMoveShape), required=True)
    margin = Number(required=True)
    advice = Text(500)


class RampSetShape(Shape):
    builds = load_sheet.RampSet
    reps = Whole(required=True)
    load = Whole(required=True)  # type: ignore[assignment]
    share = Number(required=True)


class RiseShape(Shape):
    builds = notches.Rise
    per_set = Whole(required=True)
    in_all = Whole(required=True)


GAINS = fields.Dict(
    keys=fields.String(), values=fields.Tuple((Whole(), Whole(), Whole())), required=True
)


class NotchTableShape(Shape):
    builds = notches.NotchTable
    lift = Key(required=True)
    level = Whole(required=True)
    form = Whole(required=True)
    base = Whole(required=True)
    drift = Whole(required=True)
    kind = Many(Whole(), required=True)
    at = Many(Number(), required=True)
    gain = GAINS
    missed = GAINS
    told = Whole(required=True)
    less = Many(Whole(), required=True)
    tells = Many(Whole(), required=True)
    offset = Many(Whole(), required=True)
    lean = Many(Whole(), required=True)
    gate = Whole(required=True)
    rise = fields.Nested(RiseShape, required=True)
    hold = Truth()


class SheetMaximumShape(Shape):
    builds = load_sheet.SheetMaximum
    lift = Key(required=True)
    kg = Number(required=True)
    low_kg = Number(required=True)
    high_kg = Number(required=True)
    source = Text(required=True)


class UseShape(Shape):
    builds = load_sheet.Use
    key = Text(required=True)
    kind = OneOf(load_sheet.UseKind, required=True)
    name = Text(required=True)
    lasting = Truth()


class AlternativeShape(Shape):
    builds = load_sheet.Alternative
    key = Key()
    exercise = Key(required=True)
    name = Text(required=True)
    implement = fields.Nested(SheetImplementShape, required=True)
    loads = Many(fields.Nested(SheetLoadShape), required=True)  # type: ignore[assignment]
    sets = Many(Whole(allow_none=True), required=True)
    uses = Many(fields.Nested(UseShape))
    ramp = Many(fields.Nested(RampSetShape))
    rig = Many(Text(300))
    cue = Text(300)
    notes = Many(Text(500))
    cautions = Many(Text(500))


class NextLoadShape(Shape):
    builds = next_load.NextLoad
    sets = Whole(required=True)
    total_under = Whole(required=True)
    first_under = Whole(required=True)
    last_over = Whole(required=True)
    up_kg = Number(required=True)
    hold_kg = Number(required=True)
    down_kg = Number(required=True)
    tenth_kg = Number(required=True)


class SheetOcclusionShape(Shape):
    builds = load_sheet.SheetOcclusion
    exposure = Whole(required=True)
    rung = Text(300, required=True)
    wear_s = Whole(required=True)
    limit_s = Whole(required=True)
    break_s = Whole(required=True)
    gap_h = Whole(required=True)
    away_days = Whole(required=True)
    after = Many(Key())
    holds_until = Day()
    most_tightness = Whole()
    pressure_mmhg = Whole()
    pressure_basis = Text(300)
    until = Day()
    company = Truth()
    expected = Many(Number())
    limits = Text(1000)
    next = fields.Nested(NextLoadShape)


class WholeDetails(MethodDetails):
    """With its defaults said: the phone goes by the sheet and knows none of its own."""

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Any:
        said = super()._serialize(value, attr, obj, **kwargs)
        if said is None:
            return None
        usual = {k: v for k, v in defaults_of(type(value)).items() if v is not None}
        return {**usual, **said}


class SheetExerciseShape(Shape):
    builds = load_sheet.SheetExercise
    key = Key(required=True)
    exercise = Key(required=True)
    name = Text(required=True)
    method = OneOf(Method, required=True)
    implement = fields.Nested(SheetImplementShape, required=True)
    sets = Many(fields.Nested(SheetSetShape), required=True)
    loads = Many(fields.Nested(SheetLoadShape), most=2000)  # type: ignore[assignment]
    ramp = Many(fields.Nested(RampSetShape))
    rest = fields.Nested(RestShape)
    group = Text()
    cue = Text(300)
    details = WholeDetails()
    maximum = fields.Nested(SheetMaximumShape)
    notches = fields.Nested(NotchTableShape)
    notes = Many(Text(500))
    cautions = Many(Text(500))
    locked = Text(1000)
    occlusion = fields.Nested(SheetOcclusionShape)
    rig = Many(Text(300))
    loading = fields.Nested(SheetOrderShape)
    stripping = fields.Nested(SheetOrderShape)
    uses = Many(fields.Nested(UseShape))
    alternatives = Many(fields.Nested(AlternativeShape))


class LoadSheetShape(Shape):
    builds = load_sheet.LoadSheet
    session = Key(required=True)
    name = Text(required=True)
    week = Key(required=True)
    week_name = Text(required=True)
    day = Whole(required=True)
    athlete = Text(required=True)
    kit = Text(required=True)
    exercises = Many(fields.Nested(SheetExerciseShape), required=True)
    minutes = Whole(required=True)
    needs = Many(Text(200), required=True)
    plates = Many(fields.Nested(SheetPlateShape))
    note = Text(1000)
    on = Day()
    revision = Whole()
    through = Whole()
