"""Accepted loads kept as the athlete's own, so that the block sent again does not undo them."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date

from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.own import Layer, OwnChange, Part
from undercroft.domain.program.own.merge import what_of
from undercroft.domain.program.wish import LoadWish
from undercroft.domain.proposals.proposal import Place

Sets = Mapping[str, SetPlan]
Loads = Mapping[str, LoadWish]
"""Both by the sets' keys."""


def with_accepted(
    layer: Layer, block: Block, loads: Mapping[Place, LoadWish], today: date
) -> Layer:
    """The layer with these loads in it; `block` is what the athlete was sent, with own changes.

    An exercise that has no own change yet was sent as the coach's block said it: that is what the
    loads are a change to.
    """
    kept = dict(layer.by_place())
    for week in block.weeks:
        for session in week.sessions:
            for change in _of_session(layer, session, loads, today):
                kept[change.place] = change
    return Layer(tuple(kept.values()))


def _of_session(
    layer: Layer, session: SessionPlan, loads: Mapping[Place, LoadWish], today: date
) -> Iterator[OwnChange]:
    kept = layer.by_place()
    for plan in session.exercises:
        place = (session.key, plan.key)
        here = {key: load for (where, key), load in loads.items() if where == session.key}
        known = kept.get(place, OwnChange(*place, plan, plan, today, accepted=True))
        changed = _on_top(known, plan, here)
        if changed != known:
            yield replace(changed, since=today)


def _on_top(known: OwnChange, sent: ExercisePlan, loads: Loads) -> OwnChange:
    """The change with the loads that are meant for what it says.

    What the coach wrote for the athlete since the exercise was sent is left as it is written.
    """
    if not isinstance(known.own, ExercisePlan) or what_of(known.own) != what_of(sent):
        return known
    told = {one.key: one for one in sent.sets if one.key in loads}
    beneath, own = _brought_up(known.beneath, known.own, told)
    return replace(known, beneath=beneath, own=_loaded(own, told, loads))


def _brought_up(
    beneath: Part | None, own: ExercisePlan, told: Sets
) -> tuple[Part | None, ExercisePlan]:
    """With the sets as they were sent that came from the block, which has moved on since."""
    if not isinstance(beneath, ExercisePlan):
        return beneath, own
    was, ours = _by_key(beneath), _by_key(own)
    fresh = {key: one for key, one in told.items() if ours.get(key) == was.get(key)}
    return _with(beneath, fresh), _with(own, fresh)


def _loaded(own: ExercisePlan, told: Sets, loads: Loads) -> ExercisePlan:
    """A load is meant for its repetitions: it goes on sets that otherwise are as they were sent."""
    fits = {
        one.key: replace(one, load=loads[one.key])
        for one in own.sets
        if one.key in told and replace(one, load=told[one.key].load) == told[one.key]
    }
    return _with(own, fits)


def _with(plan: ExercisePlan, sets: Sets) -> ExercisePlan:
    return replace(plan, sets=tuple({**_by_key(plan), **sets}.values()))


def _by_key(plan: ExercisePlan) -> Sets:
    return {one.key: one for one in plan.sets}
