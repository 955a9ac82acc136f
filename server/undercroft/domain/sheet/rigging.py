"""Bands and chains of an exercise on this kit: what hangs where, what is left for the plates."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from undercroft.domain.errors import LoadError
from undercroft.domain.exercise import Exercise
from undercroft.domain.load_sheet import SheetLoad, SheetSet
from undercroft.domain.loads import LoadTable
from undercroft.domain.mechanics import Choice, path_for, rig_kg, rig_up, still_kg
from undercroft.domain.mechanics.drawing import with_still
from undercroft.domain.mechanics.target import WORDS
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.wish import OfMaximum, Point
from undercroft.domain.sheet.day import Day, full_strength
from undercroft.domain.sheet.wishes import WishedLoad


@dataclass(frozen=True, slots=True, eq=False)
class Rigged:
    """`choice` is None where nothing is rigged, or where this kit cannot: `notes` say why."""

    choice: Choice | None = None
    notes: tuple[str, ...] = ()

    @property
    def needs(self) -> tuple[str, ...]:
        return self.choice.needs if self.choice else ()

    @property
    def words(self) -> tuple[str, ...]:
        return (self.choice.words,) if self.choice else ()


def rigged(
    day: Day, plan: ExercisePlan, exercise: Exercise, wishes: Sequence[WishedLoad]
) -> Rigged:
    """One rig for all sets, chosen for the heaviest wish: nobody rehangs bands between sets."""
    loads = [wish.kg for wish in wishes if wish.kg]
    if plan.rig is None or not loads:
        return Rigged()
    try:
        path = path_for(day.athlete, exercise)
        maximum = full_strength(day, plan.exercise)
        choice = rig_up(day.kit, day.laws, plan.rig, path, max(loads), maximum)
    except LoadError as fault:
        return Rigged(None, (f"The load shown is without {plan.rig.part.value}: {fault}.",))
    return Rigged(choice, tuple(_sentence(remark.words) for remark in choice.remarks))


def for_plates(
    wishes: Sequence[WishedLoad], sets: Sequence[SetPlan], choice: Choice, table: LoadTable
) -> list[WishedLoad]:
    """The wishes less what the rig gives at the point that each set means."""
    bare = table.loads[0].kg
    return [_less(wish, one, choice, bare) for wish, one in zip(wishes, sets, strict=True)]


def with_curves(
    sets: Sequence[SheetSet], loads: Sequence[SheetLoad], choice: Choice
) -> tuple[SheetSet, ...]:
    """Each set with the force curve of plates and rig together."""
    return tuple(
        one if one.load is None else replace(one, curve=with_still(choice, loads[one.load].kg))
        for one in sets
    )


def _less(wish: WishedLoad, one: SetPlan, choice: Choice, bare_kg: float) -> WishedLoad:
    point = one.load.point if isinstance(one.load, OfMaximum) else Point.BAR
    given = rig_kg(choice.curve, point)
    if not given or wish.kg is None:
        return wish
    try:
        kg = still_kg(wish.kg, point, choice.curve, bare_kg)
    except LoadError as fault:
        return replace(wish, kg=bare_kg, by_notch_kg=(), upper_kg=None, why=f"{wish.why}; {fault}")
    return replace(
        wish,
        kg=kg,
        by_notch_kg=tuple(max(bare_kg, each - given) for each in wish.by_notch_kg),
        upper_kg=None if wish.upper_kg is None else max(bare_kg, wish.upper_kg - given),
        why=f"{wish.why}: {wish.kg:.1f} kg {WORDS[point]}, {given:.1f} of it from the rig",
    )


def _sentence(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}."
