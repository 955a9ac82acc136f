"""When a block may start: on a Monday, and not in another decade."""

from datetime import date

from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.domain.program.calendar import misfit_of_start
from undercroft.services.clock import day_of


def require_start(starts_on: date | None, now: int) -> None:
    """Raises FaultyDocument where a block cannot start on that day; none given is a good one."""
    misfit = misfit_of_start(starts_on, day_of(now)) if starts_on else None
    if misfit:
        raise FaultyDocument((Fault("starts_on", "starts_on", *misfit),))
