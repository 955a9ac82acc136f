"""The landmine: what is wished in the hand becomes plates on the sleeve, and back as a curve."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from undercroft.domain.errors import LoadError
from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.kit import BarKind
from undercroft.domain.load_sheet import SheetLoad, SheetSet
from undercroft.domain.loads import LoadTable, nearest
from undercroft.domain.mechanics import Lever, Path, lever, path_for, press, sleeve_kg_for
from undercroft.domain.mechanics.drawing import on_sheet
from undercroft.domain.program.block import SetPlan
from undercroft.domain.program.wish import Fixed
from undercroft.domain.sheet.day import Day
from undercroft.domain.sheet.plates import stack_of
from undercroft.domain.sheet.wishes import WishedLoad


@dataclass(frozen=True, slots=True)
class Levered:
    """The lever and the way of the hand; None where it is no landmine or the way is not known."""

    lever: Lever | None = None
    path: Path | None = None
    notes: tuple[str, ...] = ()


def levered(day: Day, exercise: Exercise, implement: Implement) -> Levered:
    """The lever that this kit's first bar makes in its first landmine."""
    bar = next((bar for bar in day.kit.bars if bar.kind is BarKind.STRAIGHT), None)
    if implement is not Implement.LANDMINE or bar is None or not day.kit.landmines:
        return Levered()
    made = lever(bar, day.kit.landmines[0])
    try:
        path = path_for(day.athlete, exercise)
    except LoadError as fault:
        return Levered(made, None, (f"What the hand feels is not shown: {fault}.",))
    guessed = "The load in the hand rests on a range worked out from stature: measure both heights."
    return Levered(made, path, () if path.measured else (guessed,))


def on_the_sleeve(
    of: Levered, wishes: Sequence[WishedLoad], sets: Sequence[SetPlan], table: LoadTable
) -> list[WishedLoad]:
    """Wishes in the hand at the start of the press as masses on the sleeve."""
    return [_on_sleeve(of, wish, one, table) for wish, one in zip(wishes, sets, strict=True)]


def with_curves(
    day: Day, of: Levered, sets: Sequence[SheetSet], loads: Sequence[SheetLoad]
) -> tuple[SheetSet, ...]:
    """Each set with what the hand feels from start to end of the press."""
    if of.lever is None or of.path is None:
        return tuple(sets)
    start, end = of.path.start_m, of.path.end_m
    return tuple(
        one
        if one.load is None
        else replace(
            one,
            curve=on_sheet(press(of.lever, stack_of(day.kit, loads[one.load].side), start, end)),
        )
        for one in sets
    )


def _on_sleeve(of: Levered, wish: WishedLoad, one: SetPlan, table: LoadTable) -> WishedLoad:
    in_hand = isinstance(one.load, Fixed) and one.load.in_hand
    if not in_hand or wish.kg is None or of.lever is None or of.path is None:
        return wish
    why = f"{wish.kg:g} kg in the hand at the start"
    try:
        kg = sleeve_kg_for(
            of.lever, wish.kg, of.path.start_m, lambda mass: nearest(table, mass).load.plates
        )
    except LoadError as fault:
        return replace(wish, kg=0.0, why=f"{why}; {fault}")
    return replace(wish, kg=kg, why=why)
