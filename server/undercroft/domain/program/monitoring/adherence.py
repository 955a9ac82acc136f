"""Planned against done: what became of each set of a session, and how many of each fate."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Any

from undercroft.domain.ledger import SessionRecord
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.monitoring.resistance import SAME_KG


class Fate(StrEnum):
    """What became of a planned set. Unknown is not skipped: without signal silence is no absence.

    `AHEAD`: its day has not passed.
    """

    DONE = "done"
    CHANGED = "changed"
    SKIPPED = "skipped"
    UNKNOWN = "unknown"
    AHEAD = "ahead"


@dataclass(frozen=True, slots=True)
class Today:
    """`heard_through` is the last day of which the athlete's phones have sent everything."""

    on: date
    heard_through: date | None = None


@dataclass(frozen=True, slots=True)
class Adherence:
    """Sets whose day has come, by what became of them; `planned` is the sum of the others."""

    done: int = 0
    changed: int = 0
    skipped: int = 0
    unknown: int = 0

    @property
    def planned(self) -> int:
        return self.done + self.changed + self.skipped + self.unknown


def fates(
    on: date,
    plan: SessionPlan,
    record: SessionRecord | None,
    today: Today,
    planned_kg: Mapping[str, float] | None = None,
) -> dict[str, Fate]:
    """By set key, what became of each planned set of a session of day `on`.

    A one-sided set of which only one side was told, or done, is changed.

    `planned_kg` are the loads of the sheet by set key; a set without one is not judged by its load.
    """
    rest = _fate_of_silence(on, record, today)
    kg = planned_kg or {}
    return {
        one.key: _fate(exercise, one, record, kg.get(one.key), rest)
        for exercise in plan.exercises
        for one in exercise.sets
    }


def adherence(all_fates: Iterable[Mapping[str, Fate]]) -> Adherence:
    """The fates of any number of sessions, counted."""
    counted = Counter(fate for of_session in all_fates for fate in of_session.values())
    return Adherence(
        counted[Fate.DONE], counted[Fate.CHANGED], counted[Fate.SKIPPED], counted[Fate.UNKNOWN]
    )


def _fate_of_silence(on: date, record: SessionRecord | None, today: Today) -> Fate:
    """What a set without an answer means."""
    if record is not None and (record.finished or record.stopped):
        return Fate.SKIPPED
    if today.on <= on:
        return Fate.AHEAD
    heard = today.heard_through is not None and today.heard_through >= on
    return Fate.SKIPPED if heard else Fate.UNKNOWN


def _fate(
    exercise: ExercisePlan,
    one: SetPlan,
    record: SessionRecord | None,
    planned_kg: float | None,
    silence: Fate,
) -> Fate:
    answer = record.sets.get(one.key) if record else None
    if record is None or answer is None:
        return silence
    answers = answer.answers()
    if all(one.kind == "skipped" for one in answers):
        return Fate.SKIPPED
    done_as = record.done_as(exercise.key, exercise.exercise, answer)
    same = done_as == exercise.exercise and len(answer.sides) != 1
    as_planned = all(a.kind == "done" and _as_planned(one, a.body, planned_kg) for a in answers)
    return Fate.DONE if same and as_planned else Fate.CHANGED


def _as_planned(one: SetPlan, body: Mapping[str, Any], planned_kg: float | None) -> bool:
    """Load and repetitions as written; a set to failure has no repetitions to miss."""
    load_kg, reps = body.get("load_kg"), body.get("reps")
    if planned_kg is not None and load_kg is not None and abs(load_kg - planned_kg) > SAME_KG:
        return False
    counted = reps is not None and one.reps is not None and not one.to_failure
    if counted and reps != one.reps:
        return False
    seconds = body.get("seconds")
    return one.seconds is None or seconds is None or seconds >= one.seconds
