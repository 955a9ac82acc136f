"""How an own change stands to the block as it is written now."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan
from undercroft.domain.program.own.change import OwnChange, Part, SessionHead, head_of
from undercroft.domain.program.own.merge import merge, pick


class Stand(StrEnum):
    """What is to be said of an own change before the block is sent again.

    kept   it counts, and the block's line beneath is the one that it was made for
    clash  it counts, and the coach has changed the line beneath since
    same   the block says the same by now: it makes no difference
    gone   its session or exercise is not in the block any more: it does not count
    """

    KEPT = "kept"
    CLASH = "clash"
    SAME = "same"
    GONE = "gone"


@dataclass(frozen=True, slots=True)
class Standing:
    """`written` is the block's part, `part` what the athlete does; None where there is none."""

    stand: Stand
    written: Part | None
    part: Part | None


def stand_of(change: OwnChange, block: Block) -> Stand:
    return standing_of(change, sessions_by_key(block)).stand


def sessions_by_key(block: Block) -> Mapping[str, SessionPlan]:
    return {session.key: session for week in block.weeks for session in week.sessions}


def standing_of(change: OwnChange, sessions: Mapping[str, SessionPlan]) -> Standing:
    """`sessions` are those of the block as it is written now, by key."""
    session = sessions.get(change.session)
    if session is None:
        return Standing(Stand.GONE, None, change.own)
    now = _now(change, session)
    if change.beneath is None:
        return _added(change, now)
    if now is None:
        return Standing(Stand.GONE, None, change.own)
    part, clash = met(change, now)
    if part == now:
        return Standing(Stand.SAME, now, part)
    return Standing(Stand.CLASH if clash else Stand.KEPT, now, part)


def met(change: OwnChange, now: Part) -> tuple[Part | None, bool]:
    """What the athlete does where the block says `now`, and whether both have moved on."""
    beneath, own = change.beneath, change.own
    if (
        isinstance(beneath, ExercisePlan)
        and isinstance(own, ExercisePlan)
        and isinstance(now, ExercisePlan)
    ):
        return merge(beneath, own, now)
    return pick(beneath, own, now)


def _added(change: OwnChange, now: Part | None) -> Standing:
    if now is None:
        return Standing(Stand.KEPT, None, change.own)
    return Standing(Stand.SAME if now == change.own else Stand.CLASH, now, change.own)


def _now(change: OwnChange, session: SessionPlan) -> SessionHead | ExercisePlan | None:
    if not change.exercise:
        return head_of(session)
    return next((plan for plan in session.exercises if plan.key == change.exercise), None)
