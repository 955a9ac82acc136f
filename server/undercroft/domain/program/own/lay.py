"""A block with one athlete's own changes laid over it; all keys stay, so results stay tied."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan
from undercroft.domain.program.own.change import Layer, OwnChange, Place, SessionHead, head_of
from undercroft.domain.program.own.stand import met

Sessions = tuple[SessionPlan, ...]
Changes = Mapping[Place, OwnChange]


def laid_over(block: Block, layer: Layer) -> Block:
    """What the athlete does. Changes whose place is gone change nothing."""
    if not layer.changes:
        return block
    changes = layer.by_place()
    return replace(
        block,
        weeks=tuple(
            replace(week, sessions=_by_day(week.sessions, tuple(_sessions(week.sessions, changes))))
            for week in block.weeks
        ),
    )


def _by_day(block: Sessions, own: Sessions) -> Sessions:
    """In the order of the block, unless one has a day of its own."""
    days = {session.key: session.day for session in block}
    moved = any(days[session.key] != session.day for session in own)
    return tuple(sorted(own, key=lambda one: one.day)) if moved else own


def _sessions(sessions: Sessions, changes: Changes) -> Iterator[SessionPlan]:
    for session in sessions:
        head = _head(session, changes.get((session.key, "")))
        if head is not None:
            exercises = tuple(_with_added(session, changes))
            yield SessionPlan(session.key, head.name, head.day, exercises, head.note)


def _head(session: SessionPlan, change: OwnChange | None) -> SessionHead | None:
    now = head_of(session)
    part = now if change is None else met(change, now)[0]
    return part if isinstance(part, SessionHead) else None


def _with_added(session: SessionPlan, changes: Changes) -> list[ExercisePlan]:
    """In the order of the block; what is added stands after what it was added after."""
    here = [one for one in changes.values() if one.session == session.key and one.exercise]
    known = {plan.key for plan in session.exercises}
    added = [one for one in here if one.beneath is None and one.exercise not in known]
    keys = [plan.key for plan in session.exercises]
    for one in added:
        keys.insert(_place_after(one.after, keys), one.exercise)
    own = {one.exercise: one.own for one in added}
    own |= {
        plan.key: _exercise(plan, changes.get((session.key, plan.key)))
        for plan in session.exercises
    }
    return [part for key in keys if isinstance(part := own[key], ExercisePlan)]


def _place_after(key: str, keys: list[str]) -> int:
    if not key:
        return 0
    return keys.index(key) + 1 if key in keys else len(keys)


def _exercise(plan: ExercisePlan, change: OwnChange | None) -> ExercisePlan | None:
    if change is None:
        return plan
    part = met(change, plan)[0]
    return part if isinstance(part, ExercisePlan) else None
