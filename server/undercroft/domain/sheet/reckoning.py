"""From wishes for the whole load to what the plates have to make."""

from dataclasses import dataclass

from undercroft.domain.loads import LoadTable, nearest
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.sheet import levers, rigging
from undercroft.domain.sheet.day import Day, implement_for, piece_for
from undercroft.domain.sheet.wishes import WishedLoad, wished_load


@dataclass(frozen=True, slots=True, eq=False)
class Reckoned:
    """What is hung beside the plates, and what is left for them: a wish for each set."""

    rig: rigging.Rigged
    arm: levers.Levered
    for_plates: list[WishedLoad]


def reckon(day: Day, plan: ExercisePlan, wishes: list[WishedLoad], table: LoadTable) -> Reckoned:
    """From wishes for the whole load to wishes for what the table holds."""
    exercise = day.catalogue[plan.exercise]
    rig = rigging.rigged(day, plan, exercise, wishes)
    arm = levers.levered(day, exercise, implement_for(plan, day.catalogue))
    wishes = levers.on_the_sleeve(arm, wishes, plan.sets, table)
    if rig.choice is not None:
        wishes = rigging.for_plates(wishes, plan.sets, rig.choice, table)
    return Reckoned(rig, arm, wishes)


def wishes_of(day: Day, plan: ExercisePlan) -> list[WishedLoad]:
    """The wish of each set, back-off sets after the load that the first one gets.

    Raises UnknownMaximum.
    """
    first = wished_load(day, plan, plan.sets[0], None)
    piece = piece_for(day, plan)
    first_kg = first.kg
    if first_kg is not None and piece is not None and piece.table is not None:
        first_kg = nearest(piece.table, first_kg).load.kg
    return [first, *(wished_load(day, plan, one, first_kg) for one in plan.sets[1:])]
