"""Each lift's loads with their velocities, kept session by session, and what they tell."""

from collections import defaultdict
from collections.abc import Mapping
from datetime import date, timedelta

from undercroft.documents.velocities import read_velocities, write_velocities
from undercroft.domain.strength import LoadVelocity
from undercroft.domain.told import Told
from undercroft.domain.velocities import told_by_velocity, velocity_points
from undercroft.services.catalogues import catalogue_for
from undercroft.services.closing import Closed
from undercroft.store import facts

KIND = "velocity"
"""Of facts about sessions."""

LINE_DAYS = 84
"""How long a reading belongs to a lift's line: twelve weeks, our own choice."""

Reading = tuple[date, LoadVelocity]
"""A set's load with the velocity of its fastest repetition, and the session's planned day."""


def hear(athlete_id: str, closed: Closed) -> Mapping[str, tuple[Told, ...]]:
    """Keep the session's velocities; what they tell of each lift's maximum."""
    by_lift = velocity_points(closed.plan, closed.record, catalogue_for(athlete_id))
    body = write_velocities(closed.on, by_lift) if by_lift else None
    earlier = line_of(athlete_id, closed.on) if by_lift else {}
    facts.keep(athlete_id, KIND, closed.place, body)
    return {
        lift: told_by_velocity(lift, points, earlier.get(lift, ()))
        for lift, points in by_lift.items()
    }


def line_of(athlete_id: str, before: date) -> dict[str, list[LoadVelocity]]:
    """By lift, the readings of the twelve weeks before a day, oldest first."""
    first = before - timedelta(days=LINE_DAYS)
    dated = readings(athlete_id, first, before - timedelta(days=1))
    return {lift: [point for _, point in points] for lift, points in dated.items()}


def readings(athlete_id: str, first: date, last: date) -> dict[str, list[Reading]]:
    """By lift, the readings of closed sessions planned for these days, oldest first."""
    found: dict[str, list[Reading]] = defaultdict(list)
    for body in facts.all_of(athlete_id, KIND):
        on, lifts = read_velocities(body)
        if first <= on <= last:
            for lift, points in lifts.items():
                found[lift] += ((on, point) for point in points.values())
    return found
