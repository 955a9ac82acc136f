"""The desk's monitoring: load, volume, speed, and how the athlete says they are."""

from typing import Any

from flask import Response

from undercroft.api import monitoring_shapes as shapes
from undercroft.api.contract import COACH, Section, asks, by, gives, refuses, sends
from undercroft.documents.csv_table import write_table
from undercroft.services.monitoring import condition, load, speed, tables, work
from undercroft.services.refusals import NotFound

section = Section("monitoring", "/api/v1/desk/athletes/<athlete_id>")


@section.get("/load")
@by(COACH)
@asks(shapes.WeeksAsked)
@gives(shapes.LoadAnswer)
def show_load(athlete_id: str, query: dict[str, int], now: int) -> load.LoadSeen:
    """Session load by day and week, with monotony, strain and weighted load."""
    return load.session_loads(athlete_id, query["weeks"], now)


@section.get("/work")
@by(COACH)
@asks(shapes.WeeksAsked)
@gives(shapes.WorkAnswer)
def show_work(athlete_id: str, query: dict[str, int], now: int) -> dict[str, Any]:
    """Adherence, hard sets, tonnage and restricted limbs, week by week."""
    return {"weeks": work.weeks_of_work(athlete_id, query["weeks"], now)}


@section.get("/speed")
@by(COACH)
@asks(shapes.WeeksAsked)
@gives(shapes.SpeedAnswer)
def show_speed(athlete_id: str, query: dict[str, int], now: int) -> dict[str, Any]:
    """Speed work set by set, and each lift's load-velocity line."""
    return {"exercises": speed.speed_of(athlete_id, query["weeks"], now)}


@section.get("/condition")
@by(COACH)
@asks(shapes.WeeksAsked)
@gives(shapes.ConditionAnswer)
def show_condition(athlete_id: str, query: dict[str, int], now: int) -> condition.Condition:
    """Pain, readiness and body mass as the athlete reported them."""
    return condition.condition_of(athlete_id, query["weeks"], now)


@section.get("/tables/<table>")
@by(COACH)
@asks(shapes.WeeksAsked)
@sends("text/csv")
@refuses(NotFound)
def show_table(athlete_id: str, table: str, query: dict[str, int], now: int) -> Response:
    """One table of the monitoring as a CSV file."""
    text = write_table(tables.table_of(athlete_id, table, query["weeks"], now))
    headers = {"Content-Disposition": f'attachment; filename="{table}.csv"'}
    return Response(text, content_type="text/csv; charset=utf-8", headers=headers)
