"""The desk's reading side: squad, one athlete, results, trends."""

from typing import Any

from undercroft.api import desk_shapes as shapes
from undercroft.api.contract import COACH, Section, by, gives, takes
from undercroft.services import athlete_page, results, squad, trends
from undercroft.services.accounts import CoachSeen
from undercroft.services.result_seen import Results

section = Section("results", "/api/v1/desk")


@section.get("/squad")
@by(COACH)
@gives(shapes.SquadAnswer)
def show_squad(coach: CoachSeen, now: int) -> dict[str, Any]:
    """The coach's own and shared athletes, those that need attention first and why."""
    return {"athletes": squad.squad(coach.id, now)}


@section.get("/athletes/<athlete_id>")
@by(COACH)
@gives(shapes.AthletePageAnswer)
def show_athlete(coach: CoachSeen, athlete_id: str, now: int) -> athlete_page.AthletePage:
    """One athlete: document, kit, maxima, devices."""
    return athlete_page.page(coach.id, athlete_id, now)


@section.post("/athletes/<athlete_id>/document")
@by(COACH)
@takes(shapes.Draft)
@gives(shapes.AthleteDocument, plain=True)
def save_athlete(coach: CoachSeen, athlete_id: str, body: dict[str, Any]) -> dict[str, Any]:
    """Keep an athlete's document; sheets of sessions not begun are worked out again."""
    return {"document": athlete_page.save_document_by(coach.id, athlete_id, body["document"])}


@section.post("/athletes/<athlete_id>/kit")
@by(COACH)
@takes(shapes.Draft)
@gives(shapes.KitDocument, plain=True)
def save_kit(athlete_id: str, body: dict[str, Any]) -> dict[str, Any]:
    """Keep an athlete's kit; sheets of sessions not begun are worked out again."""
    return {"document": athlete_page.save_kit(athlete_id, body["document"])}


@section.get("/athletes/<athlete_id>/results")
@by(COACH)
@gives(shapes.ResultsAnswer)
def show_results(athlete_id: str) -> Results:
    """Planned against done, newest session first, and what was done outside the plan."""
    return results.results(athlete_id)


@section.get("/athletes/<athlete_id>/maxima/<lift>")
@by(COACH)
@gives(shapes.TrendAnswer)
def show_trend(athlete_id: str, lift: str) -> trends.Trend:
    """A lift's maximum over time, with its 90 % band."""
    return trends.trend_of(athlete_id, lift)
