"""What a session, as it was done, tells of the maxima of its lifts."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from undercroft.domain.exercise import Catalogue
from undercroft.domain.ledger import SessionRecord, SetRecord
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.methods import Method
from undercroft.domain.sheet.day import implement_for
from undercroft.domain.sheet.turns import WEIGHTLESS, gives_evidence, planned_set
from undercroft.domain.strength import Evidence, PlannedSet, SetDone, TestedMax, evidence_n


@dataclass(frozen=True, slots=True)
class Told:
    """One piece of evidence, and the key of the set that gave it."""

    set: str
    evidence: Evidence


def told_by(
    plan: SessionPlan, record: SessionRecord, catalogue: Catalogue
) -> dict[str, tuple[Told, ...]]:
    """Evidence by lift, in plan order; sets that the athlete added come last."""
    found: dict[str, list[Told]] = defaultdict(list)
    for exercise in plan.exercises:
        lift = record.swaps.get(exercise.key, record.swaps.get(exercise.exercise))
        for told in _of_exercise(exercise, record, catalogue, lift):
            found[lift or exercise.exercise].append(told)
    for key, added_to in record.added.items():
        exercise_of = {e.key: e.exercise for e in plan.exercises}
        lift = exercise_of.get(added_to, added_to)
        if lift in catalogue and catalogue[lift].implement not in WEIGHTLESS:
            found[lift] += _of_set(key, record.sets.get(key), None)
    return {lift: tuple(told) for lift, told in found.items() if told}


def _of_exercise(
    plan: ExercisePlan, record: SessionRecord, catalogue: Catalogue, swapped: str | None
) -> Iterator[Told]:
    if swapped is not None and swapped not in catalogue:
        return
    implement = catalogue[swapped].implement if swapped else implement_for(plan, catalogue)
    if not gives_evidence(plan, implement):
        return
    told = [t for one in plan.sets for t in _of_set(one.key, record.sets.get(one.key), one)]
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
    singles = [t for t in told if isinstance(t.evidence, SetDone) and t.evidence.reps == 1]
    if singles:
        best = max(singles, key=lambda t: t.evidence.load_kg)
        yield Told(best.set, TestedMax(best.evidence.load_kg))
    else:
        yield from told
