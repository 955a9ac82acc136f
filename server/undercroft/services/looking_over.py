"""Look a block over for one athlete before it is sent."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.documents.told import read_told
from undercroft.domain.program.block import Block
from undercroft.domain.program.checks import Background, findings, look_at, may_overrule
from undercroft.domain.program.finding import Finding, Severity
from undercroft.domain.sheet import DoneSession, WorkedOut, work_out
from undercroft.services import planning
from undercroft.services.people import kit_document
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

    done: WorkedOut
    findings: tuple[Finding, ...]


NO_KIT = Finding(
    Severity.STOP, "the kit", "", "nothing is written down", "write down what stands in the gym"
)


def look_over(
    row: models.Athlete, block: Block, starts_on: date, leave_out: Sequence[str] = ()
) -> Looked:
    """Sheets as everything stands now, with the findings of working out and of every check."""
    order = planning.order_for(row, block, starts_on)
    done = work_out(order, leave_out)
    if kit_document(row).key == "none":
        return Looked(done, (NO_KIT, *done.findings))
    context = look_at(order, done, Background(told=_told(row.id)))
    return Looked(done, (*done.findings, *findings(context)))


def shown(found: Sequence[Finding]) -> list[Found]:
    """Findings for the desk, stops first."""
    ranks = list(Severity)
    ordered = sorted(found, key=lambda one: ranks.index(one.severity))
    return [
        Found(f.severity, f.check, f.where, f.path, f.what, f.right, may_overrule(f))
        for f in ordered
    ]


def _told(athlete_id: str) -> dict[str, list[DoneSession]]:
    told: dict[str, list[DoneSession]] = {}
    for row in trackers.all_rows(athlete_id):
        one = read_told(row.body)
        evidence = tuple(piece.evidence for piece in one.told)
        told.setdefault(row.lift, []).append(DoneSession(one.on, evidence))
    return told
