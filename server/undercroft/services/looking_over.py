"""Look a block over for one athlete before it is sent."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.documents.faults import Fault
from undercroft.documents.told import ToldSession, read_told
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block
from undercroft.domain.program.checks import Background, findings, look_at, may_overrule
from undercroft.domain.program.finding import Finding, Severity
from undercroft.domain.program.wish import OfMaximum
from undercroft.domain.sheet import DoneSession, Order, WorkedOut, work_out
from undercroft.services import planning
from undercroft.store import models, trackers


@dataclass(frozen=True, slots=True)
class Found:
    """A finding as the desk shows it; `may_overrule`: a written reason can set it aside."""

    severity: str
    check: str
    where: str
    path: str
    what: str
    right: str
    may_overrule: bool


@dataclass(frozen=True, slots=True)
class Looked:
    """A block worked out for an athlete, and everything that was found."""

    order: Order
    done: WorkedOut
    findings: tuple[Finding, ...]


NO_KIT = Finding(
    Severity.STOP, "the kit", "", "nothing is written down", "write down what stands in the gym"
)


def look_over(
    row: models.Athlete,
    block: Block,
    starts_on: date,
    known: Catalogue,
    leave_out: Sequence[str] = (),
) -> Looked:
    """Sheets as everything stands now, with the findings of working out and of every check."""
    order = planning.order_for(row, block, starts_on, known=known)
    done = work_out(order, leave_out)
    if row.kit is None:
        return Looked(order, done, (NO_KIT, *done.findings))
    context = look_at(order, done, Background(told=_told(row.id, order)))
    return Looked(order, done, (*done.findings, *findings(context)))


def shown(found: Sequence[Finding]) -> list[Found]:
    """Findings for the desk, stops first."""
    ranks = list(Severity)
    ordered = sorted(found, key=lambda one: ranks.index(one.severity))
    return [
        Found(f.severity, f.check, f.where, f.path, f.what, f.right, may_overrule(f))
        for f in ordered
    ]


def as_stops(faults: Sequence[Fault]) -> list[Finding]:
    """Faults that keep a block from being worked out for one athlete at all."""
    return [Finding(Severity.STOP, f.where, f.path, f.what, f.right) for f in faults]


def _told(athlete_id: str, order: Order) -> dict[str, list[DoneSession]]:
    """What sessions told of the lifts that the block's loads may rest on, oldest first.

    Checks ask on what a maximum rests only where the coach gave none: histories of the other
    lifts stay unread.
    """
    given = {maximum.lift for maximum in order.athlete.maxima}
    return {
        lift: [_done(read_told(row.body)) for row in trackers.all_rows(athlete_id, lift)]
        for lift in sorted(lifts_of(order.block) - given)
    }


def lifts_of(block: Block) -> set[str]:
    """Every exercise of the block, and every lift of whose maximum a load is a part."""
    exercises = [e for week in block.weeks for one in week.sessions for e in one.exercises]
    loads = [one.load for exercise in exercises for one in exercise.sets]
    leant_on = {load.of for load in loads if isinstance(load, OfMaximum) and load.of}
    return {exercise.exercise for exercise in exercises} | leant_on


def _done(told: ToldSession) -> DoneSession:
    return DoneSession(told.on, tuple(piece.evidence for piece in told.told))
