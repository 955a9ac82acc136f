"""The order of loading and stripping a bar that is light enough to turn over on its supports."""

from dataclasses import dataclass
from functools import lru_cache
from math import isfinite

from undercroft.domain.exercise import Implement
from undercroft.domain.handling import Stack
from undercroft.domain.kit import Bar
from undercroft.domain.load_sheet import SheetExercise, SheetMove, SheetOrder
from undercroft.domain.mechanics import Order, Resting, Sides, loading, smallest_margin, stripping
from undercroft.domain.program.methods import Method, UnstableRule
from undercroft.domain.sheet.day import Day
from undercroft.domain.sheet.plates import stack_of

NO_LIMIT = 99.0
"""How a margin without limit is told: nothing that hangs there could turn the bar over."""


@dataclass(frozen=True, slots=True)
class LightBar:
    """A bar of the light sort on its supports; `hanging`: its plates hang from bands or straps."""

    bar: Bar
    resting: Resting
    hanging: bool

    def margin(self, start: Stack, goal: Stack) -> float:
        """The smallest margin in the best order from one stack on each side to another."""
        return _margin(self, start, goal)


@lru_cache(maxsize=50_000)
def _margin(light: LightBar, start: Stack, goal: Stack) -> float:
    """Kept, because the sessions of a block ask for the same few stacks again and again."""
    return smallest_margin(light.bar, light.resting, start, goal, light.hanging)


def light_bar(day: Day, sheet: SheetExercise) -> LightBar | None:
    """The exercise's bar, where it is of the light sort and lies on supports that are known."""
    bar = next((bar for bar in day.kit.bars if bar.key == sheet.implement.key), None)
    light = sheet.method is Method.UNSTABLE_BAR
    light = light or sheet.implement.kind == Implement.OSCILLATING_BAR
    if bar is None or not light or not day.kit.supports:
        return None
    hanging = isinstance(sheet.details, UnstableRule) and sheet.details.hanging
    return LightBar(bar, Resting(bar.mass_kg, day.kit.supports[0].spacing_m), hanging)


def orders(day: Day, sheet: SheetExercise) -> tuple[SheetOrder, SheetOrder] | None:
    """Loading and stripping for the heaviest set; None where the bar is not of the light sort."""
    light = light_bar(day, sheet)
    heaviest = max((one.load for one in sheet.sets if one.load is not None), default=None)
    if light is None or heaviest is None:
        return None
    stack = stack_of(day.kit, sheet.loads[heaviest].side)
    full = Sides(stack, stack)
    return (
        _on_sheet(loading(light.bar, light.resting, full, light.hanging)),
        _on_sheet(stripping(light.bar, light.resting, full, light.hanging)),
    )


def _on_sheet(order: Order) -> SheetOrder:
    moves = tuple(SheetMove(move.side, move.kg, move.on) for move in order.moves)
    margin = round(order.margin, 2) if isfinite(order.margin) else NO_LIMIT
    return SheetOrder(moves, margin, order.advice)
