"""Differences between a block and an athlete's own that are none of this one athlete."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undercroft.domain.program.block import Block, SessionPlan, Week
from undercroft.domain.program.calendar import DAYS

ORDER = "keep the block's order, or change it in the block"


@dataclass(frozen=True, slots=True)
class Misfit:
    """`where` in words, `path` into the athlete's own block."""

    where: str
    path: str
    what: str
    right: str


def misfits(block: Block, own: Block) -> Iterator[Misfit]:
    """What one athlete cannot have otherwise: other weeks, new sessions, another order."""
    if (block.key, block.name, block.note) != (own.key, own.name, own.note):
        yield Misfit("the block", "", "has another key, name or note", "change it in the block")
    if [(one.key, one.name) for one in block.weeks] != [(one.key, one.name) for one in own.weeks]:
        yield Misfit("the block", "weeks", "has other weeks", "change the weeks in the block")
        return
    for w, (week, ours) in enumerate(zip(block.weeks, own.weeks, strict=True)):
        yield from _in_week(w, week, ours)


def _in_week(w: int, week: Week, ours: Week) -> Iterator[Misfit]:
    plans = {session.key: session for session in week.sessions}
    for s, session in enumerate(ours.sessions):
        where = f"week {w + 1}, {DAYS[session.day - 1]}"
        path = f"weeks.{w}.sessions.{s}"
        if session.key not in plans:
            what = f"the block has no session {session.name!r} in this week"
            yield Misfit(where, path, what, "add the session to the block")
        elif _moved(plans[session.key], session):
            yield Misfit(where, path, "its exercises stand in another order", ORDER)


def _moved(session: SessionPlan, ours: SessionPlan) -> bool:
    return not _in_order([e.key for e in ours.exercises], [e.key for e in session.exercises])


def _in_order(ours: Sequence[str], block: Sequence[str]) -> bool:
    shared = [key for key in ours if key in block]
    return shared == [key for key in block if key in shared]
