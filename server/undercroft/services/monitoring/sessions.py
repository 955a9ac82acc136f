"""What the athlete was sent and did in some weeks, as typed objects."""

from dataclasses import dataclass
from datetime import date

from undercroft.documents.sheet_read import read_stored_sheet
from undercroft.domain.exercise import Catalogue
from undercroft.domain.ledger import SessionRecord
from undercroft.domain.load_sheet import LoadSheet
from undercroft.domain.program.block import SessionPlan
from undercroft.domain.program.monitoring import DoneSet, day_done, done_sets, plan_of_sheet
from undercroft.domain.program.monitoring.day_done import BELIEVED
from undercroft.services.monitoring.span import Span
from undercroft.services.sessions_shown import Shown, sessions_between


@dataclass(frozen=True, slots=True)
class SessionRead:
    """A session of day `planned` with what became of it; `record` None: nobody began it.

    `done_on` is the day that it counts for, None where nobody began it.
    """

    planned: date
    done_on: date | None
    plan: SessionPlan
    sheet: LoadSheet
    record: SessionRecord | None
    exercises: Catalogue

    @property
    def sets(self) -> tuple[DoneSet, ...]:
        """The sets that were done."""
        if self.record is None or self.done_on is None:
            return ()
        return done_sets(self.done_on, self.plan, self.record, self.exercises, self.sheet)


def sessions_read(athlete_id: str, span: Span, known: Catalogue) -> list[SessionRead]:
    """Every session planned for or done in the span, by planned day."""
    shown = sessions_between(athlete_id, span.first - BELIEVED, span.today + BELIEVED)
    read = [_read(one, span, known) for one in shown]
    return [one for one in read if one.planned in span or (one.done_on and one.done_on in span)]


def _read(one: Shown, span: Span, known: Catalogue) -> SessionRead:
    sheet = read_stored_sheet(one.sheet.document)
    planned = date.fromisoformat(one.sheet.on_day)
    done_on = None if one.record is None else day_done(one.record, planned, span.today)
    return SessionRead(planned, done_on, plan_of_sheet(sheet), sheet, one.record, known)
