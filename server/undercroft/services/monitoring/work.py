"""Week by week: what became of the planned sets, hard sets by muscle, tonnage, restricted limbs."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date

from undercroft.domain.exercise import Catalogue
from undercroft.domain.occlusion.dose import doses_of
from undercroft.domain.occlusion.exposure import WeekOfLimb, weekly
from undercroft.domain.program.calendar import monday_of
from undercroft.domain.program.monitoring import (
    Adherence,
    DoneSet,
    Fate,
    Today,
    Tonnage,
    adherence,
    fates,
    hard_sets,
    planned_kg,
    tonnage,
)
from undercroft.services.catalogues import catalogue_for
from undercroft.services.monitoring.heard import heard_through
from undercroft.services.monitoring.sessions import SessionRead, sessions_read
from undercroft.services.monitoring.span import Span, span_of


@dataclass(frozen=True, slots=True)
class WeekOfWork:
    """`hard_sets` by muscle; `untold_sets` were done with no word of the reserve.

    Adherence goes by the planned day, the rest by the day that the work was done.
    """

    monday: date
    adherence: Adherence
    hard_sets: dict[str, float]
    untold_sets: int
    tonnage: Tonnage
    limbs: list[WeekOfLimb]


def weeks_of_work(athlete_id: str, weeks: int, now: int) -> list[WeekOfWork]:
    """From the first week on in which anything was planned or done, oldest first."""
    span = span_of(weeks, now)
    sessions = sessions_read(athlete_id, span, catalogue_for(athlete_id))
    if not sessions:
        return []
    begin = min(one.done_on or one.planned for one in sessions)
    shown = Span(max(span.first, monday_of(begin)), span.today)
    today = Today(span.today, heard_through(athlete_id))
    limbs = weekly(
        [dose for one in sessions if one.record for dose in doses_of(one.plan, one.record)]
    )
    by_week = _by_week(sessions)
    return [_week(monday, by_week[monday], today, limbs) for monday in shown.mondays]


@dataclass(frozen=True, slots=True)
class _Week:
    """Sessions planned for one week, and those done in it."""

    planned: list[SessionRead] = field(default_factory=list)
    done: list[SessionRead] = field(default_factory=list)


def _by_week(sessions: Sequence[SessionRead]) -> dict[date, _Week]:
    weeks: dict[date, _Week] = defaultdict(_Week)
    for one in sessions:
        weeks[monday_of(one.planned)].planned.append(one)
        if one.done_on:
            weeks[monday_of(one.done_on)].done.append(one)
    return weeks


def _week(monday: date, week: _Week, today: Today, limbs: Sequence[WeekOfLimb]) -> WeekOfWork:
    sets = [each for one in week.done for each in one.sets]
    hard, untold = _hard(sets, week.done[0].exercises) if week.done else ({}, 0)
    return WeekOfWork(
        monday,
        adherence(_fates(one, today) for one in week.planned),
        hard,
        untold,
        tonnage(sets),
        [one for one in limbs if one.week == monday],
    )


def _fates(one: SessionRead, today: Today) -> dict[str, Fate]:
    return fates(one.planned, one.plan, one.record, today, planned_kg(one.sheet))


def _hard(sets: Sequence[DoneSet], known: Catalogue) -> tuple[dict[str, float], int]:
    """Of one week's sets."""
    for week in hard_sets(sets, known):
        return dict(sorted(week.by_muscle.items())), week.untold
    return {}, 0
