"""What the checks look at: the plan, what it was worked out to be, and what is known besides."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from undercroft.domain.load_sheet import LoadSheet
from undercroft.domain.program.block import SessionPlan
from undercroft.domain.program.checks.line import Line, SessionLines
from undercroft.domain.program.checks.occlusion_work import OcclusionLook, look_at_occlusion
from undercroft.domain.program.checks.place import Place, week_place
from undercroft.domain.program.checks.rigged import Rigs, rigs_of
from undercroft.domain.program.checks.thresholds import DEFAULT, Thresholds
from undercroft.domain.program.monitoring import DoneSet
from undercroft.domain.sheet import DoneSession, Order, WorkedOut
from undercroft.domain.sheet.day import implement_for
from undercroft.domain.sheet.pieces import Pieces


@dataclass(frozen=True, slots=True)
class Away:
    """Days, both counted, on which the athlete does not train as planned: travel, a holiday."""

    first: date
    last: date
    why: str = "away"


@dataclass(frozen=True, slots=True)
class Background:
    """What is known besides the plan; a caller that knows nothing gives nothing.

    done       sets done before the block begins (the last five weeks are enough)
    told       evidence of each lift's maximum, oldest first
    away       days away
    ceilings   hard sets a week that the athlete bears, by muscle
    """

    done: tuple[DoneSet, ...] = ()
    told: Mapping[str, Sequence[DoneSession]] = field(default_factory=dict)
    away: tuple[Away, ...] = ()
    ceilings: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, eq=False)
class CheckContext:
    """Everything that a check may look at, made by `look_at`."""

    order: Order
    done: WorkedOut
    background: Background
    thresholds: Thresholds
    sessions: tuple[SessionLines, ...]
    pieces: Pieces
    rigs: Rigs
    occlusion: OcclusionLook

    @property
    def ahead(self) -> Iterator[Line]:
        """Exercises of sessions that are yet to be sent."""
        return (line for session in self.sessions for line in session.lines if line.ahead)


def look_at(
    order: Order,
    done: WorkedOut,
    background: Background | None = None,
    thresholds: Thresholds = DEFAULT,
) -> CheckContext:
    """Lay a plan and its sheets side by side. Sessions without a sheet are done or under way."""
    sessions = tuple(_sessions(order, {sheet.session: sheet for sheet in done.sheets}))
    known = background or Background()
    return CheckContext(
        order,
        done,
        known,
        thresholds,
        sessions,
        done.pieces,
        rigs_of(order, (line for session in sessions for line in session.lines)),
        look_at_occlusion(order, sessions),
    )


def _sessions(order: Order, sheets: Mapping[str, LoadSheet]) -> Iterator[SessionLines]:
    for w, week in enumerate(order.block.weeks):
        for s, session in enumerate(week.sessions):
            place = week_place(w).session(s, session)
            on = order.starts_on + timedelta(weeks=w, days=session.day - 1)
            sheet = sheets.get(session.key)
            lines = tuple(_lines(order, session, place, on, sheet))
            yield SessionLines(place, on, session, sheet, lines)


def _lines(
    order: Order, session: SessionPlan, place: Place, on: date, sheet: LoadSheet | None
) -> Iterator[Line]:
    worked_out = {one.key: one for one in sheet.exercises} if sheet else {}
    for e, plan in enumerate(session.exercises):
        yield Line(
            place.exercise(e, plan),
            on,
            session,
            plan,
            order.catalogue[plan.exercise],
            implement_for(plan, order.catalogue),
            sheet is not None,
            worked_out.get(plan.key),
        )
