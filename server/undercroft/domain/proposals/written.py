"""A block with other loads in some of its sets; all keys stay, so that results stay tied."""

from collections.abc import Mapping
from dataclasses import replace

from undercroft.domain.program.block import Block, SessionPlan
from undercroft.domain.program.wish import LoadWish
from undercroft.domain.proposals.proposal import Place


def with_loads(block: Block, loads: Mapping[Place, LoadWish]) -> Block:
    """The block with these wishes in place of what is written."""
    return replace(
        block,
        weeks=tuple(
            replace(week, sessions=tuple(_session(one, loads) for one in week.sessions))
            for week in block.weeks
        ),
    )


def _session(session: SessionPlan, loads: Mapping[Place, LoadWish]) -> SessionPlan:
    return replace(
        session,
        exercises=tuple(
            replace(
                plan,
                sets=tuple(
                    replace(one, load=loads.get((session.key, one.key), one.load))
                    for one in plan.sets
                ),
            )
            for plan in session.exercises
        ),
    )
