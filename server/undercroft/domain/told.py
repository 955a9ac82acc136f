"""What a session, as it was done, tells of the maxima of its lifts."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from undercroft.domain.exercise import Catalogue
from undercroft.domain.ledger import SessionRecord, SetRecord
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.methods import Method
from undercroft.domain.set_keys import set_keys
from undercroft.domain.sheet.day import implement_for
from undercroft.domain.sheet.turns import gives_evidence, planned_set
from undercroft.domain.strength import Evidence, PlannedSet, SetDone, TestedMax, evidence_n
from undercroft.domain.swap import swapped_exercise, swapped_rig


@dataclass(frozen=True, slots=True)
class Told:
    """One piece of evidence, and the key of the set that gave it."""

    set: str
    evidence: Evidence


def told_by(
    plan: SessionPlan, record: SessionRecord, catalogue: Catalogue
) -> dict[str, tuple[Told, ...]]:
    """Evidence by lift, in plan order; sets that the athlete added come last in their exercise."""
    found: dict[str, list[Told]] = defaultdict(list)
    for exercise in plan.exercises:
        for lift, keys in sets_by_lift(exercise, record).items():
            found[lift] += _of_exercise(exercise, record, catalogue, lift, keys)
    return {lift: tuple(told) for lift, told in found.items() if told}


def sets_by_lift(plan: ExercisePlan, record: SessionRecord) -> dict[str, list[str]]:
    """Keys of the sets that were answered, by what they were done as: itself, or after a swap."""
    found: dict[str, list[str]] = defaultdict(list)
    for key in set_keys(plan, record):
        if answer := record.sets.get(key):
            done_as = record.done_as(plan.key, plan.exercise, answer)
            found[swapped_exercise(done_as)].append(key)
    return found


def first_loads(plan: SessionPlan, record: SessionRecord) -> dict[str, float | None]:
    """Kilograms of the first set done of each exercise; None where the session leaves it open.

    A set done with other bands than planned, or without them, says nothing of the next load.
    """
    loads: dict[str, float | None] = {}
    for exercise in plan.exercises:
        planned = {one.key for one in exercise.sets}
        by_lift = sets_by_lift(exercise, record) or {exercise.exercise: []}
        for lift, keys in by_lift.items():
            done = [
                record.sets[key]
                for key in keys
                if key in planned and not _rigged_otherwise(exercise, record, record.sets[key])
            ]
            heavy = [float(s.body["load_kg"]) for s in done if _is_loaded(s)]
            loads[lift] = loads.get(lift) or (heavy[0] if heavy else None)
    return loads


def _rigged_otherwise(plan: ExercisePlan, record: SessionRecord, answer: SetRecord) -> bool:
    return bool(swapped_rig(record.done_as(plan.key, plan.exercise, answer)))


def _is_loaded(record: SetRecord) -> bool:
    return record.kind == "done" and bool(record.body.get("load_kg"))


def _of_exercise(
    plan: ExercisePlan,
    record: SessionRecord,
    catalogue: Catalogue,
    lift: str,
    keys: Sequence[str],
) -> Iterator[Told]:
    if lift not in catalogue:
        return
    own = lift == plan.exercise
    implement = implement_for(plan, catalogue) if own else catalogue[lift].implement
    if not gives_evidence(plan, implement):
        return
    planned = {one.key: one for one in plan.sets}
    told = [t for key in keys for t in _of_set(key, record.sets.get(key), planned.get(key))]
    if plan.method is Method.MAXIMUM_TEST:
        yield from _best_attempt(told)
    else:
        yield from told


def _of_set(key: str, done: SetRecord | None, plan: SetPlan | None) -> list[Told]:
    if done is None or done.kind != "done":
        return []
    body: Mapping[str, Any] = done.body
    load, reps, rir = body.get("load_kg"), body.get("reps"), body.get("rir")
    to_failure = bool(body.get("to_failure"))
    if not load or not reps:
        return []
    n = evidence_n(load, reps, rir, to_failure)
    if n is None:
        return []
    planned = planned_set(plan) if plan else None
    return [Told(key, SetDone(load, reps, n - reps, planned or PlannedSet(reps, n - reps)))]


def _best_attempt(told: list[Told]) -> Iterator[Told]:
    """Of the singles of a test the heaviest counts; the others only led up to it."""
    singles = [
        (t.evidence.load_kg, t.set)
        for t in told
        if isinstance(t.evidence, SetDone) and t.evidence.reps == 1
    ]
    if singles:
        load_kg, key = max(singles, key=lambda single: single[0])
        yield Told(key, TestedMax(load_kg))
    else:
        yield from told
