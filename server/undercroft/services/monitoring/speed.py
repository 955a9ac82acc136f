"""Speed work set by set, and what a lift's velocities say of its maximum."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.domain.program.monitoring import Course, DoneSet, SpeedWork, speed_work
from undercroft.domain.program.monitoring.day_done import BELIEVED
from undercroft.domain.strength.power import SetPower
from undercroft.services.catalogues import catalogue_for
from undercroft.services.monitoring.sessions import SessionRead, sessions_read
from undercroft.services.monitoring.span import span_of
from undercroft.services.monitoring.velocity_line import VelocitySeen, velocity_of
from undercroft.services.velocities import readings


@dataclass(frozen=True, slots=True)
class SpeedSet:
    """A set as it was done; velocity and power are None where nobody measured."""

    number: int
    load_kg: float | None
    mean_resistance_kg: float | None
    reps: int | None
    mean_velocity_m_s: float | None
    fastest_velocity_m_s: float | None
    mean_power_w: float | None
    peak_power_w: float | None
    quality: int | None


@dataclass(frozen=True, slots=True)
class SpeedSession:
    """`course`: best set by mean power, rise before it and drop after it; None if not measured."""

    on: date
    session: str
    sets: list[SpeedSet]
    course: Course | None


@dataclass(frozen=True, slots=True)
class SpeedExercise:
    exercise: str
    name: str
    sessions: list[SpeedSession]
    velocity: VelocitySeen


def speed_of(athlete_id: str, weeks: int, now: int) -> list[SpeedExercise]:
    """Exercises that were done for speed or have measured velocities, by name."""
    span = span_of(weeks, now)
    known = catalogue_for(athlete_id)
    sessions = sessions_read(athlete_id, span, known)
    sets = [one for session in sessions for one in session.sets if one.on in span]
    maxima, works = _maxima(sessions), speed_work(sets)
    # Readings stand on the planned day, which can lie ahead of the one they were done on.
    lines = readings(athlete_id, span.first, span.today + BELIEVED)
    found = [
        SpeedExercise(
            key,
            known[key].name,
            [_session(one) for one in works if one.exercise == key],
            velocity_of(key, lines.get(key, ()), maxima.get(key)),
        )
        for key in {*lines, *(one.exercise for one in works)}
    ]
    return sorted(found, key=lambda one: one.name)


def _maxima(sessions: Sequence[SessionRead]) -> dict[str, float]:
    """By lift, the maximum that the newest sheet went by, in kg."""
    return {
        one.maximum.lift: one.maximum.kg
        for session in sorted(sessions, key=lambda session: session.planned)
        for one in session.sheet.exercises
        if one.maximum is not None
    }


def _session(work: SpeedWork) -> SpeedSession:
    pairs = zip(work.sets, work.powers, strict=True)
    sets = [_set(number, one, power) for number, (one, power) in enumerate(pairs, start=1)]
    return SpeedSession(work.on, work.session, sets, work.course)


def _set(number: int, one: DoneSet, power: SetPower | None) -> SpeedSet:
    moved = [v for v in one.velocities if v > 0]
    return SpeedSet(
        number,
        one.load_kg,
        None if one.resistance_kg is None else round(one.resistance_kg, 2),
        one.reps,
        round(sum(moved) / len(moved), 3) if moved else None,
        max(moved, default=None),
        None if power is None else round(power.mean_w, 1),
        None if power is None else round(power.peak_w, 1),
        one.quality,
    )
