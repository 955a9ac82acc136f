"""What a new revision changes, in words for the athlete, and for the coach before it is sent."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.calendar import DAYS
from undercroft.domain.program.set_words import (
    content_words,
    load_words,
    loads_words,
    rest_words,
    scheme_words,
    sets_words,
)

MOST_LINES = 12

Sets = tuple[SetPlan, ...]


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
            yield f"{where}: {exercise_name(plan, catalogue)} is added"
        elif before[key] != plan:
            yield f"{where}: {exercise_words(before[key], plan, catalogue)}"
    for key, plan in before.items():
        if key not in after:
            yield f"{where}: {exercise_name(plan, catalogue)} is dropped"


def exercise_name(plan: ExercisePlan, catalogue: Catalogue) -> str:
    """As it stands within a sentence."""
    return catalogue[plan.exercise].name.lower()


def exercise_words(old: ExercisePlan, new: ExercisePlan, catalogue: Catalogue) -> str:
    """What differs in one exercise: "back squat 82.5 kg instead of 80 kg"."""
    name = exercise_name(new, catalogue)
    if old.exercise != new.exercise:
        return f"{name} in place of {exercise_name(old, catalogue)}"
    told = [*_sets(old, new), *_around_sets(old, new)]
    return f"{name} {', '.join(told)}" if told else f"{name} has changed"


def _sets(old: ExercisePlan, new: ExercisePlan) -> Iterator[str]:
    """Of repetitions, loads and reserve only what differs."""
    was, will = _without_shared_reserve(old.sets, new.sets)
    if [content_words(one) for one in was] == [content_words(one) for one in will]:
        before, after = loads_words(was), loads_words(will)
    elif len({load_words(one.load) for one in (*was, *will)}) == 1:
        before, after = scheme_words(was), scheme_words(will)
    else:
        before, after = sets_words(was), sets_words(will)
    if before != after:
        yield f"{after} instead of {before}"


def _without_shared_reserve(old: Sets, new: Sets) -> tuple[Sets, Sets]:
    if len({one.rir for one in (*old, *new)}) > 1:
        return old, new
    bare = [tuple(replace(one, rir=None) for one in sets) for sets in (old, new)]
    return bare[0], bare[1]


def _around_sets(old: ExercisePlan, new: ExercisePlan) -> Iterator[str]:
    if old.rest != new.rest:
        yield f"rest {rest_words(new.rest)} instead of {rest_words(old.rest)}"
    if old.rig != new.rig:
        yield "with other bands or chains"
    if old.implement != new.implement:
        yield "on other equipment"
    if old.cue != new.cue:
        yield "with another cue"
