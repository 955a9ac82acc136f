"""Session load by day and week, and the same weighted over a week and over four."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from undercroft.domain.program.calendar import monday_of
from undercroft.domain.program.monitoring import (
    DISPUTED,
    SD_NAME,
    Rated,
    SmoothedLoad,
    WeekLoad,
    daily_loads,
    smoothed_loads,
    week_loads,
)
from undercroft.services.monitoring.heard import heard_through
from undercroft.services.monitoring.span import Span, span_of
from undercroft.services.monitoring.took_place import took_place


@dataclass(frozen=True, slots=True)
class DaySeen:
    """Loads in arbitrary units (session RPE times minutes); `settled` after the first 28 days.

    `difference_au` is the 7-day load less the 28-day one, `change_percent` that over the latter.
    """

    on: date
    load_au: float
    weighted_7_days_au: float
    weighted_28_days_au: float
    difference_au: float
    change_percent: float | None
    settled: bool


@dataclass(frozen=True, slots=True)
class WeekSeen:
    """`whole`: the week is over and a phone was heard since.

    `monotony` and `strain_au` are None until then, and where all days are equal.
    """

    monday: date
    load_au: float
    day_mean_au: float
    day_sd_au: float
    monotony: float | None
    strain_au: float | None
    unrated_sessions: int
    whole: bool


@dataclass(frozen=True, slots=True)
class LoadSeen:
    """From the week of the first session on, if that lies within what was asked for.

    Days after `heard_through` count as rest until a phone is heard.
    """

    heard_through: date | None
    days: list[DaySeen]
    weeks: list[WeekSeen]
    sd: str = SD_NAME
    caution: str = DISPUTED


def session_loads(athlete_id: str, weeks: int, now: int) -> LoadSeen:
    """The weighted loads begin with the athlete's first session, as far back as it is felt."""
    span = span_of(weeks, now)
    found, heard = took_place(athlete_id, span), heard_through(athlete_id)
    if found.since is None:
        return LoadSeen(heard, [], [])
    shown = Span(max(span.first, monday_of(found.since)), span.today)
    days = _days(found.sessions, found.since, shown)
    return LoadSeen(heard, days, _weeks(found.sessions, shown, heard))


def _days(sessions: Sequence[Rated], begin: date, span: Span) -> list[DaySeen]:
    smoothed = smoothed_loads(daily_loads(sessions, begin, span.today))
    dated = [(begin + timedelta(days=n), one) for n, one in enumerate(smoothed)]
    return [_day(on, one) for on, one in dated if on in span]


def _day(on: date, one: SmoothedLoad) -> DaySeen:
    change = one.change_percent
    return DaySeen(
        on,
        one.load,
        round(one.short, 2),
        round(one.long, 2),
        round(one.difference, 2),
        None if change is None else round(change, 1),
        one.settled,
    )


def _weeks(sessions: Sequence[Rated], span: Span, heard: date | None) -> list[WeekSeen]:
    mondays = span.mondays
    found = week_loads(sessions, mondays[0], len(mondays))
    return [_week(monday, week, heard) for monday, week in zip(mondays, found, strict=True)]


def _week(monday: date, week: WeekLoad, heard: date | None) -> WeekSeen:
    whole = heard is not None and heard >= monday + timedelta(days=6)
    monotony, strain = (week.monotony, week.strain) if whole else (None, None)
    return WeekSeen(
        monday,
        week.load,
        round(week.mean, 2),
        round(week.sd, 2),
        None if monotony is None else round(monotony, 3),
        None if strain is None else round(strain, 1),
        week.unrated,
        whole,
    )
