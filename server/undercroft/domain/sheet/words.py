"""Short lines for people: what needs care, what is not reckoned in, what a load adds up from."""

from collections.abc import Iterator

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.load_sheet import SheetExercise, SheetLoad
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import Method
from undercroft.domain.sheet.day import Day


def cautions(day: Day, plan: ExercisePlan, exercise: Exercise) -> tuple[str, ...]:
    """What the athlete must hear before this exercise. Common practice throughout."""
    return tuple(_cautions(day, plan, exercise))


def _cautions(day: Day, plan: ExercisePlan, exercise: Exercise) -> Iterator[str]:
    if exercise.needs_safeties and day.athlete.trains_alone:
        if any(support.safeties for support in day.kit.supports):
            yield "Alone: set the safeties, try them with the empty bar, leave no grind to luck."
        else:
            yield "Alone and no safeties here: stay well short of failure, or have a spotter."
    if exercise.implement in (Implement.STRAIGHT_BAR, Implement.HEX_BAR):
        yield "Collars on before every set."
    if exercise.implement is Implement.BAND or (plan.rig and plan.rig.part == "bands"):
        yield "Look each band over before use; a nick or a white line ends its life."
    if plan.method is Method.OCCLUSION:
        yield "Whether this is right for you is for a licensed clinician to say."
    if plan.method is Method.MAXIMUM_TEST:
        yield "Stop at the first attempt that loses its form. A test is not worth an injury."
    hurt = next((i for i in day.athlete.injuries if plan.exercise in i.avoid), None)
    if hurt is not None:
        yield f"Your {hurt.where} is on record for this exercise: ask your coach first."


def summed(sheet: SheetExercise, load: SheetLoad) -> str:
    """A load as the sum that a person would check."""
    of = sheet.implement
    if load.piece_kg is not None:
        return f"a dumbbell of {load.piece_kg:g} kg"
    if load.pin_kg is not None:
        parts = " + ".join(f"{kg:g}" for kg in (load.pin_kg, *load.add_ons_kg))
        return f"pin {parts}, {load.kg:g} kg at the handle"
    stack = " + ".join(f"{kg:g}" for kg in load.side)
    if of.sides == 2 and of.mass_kg is not None:
        if not stack:
            return f"the bare bar = {load.kg:g} kg"
        collars = f" + collars {of.collars_kg:g}" if of.collars_kg else ""
        return f"bar {of.mass_kg:g}{collars} + 2 × ({stack}) = {load.kg:g} kg"
    if of.sides == 1:
        collars = f" + collar {of.collars_kg:g}" if of.collars_kg and stack else ""
        return f"on the sleeve {stack or '0'}{collars} = {load.kg:g} kg"
    return f"{load.kg:g} kg" + (f" with {stack}" if stack else "")
