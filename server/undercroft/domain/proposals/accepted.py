"""Accepted loads kept as the athlete's own, so that the block sent again does not undo them."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan
from undercroft.domain.program.own import Layer, OwnChange
from undercroft.domain.program.wish import LoadWish
from undercroft.domain.proposals.proposal import Place


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
) -> Sequence[OwnChange]:
    kept = layer.by_place()
    found = []
    for plan in session.exercises:
        known = kept.get((session.key, plan.key))
        own = plan if known is None else known.own
        changed = _loaded(session.key, own, loads) if isinstance(own, ExercisePlan) else own
        if changed != own and known is None:
            found.append(OwnChange(session.key, plan.key, plan, changed, today, accepted=True))
        elif changed != own and known is not None:
            found.append(replace(known, own=changed, since=today))
    return found


def _loaded(session: str, plan: ExercisePlan, loads: Mapping[Place, LoadWish]) -> ExercisePlan:
    sets = tuple(replace(one, load=loads.get((session, one.key), one.load)) for one in plan.sets)
    return replace(plan, sets=sets)
