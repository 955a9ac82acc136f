"""Short lines for people on a load sheet: what needs care, and what is not reckoned in."""

from collections.abc import Iterator

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import Method
from undercroft.domain.sheet.day import Day

LOCKED = (
    "Occlusion work stays locked: screening is not part of this version. "
    "Whether it is right for a person is for a licensed clinician to say."
)


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
    if plan.method is Method.MAXIMUM_TEST:
        yield "Stop at the first attempt that loses its form. A test is not worth an injury."
    hurt = next((i for i in day.athlete.injuries if plan.exercise in i.avoid), None)
    if hurt is not None:
        yield f"Your {hurt.where} is on record for this exercise: ask your coach first."
