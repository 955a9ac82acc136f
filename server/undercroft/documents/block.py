"""The block document: weeks, sessions, exercises, sets."""

from typing import Any

from marshmallow import ValidationError, fields, pre_load, validates_schema

from undercroft.documents.fields import (
    Key,
    Many,
    Number,
    OneOf,
    Tagged,
    Text,
    Truth,
    Whole,
    say,
)
from undercroft.documents.shape import Shape
from undercroft.documents.wish import DETAILS, PROGRESSIONS, WISHES, RigShape
from undercroft.domain.exercise import Implement
from undercroft.domain.program import block
from undercroft.domain.program.methods import Method
from undercroft.domain.warmup import RampStep


class RestShape(Shape):
    builds = block.Rest
    from_s = Whole(least=0, most=1800, unit="s", required=True)
    to_s = Whole(least=0, most=1800, unit="s", required=True)

    @validates_schema
    def _in_order(self, data: dict[str, Any], **_: Any) -> None:
        if data["to_s"] < data["from_s"]:
            raise ValidationError(
                {"to_s": [f"{data['to_s']} s is before from_s; give a later time"]}
            )


class RampStepShape(Shape):
    builds = RampStep
    reps = Whole(least=1, most=20, required=True)
    share = Number(least=0.05, most=0.99, unit="of the work load", required=True)


class SetShape(Shape):
    builds = block.SetPlan
    key = Key(required=True)
    load = Tagged("basis", WISHES, required=True)  # type: ignore[assignment]
    reps = Whole(least=1, most=200, unit="repetitions")
    rir = Number(least=0, most=10, unit="repetitions in reserve")
    to_failure = Truth()
    seconds = Number(above=0, most=3600, unit="s")
    distance_m = Number(above=0, most=50_000, unit="m")
    blocks = Many(Whole(least=1, most=20), most=20)


class MethodDetails(fields.Field[Any]):
    """What the exercise's method needs beyond its sets, in that method's own shape."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> Any:
        method = data.get("method")
        if method not in set(Method):
            return None
        if method not in DETAILS:
            raise ValidationError(f"{method} has none; remove the field")
        return DETAILS[Method(method)]().load(value)

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Any:
        return None if value is None else DETAILS[obj.method]().dump(value)


class ExerciseShape(Shape):
    builds = block.ExercisePlan
    key = Key(required=True)
    exercise = Key(required=True)
    method = OneOf(Method, required=True)
    implement = OneOf(Implement)
    group = Text(8, 1)
    rest = fields.Nested(RestShape)
    cue = Text(300)
    details = MethodDetails()
    rig = fields.Nested(RigShape)
    warm_up = Many(fields.Nested(RampStepShape), most=10)
    tolerance_percent = Number(least=0, most=10, unit="%")
    hold_the_plan = Truth()
    progression = Tagged("rule", PROGRESSIONS)
    sets = Many(fields.Nested(SetShape), fewest=1, most=30, required=True)

    @pre_load
    def _details_have_defaults(self, data: Any, **_: Any) -> Any:
        if isinstance(data, dict) and "details" not in data and data.get("method") in DETAILS:
            return {**data, "details": {}}
        return data

    @validates_schema(skip_on_field_errors=False)
    def _sets_fit_the_method(self, data: dict[str, Any], **_: Any) -> None:
        if "method" not in data or "sets" not in data:
            return
        faults = {
            place: missing
            for place, one in enumerate(data["sets"])
            if isinstance(one, block.SetPlan) and (missing := _missing_in(one, data["method"]))
        }
        if faults:
            raise ValidationError({"sets": faults})


SETS_NEED: dict[Method, tuple[str, ...]] = {
    Method.HOLD: ("seconds",),
    Method.TIMED: (),
    Method.CLUSTER: ("blocks",),
    Method.WARM_UP: (),
    Method.MAXIMUM_TEST: (),
}
"""What each set of a method must say; methods that are not listed need reps."""


def _missing_in(one: block.SetPlan, method: Method) -> dict[str, list[str]]:
    needed = SETS_NEED.get(method, ("reps",))
    words = f"missing; a set of {say(method.value)} needs "
    missing = {name: [words + name] for name in needed if not getattr(one, name)}
    if method is Method.TIMED and not (one.seconds or one.distance_m):
        missing["seconds"] = [words + "seconds or distance_m"]
    return missing


class SessionShape(Shape):
    builds = block.SessionPlan
    key = Key(required=True)
    name = Text(80, 1, required=True)
    day = Whole(least=1, most=7, unit="(1 is Monday, 7 is Sunday)", required=True)
    exercises = Many(fields.Nested(ExerciseShape), fewest=1, most=30, required=True)
    note = Text(1000)


class WeekShape(Shape):
    builds = block.Week
    key = Key(required=True)
    name = Text(80, 1, required=True)
    sessions = Many(fields.Nested(SessionShape), most=14, required=True)


class BlockShape(Shape):
    builds = block.Block
    key = Key(required=True)
    name = Text(120, 1, required=True)
    weeks = Many(fields.Nested(WeekShape), fewest=1, most=52, required=True)
    note = Text(2000)

    @validates_schema
    def _keys_differ(self, data: dict[str, Any], **_: Any) -> None:
        """Session keys are unique in a block; set keys within their session."""
        seen: set[str] = set()
        for w, week in enumerate(data["weeks"]):
            for s, session in enumerate(week.sessions):
                here = {"weeks": {w: {"sessions": {s: {"key": [_taken(session.key)]}}}}}
                if session.key in seen:
                    raise ValidationError(here)
                seen.add(session.key)
                _unique_within(session, w, s)


def _taken(key: str) -> str:
    return f"{say(key)} is already taken; give it a key of its own"


def _unique_within(session: block.SessionPlan, w: int, s: int) -> None:
    seen: set[str] = set()
    for e, exercise in enumerate(session.exercises):
        for n, one in enumerate(exercise.sets):
            if one.key in seen:
                spot = {"exercises": {e: {"sets": {n: {"key": [_taken(one.key)]}}}}}
                raise ValidationError({"weeks": {w: {"sessions": {s: spot}}}})
            seen.add(one.key)
