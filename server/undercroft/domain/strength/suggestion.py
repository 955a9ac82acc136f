"""The load to show for the next set: where the walk stands, under the rules of the sheet."""

from dataclasses import dataclass
from enum import StrEnum

from undercroft.domain.strength.notches import NotchTable, WalkState, began, rise, wanted


class Reason(StrEnum):
    """Why a suggestion is what it is."""

    HOLD = "hold"
    UPPER_BOUND = "upper-bound"
    END_OF_TABLE = "end-of-table"
    RISE_LIMITED = "rise-limited"
    UP = "up"
    SAME = "same"
    DOWN = "down"


@dataclass(frozen=True, slots=True)
class Ladder:
    """A set's loads: `indices[i]` is the load for notch `base + i`, `cap` the largest allowed."""

    indices: tuple[int, ...]
    cap: int | None = None


@dataclass(frozen=True, slots=True)
class Suggestion:
    """The load to show beside the plan: an index into the exercise's loads, its notch, and why."""

    index: int
    notch: int
    reason: Reason


def suggest(state: WalkState, table: NotchTable, ladder: Ladder, n: float) -> Suggestion:
    """The next load for a set whose load is reckoned at n.

    It rises by at most so many notches a set and in all above the session's beginning, falls
    freely, and never passes the set's upper bound. On hold it is the sheet's own load.
    """
    top = len(ladder.indices) - 1
    if table.hold:
        return _within(ladder, top // 2, table.base, Reason.HOLD)
    up = rise(state, table, n)
    place = began(state, table, n) + up - table.base
    held = min(max(place, 0), top)
    if held != place:
        reason = Reason.END_OF_TABLE
    elif up < wanted(state, table, n) - began(state, table, n):
        reason = Reason.RISE_LIMITED
    else:
        reason = Reason.UP if up > 0 else Reason.DOWN if up < 0 else Reason.SAME
    return _within(ladder, held, table.base, reason)


def _within(ladder: Ladder, place: int, base: int, reason: Reason) -> Suggestion:
    index = ladder.indices[place]
    if ladder.cap is not None and index > ladder.cap:
        return Suggestion(ladder.cap, base + place, Reason.UPPER_BOUND)
    return Suggestion(index, base + place, reason)
