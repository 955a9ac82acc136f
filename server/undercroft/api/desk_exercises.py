"""The desk's exercises: looked up by themselves and for one athlete, and the coach's own."""

from typing import Any

from undercroft.api import exercise_shapes as shapes
from undercroft.api.contract import COACH, Section, by, gives, refuses, takes
from undercroft.api.desk_shapes import Draft
from undercroft.services import exercises, own_exercises
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import Conflict, NotFound

section = Section("exercises", "/api/v1/desk")


@section.get("/catalogue")
@by(COACH)
@gives(shapes.CatalogueAnswer)
def show_catalogue(coach: CoachSeen) -> dict[str, Any]:
    """Every exercise that can be prescribed, and those that the coach archived."""
    return {"exercises": exercises.listed(coach.id)}


@section.get("/exercises/<key>")
@by(COACH)
@gives(shapes.ExercisePageAnswer)
@refuses(NotFound)
def show_exercise(key: str, coach: CoachSeen) -> exercises.ExercisePage:
    """One exercise, and the athletes whom an injury keeps from it."""
    return exercises.page(coach.id, key)


@section.get("/athletes/<athlete_id>/exercises")
@by(COACH)
@gives(shapes.AthleteExercisesAnswer)
def show_for_athlete(athlete_id: str) -> exercises.AthleteExercises:
    """Every exercise for one athlete: what the kit lacks, what hurts, heights in cm."""
    return exercises.for_athlete(athlete_id)


@section.post("/exercises")
@by(COACH)
@takes(Draft)
@gives(shapes.ExerciseMade, 201)
def add_exercise(coach: CoachSeen, body: dict[str, Any], now: int) -> dict[str, str]:
    """Add an exercise of the coach's own; its key comes from its name."""
    return {"key": own_exercises.add(coach.id, body["document"], now)}


@section.post("/exercises/<key>")
@by(COACH)
@takes(Draft)
@refuses(NotFound)
def change_exercise(key: str, coach: CoachSeen, body: dict[str, Any], now: int) -> None:
    """Change an own exercise; sheets of sessions not begun are worked out again."""
    own_exercises.change(coach.id, key, body["document"], now)


@section.post("/exercises/<key>/cues")
@by(COACH)
@takes(shapes.OwnCues)
@refuses(NotFound)
def set_cues(key: str, coach: CoachSeen, body: dict[str, Any], now: int) -> None:
    """Put own cues in place of the catalogue's; an empty list brings those back."""
    own_exercises.set_cues(coach.id, key, body["cues"], now)


@section.post("/exercises/<key>/archive")
@by(COACH)
@refuses(NotFound)
def archive_exercise(key: str, coach: CoachSeen, now: int) -> None:
    """Offer an own exercise no more; what names it goes on as before."""
    own_exercises.archive(coach.id, key, now)


@section.post("/exercises/<key>/restore")
@by(COACH)
@refuses(NotFound)
def restore_exercise(key: str, coach: CoachSeen) -> None:
    """Offer an archived exercise again."""
    own_exercises.archive(coach.id, key, None)


@section.post("/exercises/<key>/remove")
@by(COACH)
@refuses(NotFound, Conflict)
def remove_exercise(key: str, coach: CoachSeen) -> None:
    """Remove an own exercise that nothing names; one that is named somewhere is refused."""
    own_exercises.remove(coach.id, key)
