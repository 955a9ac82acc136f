"""A lift's maximum over time, for the plot."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from undercroft.documents.told import read_told
from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Exercise
from undercroft.domain.sheet.standing import DoneSession, settings_for
from undercroft.domain.trend import TrendPoint, trend
from undercroft.services.catalogues import catalogue_of
from undercroft.services.people import athlete_document
from undercroft.services.refusals import NotFound
from undercroft.store import athletes, trackers
from undercroft.store.trackers import Kept


@dataclass(frozen=True, slots=True)
class Point:
    """The maximum in kg on a day: as known then, and smoothed by all that came after."""

    on: str
    kg: float
    low_kg: float
    high_kg: float
    smooth_kg: float
    low_smooth_kg: float
    high_smooth_kg: float
    source: str


@dataclass(frozen=True, slots=True)
class Trend:
    lift: str
    name: str
    points: list[Point]


def trend_of(athlete_id: str, lift: str) -> Trend:
    """Every maximum and every session that told of the lift. Raises NotFound for no lift."""
    row = athletes.athlete_with_coach(athlete_id)
    known = catalogue_of(row.coach_id)
    if lift not in known:
        raise NotFound("there is no such lift")
    athlete = athlete_document(row, known)
    return _trend(athlete, known[lift], trackers.all_rows(athlete_id, lift))


def trends_of(athlete_id: str) -> list[Trend]:
    """Every lift of which anything is known, by name."""
    row = athletes.athlete_with_coach(athlete_id)
    known = catalogue_of(row.coach_id)
    athlete = athlete_document(row, known)
    rows: dict[str, list[Kept]] = defaultdict(list)
    for state in trackers.all_rows(athlete_id):
        rows[state.lift].append(state)
    lifts = {*rows, *(maximum.lift for maximum in athlete.maxima)} & known.keys()
    found = (_trend(athlete, known[lift], rows[lift]) for lift in lifts)
    return sorted(found, key=lambda one: one.name)


def _trend(athlete: Athlete, lift: Exercise, rows: Sequence[Kept]) -> Trend:
    told = [read_told(row.body) for row in rows]
    done = [DoneSession(one.on, tuple(t.evidence for t in one.told)) for one in told]
    points = trend(athlete, lift.key, done, settings_for(athlete))
    return Trend(lift.key, lift.name, [_point(point) for point in points])


def _point(point: TrendPoint) -> Point:
    known, smoothed = point.known, point.smoothed
    return Point(
        point.on.isoformat(),
        round(known.kg, 2),
        round(known.low_kg, 2),
        round(known.high_kg, 2),
        round(smoothed.kg, 2),
        round(smoothed.low_kg, 2),
        round(smoothed.high_kg, 2),
        point.source,
    )
