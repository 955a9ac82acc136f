"""An exercise that the coach and one athlete's own changes have both moved on, part by part.

What only one of the two changed is taken from that one. Where both changed the same part, the
athlete's own stays, and that is a clash. A set is one part: its load is meant for its repetitions.
"""

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any, TypeVar

from undercroft.domain.program.block import ExercisePlan, SetPlan

WHAT = ("exercise", "method", "details", "implement")
"""What the sets are meant for: where it differs, an exercise is one part with its sets."""

AROUND = tuple(
    field.name for field in fields(ExercisePlan) if field.name not in (*WHAT, "key", "sets")
)

Sets = tuple[SetPlan, ...]
T = TypeVar("T")


def pick(beneath: T, own: T, now: T) -> tuple[T, bool]:
    """One part, and whether it clashes."""
    if own in (beneath, now):
        return now, False
    return own, now != beneath


def merge(beneath: ExercisePlan, own: ExercisePlan, now: ExercisePlan) -> tuple[ExercisePlan, bool]:
    """The exercise as the athlete does it, and whether anything in it clashes."""
    if what_of(own) != what_of(beneath) or what_of(now) != what_of(beneath):
        return pick(beneath, own, now)
    around = {
        name: pick(getattr(beneath, name), getattr(own, name), getattr(now, name))
        for name in AROUND
    }
    sets, clash = _sets(beneath.sets, own.sets, now.sets)
    values = {name: value for name, (value, _) in around.items()}
    return replace(now, sets=sets, **values), clash or any(hit for _, hit in around.values())


def what_of(plan: ExercisePlan) -> tuple[Any, ...]:
    return tuple(getattr(plan, name) for name in WHAT)


def _sets(beneath: Sets, own: Sets, now: Sets) -> tuple[Sets, bool]:
    """Sets that one of the two added, moved or took away stand as that one has them."""
    if _keys(own) in (_keys(beneath), _keys(now)):
        order = _keys(now)
    elif _keys(now) == _keys(beneath):
        order = _keys(own)
    else:
        return pick(beneath, own, now)
    was, ours, theirs = _by_key(beneath), _by_key(own), _by_key(now)
    picked = [_set(was.get(key), ours.get(key), theirs.get(key)) for key in order]
    gone = [key for key in was if key not in order]
    lost = any(was[key] not in (ours.get(key), theirs.get(key)) for key in gone)
    return tuple(one for one, _ in picked), lost or any(clash for _, clash in picked)


def _set(beneath: SetPlan | None, own: SetPlan | None, now: SetPlan | None) -> tuple[Any, bool]:
    if own is None or now is None:
        return own or now, False
    return pick(beneath, own, now)


def _keys(sets: Sets) -> tuple[str, ...]:
    return tuple(one.key for one in sets)


def _by_key(sets: Sets) -> Mapping[str, SetPlan]:
    return {one.key: one for one in sets}
