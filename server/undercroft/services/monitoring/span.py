"""The weeks that the desk looks back over."""

from dataclasses import dataclass
from datetime import date, timedelta

from undercroft.domain.program.calendar import monday_of
from undercroft.services.clock import day_of

USUAL_WEEKS = 12
MOST_WEEKS = 52


@dataclass(frozen=True, slots=True)
class Span:
    """From a Monday to today, which lies in the last of the weeks."""

    first: date
    today: date

    @property
    def mondays(self) -> list[date]:
        weeks = (self.today - self.first).days // 7 + 1
        return [self.first + timedelta(weeks=n) for n in range(weeks)]

    def __contains__(self, day: date) -> bool:
        return self.first <= day <= self.today


def span_of(weeks: int, now: int) -> Span:
    """So many weeks up to now, this one among them."""
    today = day_of(now)
    return Span(monday_of(today) - timedelta(weeks=weeks - 1), today)
