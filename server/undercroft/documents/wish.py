"""Load wishes, rigs, method details and progressions: the parts that come in several shapes."""

from typing import Any

from marshmallow import ValidationError, validates, validates_schema

from undercroft.documents.fields import Key, Many, Number, OneOf, Truth, Whole
from undercroft.documents.shape import Shape
from undercroft.domain.program import methods, progression, rig, wish


class OfMaximumShape(Shape):
    builds = wish.OfMaximum
    percent = Number(above=0, most=150, unit="% of the maximum", required=True)
    of = Key()
    ratio = Number(least=0.05, most=3)
    point = OneOf(wish.Point)
    when_unknown = OneOf(wish.WhenUnknown)


class FixedShape(Shape):
    builds = wish.Fixed
    kg = Number(above=0, most=600, unit="kg", required=True)
    in_hand = Truth()


class ByReserveShape(Shape):
    builds = wish.ByReserve
    rir = Number(least=0, most=10, unit="repetitions in reserve", required=True)
    when_unknown = OneOf(wish.WhenUnknown)


class AsLastTimeShape(Shape):
    builds = wish.AsLastTime
    add_kg = Number(least=-50, most=50, unit="kg")
    start_kg = Number(above=0, most=600, unit="kg")


class OfTopSetShape(Shape):
    builds = wish.OfTopSet
    percent = Number(least=30, most=100, unit="% of the top set", required=True)


class BodyMassShape(Shape):
    builds = wish.BodyMass
    add_kg = Number(least=-150, most=150, unit="kg")


class UnloadedShape(Shape):
    builds = wish.Unloaded


WISHES: dict[str, type[Shape]] = {
    "percent": OfMaximumShape,
    "kg": FixedShape,
    "rir": ByReserveShape,
    "last": AsLastTimeShape,
    "top-set": OfTopSetShape,
    "body": BodyMassShape,
    "none": UnloadedShape,
}


class RigShape(Shape):
    builds = rig.Rig
    part = OneOf(rig.Part, required=True)
    share_percent = Number(above=0, most=80, unit="%")
    base = OneOf(rig.ShareBase)
    point = OneOf(wish.Point)
    route = OneOf(rig.Route)
    assists = Truth()
    per_side = Whole(least=1, most=4)
    things = Many(Key(), most=8)


class SoughtRigShape(RigShape):
    """A share to look for: it and a point of the lift must be said."""

    share_percent = Number(above=0, most=80, unit="%", required=True)

    @validates("point")
    def _in_the_lift(self, point: wish.Point, **_: Any) -> None:
        if point is wish.Point.BAR:
            raise ValidationError("nothing hangs there; use start, mean or lockout")


class SpeedRuleShape(Shape):
    builds = methods.SpeedRule
    stop_at_loss_percent = Number(least=2, most=50, unit="%")
    stop_at_quality = Whole(least=1, most=4)


class HoldRuleShape(Shape):
    builds = methods.HoldRule
    position = Number(least=0, most=1, required=True)
    per_rep = Truth()


class TempoRuleShape(Shape):
    builds = methods.TempoRule
    lowering_s = Whole(least=0, most=30, unit="s", required=True)
    pause_low_s = Whole(least=0, most=30, unit="s", required=True)
    lifting_s = Whole(least=0, most=30, unit="s", required=True)
    pause_high_s = Whole(least=0, most=30, unit="s", required=True)


class OcclusionRuleShape(Shape):
    builds = methods.OcclusionRule
    limb = OneOf(methods.Limb, required=True)
    restriction = OneOf(methods.Restriction, required=True)
    both_at_once = Truth()
    tightness = Whole(least=0, most=7)
    pressure_percent = Number(least=40, most=80, unit="% of the occlusion pressure")


class UnstableRuleShape(Shape):
    builds = methods.UnstableRule
    hanging = Truth(required=True)


class OneSidedRuleShape(Shape):
    builds = methods.OneSidedRule
    first = OneOf(methods.Side, required=True)
    knee_down = OneOf(methods.KneeDown)


class ClusterRuleShape(Shape):
    builds = methods.ClusterRule
    block_rest_s = Whole(least=5, most=120, unit="s", required=True)


class TestRuleShape(Shape):
    builds = methods.TestRule
    reps = Whole(least=1, most=10)
    attempts = Whole(least=1, most=10)


DETAILS: dict[methods.Method, type[Shape]] = {
    methods.Method.SPEED: SpeedRuleShape,
    methods.Method.HOLD: HoldRuleShape,
    methods.Method.TEMPO: TempoRuleShape,
    methods.Method.OCCLUSION: OcclusionRuleShape,
    methods.Method.UNSTABLE_BAR: UnstableRuleShape,
    methods.Method.ONE_SIDED: OneSidedRuleShape,
    methods.Method.CLUSTER: ClusterRuleShape,
    methods.Method.MAXIMUM_TEST: TestRuleShape,
}


class AddKgShape(Shape):
    builds = progression.AddKg
    kg = Number(least=-50, most=50, unit="kg", required=True)


class AddPercentShape(Shape):
    builds = progression.AddPercent
    percent = Number(least=-30, most=30, unit="%", required=True)


class PercentByWeekShape(Shape):
    builds = progression.PercentByWeek
    percents = Many(Number(above=0, most=150, unit="%"), fewest=1, most=52, required=True)


class WaveShape(Shape):
    builds = progression.Wave
    percents = Many(Number(above=0, most=150, unit="%"), fewest=1, most=12, required=True)
    step_percent = Number(least=0, most=20, unit="%")


class DoubleProgressionShape(Shape):
    builds = progression.DoubleProgression
    reps_from = Whole(least=1, most=50, required=True)
    reps_to = Whole(least=1, most=50, required=True)
    add_kg = Number(above=0, most=50, unit="kg", required=True)

    @validates_schema
    def _rises(self, data: dict[str, Any], **_: Any) -> None:
        low, high = data["reps_from"], data["reps_to"]
        if high < low:
            raise ValidationError(
                {"reps_to": [f"{high} is less than reps_from; give {low} or more"]}
            )


class FallingReserveShape(Shape):
    builds = progression.FallingReserve
    rirs = Many(Number(least=0, most=10), fewest=1, most=52, required=True)


class RisingSetsShape(Shape):
    builds = progression.RisingSets
    sets = Many(Whole(least=1, most=30), fewest=1, most=52, required=True)


class LightWeekShape(Shape):
    builds = progression.LightWeek
    every = Whole(least=2, most=12, unit="weeks", required=True)
    factor = Number(least=0.3, most=1, required=True)


class RepeatShape(Shape):
    builds = progression.Repeat


class TestWeekShape(Shape):
    builds = progression.TestWeek
    every = Whole(least=2, most=52, unit="weeks", required=True)


PROGRESSIONS: dict[str, type[Shape]] = {
    "add-kg": AddKgShape,
    "add-percent": AddPercentShape,
    "percent-by-week": PercentByWeekShape,
    "wave": WaveShape,
    "double": DoubleProgressionShape,
    "falling-reserve": FallingReserveShape,
    "rising-sets": RisingSetsShape,
    "light-week": LightWeekShape,
    "repeat": RepeatShape,
    "test-week": TestWeekShape,
}
