"""The plates of a session as its sheet names them."""

from collections.abc import Iterable, Iterator

from undercroft.domain.kit import Kit, Plate
from undercroft.domain.load_sheet import SheetExercise, SheetPlate


def plate_kg(mass_kg: float) -> float:
    """A plate's mass as it stands on a sheet: to a tenth of a gram, which tells pounds apart."""
    return round(mass_kg, 4)


def stack_of(kit: Kit, side: Iterable[float]) -> tuple[Plate, ...]:
    """The kit's plates of a sleeve stack that a sheet names by kilograms."""
    sorts = {plate_kg(plate.mass_kg): plate for plate in kit.plates}
    return tuple(sorts[kg] for kg in side)


def plates_used(kit: Kit, exercises: Iterable[SheetExercise]) -> tuple[SheetPlate, ...]:
    """The sorts of plates on any load of the session, heaviest first."""
    used = set(_sides(exercises))
    sorts = {
        plate_kg(plate.mass_kg): SheetPlate(plate_kg(plate.mass_kg), plate.thickness_m, plate.label)
        for plate in kit.plates
        if plate_kg(plate.mass_kg) in used
    }
    return tuple(sorts[kg] for kg in sorted(sorts, reverse=True))


def _sides(exercises: Iterable[SheetExercise]) -> Iterator[float]:
    for exercise in exercises:
        for load in exercise.loads:
            yield from load.side
