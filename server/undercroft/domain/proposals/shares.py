"""Loads that are, or were when they were sent, a share of a maximum."""

from dataclasses import dataclass

from undercroft.domain.load_sheet import SheetExercise, SheetSet
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.wish import (
    AsLastTime,
    ByReserve,
    Fixed,
    LoadWish,
    OfMaximum,
)
from undercroft.domain.proposals.moved import Moved, moved
from undercroft.domain.proposals.proposal import SAME, Kind, SetProposal
from undercroft.domain.proposals.sent import KnownThen
from undercroft.domain.sheet.standing import DoneSession, LiftStanding

NO_MAXIMUM = "no maximum is known; a test, or a set with its reserve, gives one"
NOT_KEPT = "what was known when it was sent was not kept: send the block once more"
NONE_THEN = "no maximum was known when it was sent: what share it was is not known"
NO_LAST = "nothing was done before it was sent: what it was a share of is not known"
AFTER_THE_FIRST = "follows what is done in the session before"


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """One set as it stands, and what is known of the lift that its load goes by.

    `earlier`: the exercise is done in a session before, among those looked at.
    """

    plan: ExercisePlan
    one: SetPlan
    sheet: SheetExercise
    on_sheet: SheetSet
    known: LiftStanding | None
    then: KnownThen | None
    done: tuple[DoneSession, ...]
    earlier: bool

    @property
    def now_kg(self) -> float | None:
        return None if self.on_sheet.load is None else self.sheet.loads[self.on_sheet.load].kg


def lift_of(plan: ExercisePlan, one: SetPlan) -> str:
    """The lift whose maximum the set's load goes by."""
    return (one.load.of if isinstance(one.load, OfMaximum) else None) or plan.exercise


def share_proposal(asked: Asked) -> SetProposal | None:
    """What becomes of the set's load; None for loads that go by no maximum."""
    match asked.one.load:
        case OfMaximum() | ByReserve():
            return _follows(asked)
        case Fixed() | AsLastTime():
            return _kept_share(asked)
        case _:
            return None


def _follows(asked: Asked) -> SetProposal:
    """It has moved by itself: told so that the coach sees it."""
    found = _moved(asked)
    if isinstance(found, str):
        return _said(asked, Kind.UNKNOWN, found)
    before = _before(asked, found.times)
    if before is None or before == asked.now_kg:
        same = f"; {SAME}" if before is not None and found.notches else ""
        return _said(asked, Kind.STAYS, f"{found.why}{same}")
    return SetProposal(
        asked.one.key, asked.on_sheet.number, Kind.FOLLOWS, before, asked.now_kg, found.why
    )


def _before(asked: Asked, times: float) -> float | None:
    """The load that the kit makes of the wish as it was; unknown where bands share the work."""
    wish = asked.on_sheet.wish_kg
    if wish is None or asked.plan.rig is not None:
        return None
    return min((load.kg for load in asked.sheet.loads), key=lambda kg: abs(kg - wish / times))


def _kept_share(asked: Asked) -> SetProposal:
    """The same share of the maximum as when it was sent, in kilograms."""
    if isinstance(asked.one.load, AsLastTime) and asked.earlier:
        return _said(asked, Kind.FOLLOWS, AFTER_THE_FIRST)
    found = _moved(asked)
    if isinstance(found, str):
        return _said(asked, Kind.UNKNOWN, found)
    meant = _meant_kg(asked, found)
    if meant is None:
        return _said(asked, Kind.UNKNOWN, NO_LAST)
    if found.notches == 0:
        return _said(asked, Kind.STAYS, found.why)
    write = Fixed(meant * found.times, in_hand=_in_hand(asked.one.load))
    return SetProposal(
        asked.one.key,
        asked.on_sheet.number,
        Kind.PROPOSED,
        asked.now_kg,
        None,
        f"{found.why}{_share(asked, meant)}",
        write,
    )


def _meant_kg(asked: Asked, found: Moved) -> float | None:
    """What the coach meant when it was sent: "as last time + x" adds x each time it is done."""
    wish = asked.one.load
    if isinstance(wish, Fixed):
        return wish.kg
    if not isinstance(wish, AsLastTime) or asked.then is None:
        return None
    last = asked.then.last_kg.get(asked.plan.exercise)
    if last is not None:
        return max(0.0, last + wish.add_kg * (found.sessions + 1))
    if wish.start_kg is None:
        return None
    return max(0.0, wish.start_kg + wish.add_kg * found.sessions)


def _in_hand(wish: LoadWish) -> bool:
    return isinstance(wish, Fixed) and wish.in_hand


def _share(asked: Asked, meant: float) -> str:
    then = asked.then.maxima.get(asked.plan.exercise) if asked.then else None
    if then is None or asked.plan.rig is not None:
        return ""
    return f"; stays at {100 * meant / then.kg:.0f} % of the maximum"


def _moved(asked: Asked) -> Moved | str:
    """How far its lift has moved, or what is missing to tell."""
    if asked.known is None:
        return NO_MAXIMUM
    if asked.then is None:
        return NOT_KEPT
    return moved(asked.known, asked.then, asked.done) or NONE_THEN


def _said(asked: Asked, kind: Kind, why: str) -> SetProposal:
    return SetProposal(asked.one.key, asked.on_sheet.number, kind, asked.now_kg, None, why)
