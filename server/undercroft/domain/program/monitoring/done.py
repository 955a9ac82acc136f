"""What was done, set by set, in the words that monitoring and the checks count in."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from undercroft.domain.exercise import Catalogue, Exercise, Implement
from undercroft.domain.ledger import SessionRecord
from undercroft.domain.load_sheet import LoadSheet, SheetExercise, SheetSet
from undercroft.domain.one_arm import with_one_arm
from undercroft.domain.program.block import ExercisePlan, SessionPlan
from undercroft.domain.program.methods import Method, Side
from undercroft.domain.program.monitoring.resistance import mean_resistance
from undercroft.domain.swap import swapped_exercise


@dataclass(frozen=True, slots=True)
class DoneSet:
    """One set as it was done; `exercise` is what was in fact done, after a swap.

    `resistance_kg` is the mean resistance over the range (force / g; bands and chains at their
    mean), None where nobody can say. `share` is the load over the maximum that the sheet went by.
    `each_side`: a one-sided set, done once on each side unless `side` names the one.
    """

    on: date
    session: str
    key: str
    exercise: str
    method: Method = Method.STRAIGHT
    load_kg: float | None = None
    reps: int | None = None
    rir: float | None = None
    to_failure: bool = False
    side: Side | None = None
    each_side: bool = False
    resistance_kg: float | None = None
    share: float | None = None
    velocities: tuple[float, ...] = ()
    quality: int | None = None


@dataclass(frozen=True, slots=True)
class _Line:
    """A set key of the session with what it was planned as; an added set has no sheet of its own.

    `plan` is None for a set of an exercise that the plan does not have.
    """

    key: str
    exercise: str
    plan: ExercisePlan | None
    sheet: SheetExercise | None = None
    sheet_set: SheetSet | None = None


def done_sets(
    on: date,
    plan: SessionPlan,
    record: SessionRecord,
    catalogue: Catalogue,
    sheet: LoadSheet | None = None,
) -> tuple[DoneSet, ...]:
    """The sets of a session that were done, in plan order; those that were added come last.

    `on` is the session's planned day, `sheet` the one that it was begun with: without it shares of
    the maximum and the parts of bands and chains stay unknown. Exercises that the catalogue does
    not have are left out.
    """
    return tuple(
        _done(on, plan.key, line, answer.body, catalogue)
        for line in _lines(plan, record, sheet)
        if line.key in record.sets and line.exercise in catalogue
        for answer in record.sets[line.key].answers()
        if answer.kind == "done"
    )


def _lines(plan: SessionPlan, record: SessionRecord, sheet: LoadSheet | None) -> Iterator[_Line]:
    sheets = {one.key: one for one in sheet.exercises} if sheet else {}
    for one in plan.exercises:
        whole = sheets.get(one.key)
        sets = {each.key: each for each in whole.sets} if whole else {}
        for each in one.sets:
            yield _line(each.key, one, record, whole, sets.get(each.key))
    plans = {one.key: one for one in plan.exercises}
    for key, to in record.added.items():
        added = plans.get(to)
        yield _line(key, added, record, sheets.get(to)) if added else _Line(key, to, None)


def _line(
    key: str,
    plan: ExercisePlan,
    record: SessionRecord,
    sheet: SheetExercise | None,
    sheet_set: SheetSet | None = None,
) -> _Line:
    """A set that was done after a swap is none of the sheet's."""
    answer = record.sets.get(key)
    done_as = record.done_as(plan.key, plan.exercise, answer) if answer else plan.exercise
    if done_as == plan.exercise:
        return _Line(key, plan.exercise, plan, sheet, sheet_set)
    return _Line(key, swapped_exercise(done_as), plan)


def _done(
    on: date, session: str, line: _Line, body: Mapping[str, Any], catalogue: Catalogue
) -> DoneSet:
    plan, exercise, load_kg = line.plan, catalogue[line.exercise], body.get("load_kg")
    method = plan.method if plan else Method.STRAIGHT
    maximum = line.sheet.maximum if line.sheet else None
    blocks = sum(body.get("blocks") or ())
    return DoneSet(
        on=on,
        session=session,
        key=line.key,
        exercise=line.exercise,
        method=method,
        load_kg=load_kg,
        reps=body.get("reps") or blocks or None,
        rir=body.get("rir"),
        to_failure=bool(body.get("to_failure")),
        side=Side(body["side"]) if body.get("side") else None,
        each_side=exercise.one_sided or method is Method.ONE_SIDED,
        resistance_kg=mean_resistance(
            load_kg, _implement(line, exercise), line.sheet, line.sheet_set
        ),
        share=load_kg / maximum.kg if load_kg and maximum else None,
        velocities=tuple(body.get("velocities_m_s") or ()),
        quality=body.get("quality"),
    )


def _implement(line: _Line, exercise: Exercise) -> Implement:
    """Of a swap, what the other exercise is done with in that way."""
    one_arm = line.plan is not None and with_one_arm(line.plan, exercise)
    pair = exercise.implement is Implement.DUMBBELLS
    return Implement.DUMBBELL if pair and one_arm else exercise.implement
