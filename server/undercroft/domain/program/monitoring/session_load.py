"""Session load, and a week's monotony and strain (Foster 1998, Foster et al. 2001).

Load is the session's rating of effort (0-10) times its minutes, in arbitrary units. A week is seven
days, its rest days counted as zero. The sources do not agree on which standard deviation goes into
monotony: here it is the sample's (n - 1), which gives 7.4 % less than the population's.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import mean, stdev

from undercroft.domain.errors import DomainError, not_negative

SD_NAME = "sample standard deviation (n - 1)"
DAYS = 7


@dataclass(frozen=True, slots=True)
class Rated:
    """A session that took place; `rpe` and `minutes` are None where the athlete gave none."""

    on: date
    rpe: float | None
    minutes: float | None


@dataclass(frozen=True, slots=True)
class WeekLoad:
    """A week's loads in arbitrary units.

    `monotony` and `strain` are None where all seven days are equal: undefined, not infinite.
    `unrated` sessions took place and are not in the load.
    """

    days: tuple[float, ...]
    load: float
    mean: float
    sd: float
    monotony: float | None
    strain: float | None
    unrated: int = 0


def session_load(rpe: float, minutes: float) -> float:
    """Rating of effort, 0-10, times minutes. DomainError for what cannot be."""
    if not 0 <= rpe <= 10:
        raise DomainError("session RPE", f"is {rpe:g}", "should be on the scale of 0 to 10")
    return rpe * not_negative("minutes", minutes)


def monotony_of(mean_load: float, sd: float) -> float | None:
    """Mean over standard deviation of the days' loads; None where there is no deviation."""
    return mean_load / sd if sd > 0 else None


def week_load(days: Sequence[float], unrated: int = 0) -> WeekLoad:
    """Load, monotony and strain of seven days, rest days as zero. DomainError for other counts."""
    if len(days) != DAYS:
        told = f"{len(days)} days' loads"
        raise DomainError("week", told, "should be seven, with 0 for each day of rest")
    equal = len(set(days)) == 1
    sd = 0.0 if equal else stdev(days)
    average = mean(days)
    monotony = monotony_of(average, sd)
    load = sum(days)
    strain = None if monotony is None else load * monotony
    return WeekLoad(tuple(days), load, average, sd, monotony, strain, unrated)


def daily_loads(sessions: Iterable[Rated], first: date, last: date) -> tuple[float, ...]:
    """The load of each day from `first` to `last`, zero where nothing was done or rated."""
    loads: dict[date, float] = defaultdict(float)
    for one in sessions:
        if one.rpe is not None and one.minutes is not None:
            loads[one.on] += session_load(one.rpe, one.minutes)
    return tuple(loads[day] for day in _days(first, last))


def week_loads(sessions: Sequence[Rated], first: date, weeks: int) -> tuple[WeekLoad, ...]:
    """So many weeks one after the other, beginning on `first`."""
    found = []
    for number in range(weeks):
        start = first + timedelta(days=DAYS * number)
        end = start + timedelta(days=DAYS - 1)
        unrated = sum(
            start <= one.on <= end and (one.rpe is None or one.minutes is None) for one in sessions
        )
        found.append(week_load(daily_loads(sessions, start, end), unrated))
    return tuple(found)


def _days(first: date, last: date) -> Iterator[date]:
    return (first + timedelta(days=n) for n in range((last - first).days + 1))
