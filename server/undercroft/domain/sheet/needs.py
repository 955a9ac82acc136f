"""What a session needs from the kit, to be fetched before it begins."""

from collections import Counter
from collections.abc import Iterable, Iterator

from undercroft.domain.load_sheet import SheetExercise
from undercroft.domain.sheet.day import Day
from undercroft.domain.sheet.plates import plates_used


def needs_of(day: Day, exercises: Iterable[SheetExercise]) -> tuple[str, ...]:
    """Bars and plates as planned, then what the exercises themselves ask for."""
    listed = list(exercises)
    return tuple(
        dict.fromkeys([*_implements(listed), *_plates(day, listed), *_things(day, listed)])
    )


def _implements(exercises: list[SheetExercise]) -> Iterator[str]:
    for exercise in exercises:
        if exercise.implement.key is not None:
            yield exercise.implement.name
        elif exercise.implement.kind in ("dumbbell", "dumbbells"):
            yield from _dumbbells(exercise)


def _dumbbells(exercise: SheetExercise) -> Iterator[str]:
    count = 2 if exercise.implement.kind == "dumbbells" else 1
    for one in exercise.sets:
        if one.load is not None and exercise.loads[one.load].piece_kg is not None:
            yield f"{count} × {exercise.loads[one.load].piece_kg:g} kg dumbbell"


def _plates(day: Day, exercises: list[SheetExercise]) -> Iterator[str]:
    """The most of each plate that any set of the plan asks for at once."""
    labels = {plate.kg: plate.label for plate in plates_used(day.kit, exercises)}
    most: Counter[float] = Counter()
    for exercise in exercises:
        sides = max(1, exercise.implement.sides)
        planned = [one.load for one in exercise.sets] + [step.load for step in exercise.ramp]
        for index in planned:
            if index is not None:
                side = Counter(exercise.loads[index].side)
                most |= Counter({mass: count * sides for mass, count in side.items()})
    for mass in sorted(most, reverse=True):
        yield f"{most[mass]} × {labels[mass] or f'{mass:g} kg'}"


def _things(day: Day, exercises: list[SheetExercise]) -> Iterator[str]:
    for exercise in exercises:
        for need in day.catalogue[exercise.exercise].needs:
            named = day.kit.supports[0].name if need == "support" and day.kit.supports else need
            yield named.capitalize()
