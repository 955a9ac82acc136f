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
        if not isinstance(method, str) or method not in set(Method):
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
        if not isinstance(data, dict) or "details" in data:
            return data
        method = data.get("method")
        return {**data, "details": {}} if isinstance(method, str) and method in DETAILS else data

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
        """Keys of weeks and sessions are unique in a block, of exercises and sets in a session."""
        weeks, sessions = _Once(), _Once()
        for w, week in enumerate(data["weeks"]):
            weeks.take(week.key, "weeks", w)
            for s, session in enumerate(week.sessions):
                place = ("weeks", w, "sessions", s)
                sessions.take(session.key, *place)
                exercises, sets = _Once(), _Once()
                for e, exercise in enumerate(session.exercises):
                    exercises.take(exercise.key, *place, "exercises", e)
                    for n, one in enumerate(exercise.sets):
                        sets.take(one.key, *place, "exercises", e, "sets", n)


class _Once:
    """Keys that were seen, none of which may come again."""

    def __init__(self) -> None:
        self.seen: set[str] = set()

    def take(self, key: str, *place: str | int) -> None:
        """Raises ValidationError, at the place of the second one."""
        if key in self.seen:
            fault: Any = {"key": [f"{say(key)} is already taken; give it a key of its own"]}
            for step in reversed(place):
                fault = {step: fault}
            raise ValidationError(fault)
        self.seen.add(key)
