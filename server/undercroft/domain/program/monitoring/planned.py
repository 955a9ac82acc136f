"""The plan of a session as its sheet tells it: what was asked, not how the loads were worked out.

A sheet holds every set of its session, so that what was done can be read without the whole block.
"""

from undercroft.domain.load_sheet import LoadSheet, SheetExercise, SheetSet
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.wish import Unloaded


def plan_of_sheet(sheet: LoadSheet) -> SessionPlan:
    """Exercises and sets in the sheet's order; no set says its load wish."""
    return SessionPlan(sheet.session, sheet.name, sheet.day, tuple(map(_exercise, sheet.exercises)))


def planned_kg(sheet: LoadSheet) -> dict[str, float]:
    """By set key, the load chosen for it in kg; sets without one are left out."""
    return {
        one.key: exercise.loads[one.load].kg
        for exercise in sheet.exercises
        for one in exercise.sets
        if one.load is not None
    }


def _exercise(one: SheetExercise) -> ExercisePlan:
    sets = tuple(map(_set, one.sets))
    return ExercisePlan(one.key, one.exercise, one.method, sets, details=one.details)


def _set(one: SheetSet) -> SetPlan:
    target = one.target
    return SetPlan(
        one.key,
        Unloaded(),
        reps=target.reps,
        rir=target.rir,
        to_failure=target.to_failure,
        seconds=target.seconds,
        distance_m=target.distance_m,
        blocks=target.blocks,
    )
