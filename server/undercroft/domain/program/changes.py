"""What a new revision changes, in words for the athlete."""

from collections.abc import Iterator, Mapping

from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan
from undercroft.domain.program.calendar import DAYS

MOST_LINES = 12


def changes(old: Block | None, new: Block, catalogue: Catalogue) -> tuple[str, ...]:
    """A line for each session that came, went or changed; nothing for a first revision."""
    if old is None:
        return ()
    lines = list(_lines(_sessions(old), _sessions(new), catalogue))
    more = len(lines) - MOST_LINES
    return tuple(lines) if more <= 0 else (*lines[:MOST_LINES], f"and {more} more changes")


def _sessions(block: Block) -> dict[str, tuple[str, SessionPlan]]:
    return {
        session.key: (f"{week.name}, {DAYS[session.day - 1]}", session)
        for week in block.weeks
        for session in week.sessions
    }


def _lines(
    old: Mapping[str, tuple[str, SessionPlan]],
    new: Mapping[str, tuple[str, SessionPlan]],
    catalogue: Catalogue,
) -> Iterator[str]:
    for key, (where, session) in new.items():
        if key not in old:
            yield f"{where}: {session.name} is new"
            continue
        before_where, before = old[key]
        if before_where != where:
            yield f"{session.name} moves from {before_where} to {where}"
        yield from _in_session(where, before, session, catalogue)
    for key, (where, session) in old.items():
        if key not in new:
            yield f"{where}: {session.name} is gone"


def _in_session(
    where: str, old: SessionPlan, new: SessionPlan, catalogue: Catalogue
) -> Iterator[str]:
    before = {plan.key: plan for plan in old.exercises}
    after = {plan.key: plan for plan in new.exercises}
    for key, plan in after.items():
        if key not in before:
            yield f"{where}: {_name(plan, catalogue)} is added"
        elif before[key] != plan:
            yield f"{where}: {_name(plan, catalogue)} has changed"
    for key, plan in before.items():
        if key not in after:
            yield f"{where}: {_name(plan, catalogue)} is dropped"


def _name(plan: ExercisePlan, catalogue: Catalogue) -> str:
    return catalogue[plan.exercise].name.lower()
