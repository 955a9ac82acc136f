"""The own changes that make an athlete's own block out of the block."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from undercroft.domain.program.block import Block, SessionPlan
from undercroft.domain.program.own.change import Layer, OwnChange, Part, Place, head_of
from undercroft.domain.program.own.lay import laid_over
from undercroft.domain.program.own.misfit import Misfit, misfits
from undercroft.domain.program.own.stand import Stand, sessions_by_key, stand_of


def between(
    block: Block, own: Block, before: Layer, today: date
) -> tuple[Layer, tuple[Misfit, ...]]:
    """The layer that makes `own` of `block`; as before where there are misfits.

    What is as it was with the layer before keeps its change and what that one was made for; what
    has lost its place waits to be decided on.
    """
    found = tuple(misfits(block, own))
    if found:
        return before, found
    kept = before.by_place()
    stood = _parts(laid_over(block, before))
    parts, ours = _parts(block), _parts(own)
    fresh = [
        replace(kept[place], after=_after(own, place))
        if place in kept and ours.get(place) == stood.get(place)
        else OwnChange(*place, parts.get(place), ours.get(place), today, _after(own, place))
        for place in dict.fromkeys([*parts, *ours])
        if ours.get(place) != parts.get(place) and not _hidden(place, ours)
    ]
    made = {one.place for one in fresh}
    waiting = [
        one
        for one in before.changes
        if one.place not in made
        and (_hidden(one.place, ours) or stand_of(one, block) is Stand.GONE)
    ]
    return Layer((*fresh, *waiting)), ()


def _hidden(place: Place, ours: dict[Place, Part]) -> bool:
    """Is it an exercise of a session that is left out as a whole?"""
    session, exercise = place
    return bool(exercise) and (session, "") not in ours


def _parts(block: Block) -> dict[Place, Part]:
    return {
        place: part
        for session in sessions_by_key(block).values()
        for place, part in _of_session(session)
    }


def _of_session(session: SessionPlan) -> Iterator[tuple[Place, Part]]:
    yield (session.key, ""), head_of(session)
    for plan in session.exercises:
        yield (session.key, plan.key), plan


def _after(own: Block, place: Place) -> str:
    """The key of the exercise before it; "" for the first, and for what is none."""
    session = sessions_by_key(own).get(place[0])
    keys = [plan.key for plan in session.exercises] if session else []
    found = keys.index(place[1]) if place[1] in keys else 0
    return keys[found - 1] if found else ""
