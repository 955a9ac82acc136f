"""The same numbers as tables: by name, which the desk can hand out as CSV."""

from collections.abc import Callable, Mapping, Sequence

from undercroft.documents.csv_table import Cell, Table
from undercroft.services.monitoring.condition import condition_of
from undercroft.services.monitoring.load import session_loads
from undercroft.services.monitoring.speed import speed_of
from undercroft.services.monitoring.work import weeks_of_work
from undercroft.services.refusals import NotFound
from undercroft.services.trends import trends_of

Making = Callable[[str, int, int], Table]
"""From an athlete's id, a number of weeks and the time in ms."""


def table_of(athlete_id: str, name: str, weeks: int, now: int) -> Table:
    """Raises NotFound, with the names that there are."""
    if name not in TABLES:
        raise NotFound(f"there is no table of that name; there are {', '.join(TABLES)}")
    return TABLES[name](athlete_id, weeks, now)


def _days(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("on", "load_au", "weighted_7_days_au", "weighted_28_days_au", "difference_au",
               "change_percent", "settled")  # fmt: skip
    found = session_loads(athlete_id, weeks, now).days
    return Table(columns, [_cells(one, columns) for one in found])


def _weeks(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("monday", "load_au", "day_mean_au", "day_sd_au", "monotony", "strain_au",
               "unrated_sessions", "whole")  # fmt: skip
    found = session_loads(athlete_id, weeks, now).weeks
    return Table(columns, [_cells(one, columns) for one in found])


def _adherence(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("planned", "done", "changed", "skipped", "unknown")
    found = weeks_of_work(athlete_id, weeks, now)
    rows: list[tuple[Cell, ...]] = [(one.monday, *_cells(one.adherence, columns)) for one in found]
    return Table(("monday", *(f"{name}_sets" for name in columns)), rows)


def _hard_sets(athlete_id: str, weeks: int, now: int) -> Table:
    found = weeks_of_work(athlete_id, weeks, now)
    muscles = sorted({muscle for one in found for muscle in one.hard_sets})
    rows: list[tuple[Cell, ...]] = [
        (one.monday, *(one.hard_sets.get(muscle, 0.0) for muscle in muscles), one.untold_sets)
        for one in found
    ]
    return Table(("monday", *muscles, "untold_sets"), rows)


def _tonnage(athlete_id: str, weeks: int, now: int) -> Table:
    found = weeks_of_work(athlete_id, weeks, now)
    rows = [
        (one.monday, one.tonnage.kg, one.tonnage.reps, one.tonnage.mean_kg, one.tonnage.left_out)
        for one in found
    ]
    return Table(("monday", "tonnage_kg", "reps", "mean_resistance_kg", "left_out_sets"), rows)


def _occlusion(athlete_id: str, weeks: int, now: int) -> Table:
    rows = [
        (one.week, one.site.limb, one.site.side, one.minutes, one.reps, one.sessions)
        for week in weeks_of_work(athlete_id, weeks, now)
        for one in week.limbs
    ]
    return Table(("monday", "limb", "side", "minutes", "reps", "sessions"), rows)


def _speed(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("number", "load_kg", "mean_resistance_kg", "reps", "mean_velocity_m_s",
               "fastest_velocity_m_s", "mean_power_w", "peak_power_w", "quality")  # fmt: skip
    rows: list[tuple[Cell, ...]] = [
        (exercise.name, session.on, session.session, *_cells(one, columns))
        for exercise in speed_of(athlete_id, weeks, now)
        for session in exercise.sessions
        for one in session.sets
    ]
    return Table(("exercise", "on", "session", *columns), rows)


def _speed_sessions(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("best", "best_w", "rise_percent", "drop_percent")
    rows: list[tuple[Cell, ...]] = [
        (exercise.name, session.on, session.session, *_cells(session.course, columns))
        for exercise in speed_of(athlete_id, weeks, now)
        for session in exercise.sessions
        if session.course is not None
    ]
    return Table(("exercise", "on", "session", "best_set", *columns[1:]), rows)


def _velocity(athlete_id: str, weeks: int, now: int) -> Table:
    rows = [
        (exercise.name, one.on, one.load_kg, one.velocity_m_s)
        for exercise in speed_of(athlete_id, weeks, now)
        for one in exercise.velocity.points
    ]
    return Table(("exercise", "on", "load_kg", "fastest_velocity_m_s"), rows)


def _pain(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("on", "where", "level", "comment")
    found = condition_of(athlete_id, weeks, now).pains
    return Table(columns, [_cells(one, columns) for one in found])


def _readiness(athlete_id: str, weeks: int, now: int) -> Table:
    columns = ("on", "score", "comment")
    found = condition_of(athlete_id, weeks, now).readiness
    return Table(columns, [_cells(one, columns) for one in found])


def _body_mass(athlete_id: str, weeks: int, now: int) -> Table:
    found = condition_of(athlete_id, weeks, now).body_masses
    return Table(("on", "body_mass_kg"), [(one.on, one.kg) for one in found])


def _maxima(athlete_id: str, _weeks: int, _now: int) -> Table:
    """Of all times: a maximum without what came before says little."""
    columns = ("on", "kg", "low_kg", "high_kg", "smooth_kg", "low_smooth_kg", "high_smooth_kg",
               "source")  # fmt: skip
    rows: list[tuple[Cell, ...]] = [
        (trend.name, *_cells(point, columns))
        for trend in trends_of(athlete_id)
        for point in trend.points
    ]
    return Table(("lift", *columns), rows)


def _cells(one: object, columns: Sequence[str]) -> tuple[Cell, ...]:
    return tuple(getattr(one, name) for name in columns)


TABLES: Mapping[str, Making] = {
    "days": _days,
    "weeks": _weeks,
    "adherence": _adherence,
    "hard-sets": _hard_sets,
    "tonnage": _tonnage,
    "occlusion": _occlusion,
    "speed": _speed,
    "speed-sessions": _speed_sessions,
    "velocity": _velocity,
    "pain": _pain,
    "readiness": _readiness,
    "body-mass": _body_mass,
    "maxima": _maxima,
}
