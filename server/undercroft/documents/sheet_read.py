"""A stored sheet as far as looking back asks, kept in short and read without weighing every field.

Stored sheets were made here and have been through `LoadSheetShape` once; loading dozens of them
whole, ladders, notch tables and alternatives included, would take most of a second.
"""

from collections.abc import Mapping
from datetime import date
from functools import lru_cache
from typing import Any

from undercroft.documents.made import made
from undercroft.documents.wish import DETAILS
from undercroft.domain.load_sheet import (
    ForceCurve,
    LoadSheet,
    SheetExercise,
    SheetImplement,
    SheetLoad,
    SheetMaximum,
    SheetSet,
    Target,
)
from undercroft.domain.program.methods import Method

Plain = Mapping[str, Any]

FOR_TRAINING = frozenset({"plates", "needs"})
EXERCISE_FOR_TRAINING = frozenset({"notches", "uses", "ramp", "cautions", "rest", "cue", "notes"})
SET_FOR_TRAINING = frozenset({"ladder", "after", "turn", "why", "below", "above"})
"""What only the athlete who trains asks of a sheet, of an exercise on it, of a set."""


def in_short(data: Plain) -> dict[str, Any]:
    """The sheet without these; of an alternative its name alone."""
    return {
        **_without(data, FOR_TRAINING),
        "exercises": [_exercise_in_short(one) for one in data["exercises"]],
    }


def _exercise_in_short(data: Plain) -> dict[str, Any]:
    short = _without(data, EXERCISE_FOR_TRAINING)
    others = data.get("alternatives") or ()
    return {
        **short,
        "alternatives": [
            {name: one[name] for name in ("key", "exercise", "name") if name in one}
            for one in others
        ],
        "sets": [_without(one, SET_FOR_TRAINING) for one in data["sets"]],
    }


def _without(data: Plain, names: frozenset[str]) -> dict[str, Any]:
    return {name: value for name, value in data.items() if name not in names}


def read_stored_sheet(data: Plain) -> LoadSheet:
    """Sets with target, load and mean resistance; of details those of occlusion work alone."""
    on = data.get("on")
    return LoadSheet(
        session=data["session"],
        name=data["name"],
        week=data.get("week", ""),
        week_name=data["week_name"],
        day=data["day"],
        athlete=data.get("athlete", ""),
        kit=data.get("kit", ""),
        exercises=tuple(map(_exercise, data["exercises"])),
        minutes=data.get("minutes", 0),
        needs=(),
        on=date.fromisoformat(on) if on else None,
        revision=data.get("revision", 0),
    )


def _exercise(data: Plain) -> SheetExercise:
    method = Method(data["method"])
    implement, maximum = data["implement"], data.get("maximum")
    return SheetExercise(
        key=data["key"],
        exercise=data["exercise"],
        name=data["name"],
        method=method,
        implement=SheetImplement(implement["kind"], implement["name"]),
        sets=tuple(map(_set, data["sets"])),
        loads=tuple(_load(one["kg"], one["position"]) for one in data.get("loads", ())),
        details=_details(method, data.get("details")),
        maximum=SheetMaximum(**maximum) if maximum else None,
    )


@lru_cache(maxsize=10_000)
def _load(kg: float, position: int) -> SheetLoad:
    """Made once: the same few dozen loads stand on every sheet."""
    return SheetLoad(kg, position)


def _details(method: Method, data: Plain | None) -> Any:
    """Monitoring asks for those of occlusion work alone."""
    if data is None or method is not Method.OCCLUSION:
        return None
    return made(DETAILS[method]).load(data)


def _set(data: Plain) -> SheetSet:
    curve = data.get("curve")
    return SheetSet(
        key=data["key"],
        number=data["number"],
        target=_target(data["target"]),
        load=data.get("load"),
        curve=ForceCurve(**curve) if curve else None,
    )


def _target(data: Plain) -> Target:
    return (
        Target(**{**data, "blocks": tuple(data["blocks"])}) if "blocks" in data else Target(**data)
    )
