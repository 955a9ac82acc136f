"""The desk's exercises: looked up by themselves and for one athlete."""

from typing import Any

from undercroft.api import exercise_shapes as shapes
from undercroft.api.contract import COACH, Section, by, gives, refuses
from undercroft.documents.catalogue import catalogue
from undercroft.services import exercises
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import NotFound

section = Section("exercises", "/api/v1/desk")


@section.get("/catalogue")
@by(COACH)
@gives(shapes.CatalogueAnswer)
def show_catalogue() -> dict[str, Any]:
    """Every exercise that can be prescribed."""
    return {"exercises": list(catalogue().values())}


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
