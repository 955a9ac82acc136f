"""The order of loading and stripping a bar that is light enough to turn over on its supports."""

from math import isfinite

from undercroft.domain.exercise import Implement
from undercroft.domain.kit import Bar, Support
from undercroft.domain.load_sheet import SheetExercise, SheetMove, SheetOrder
from undercroft.domain.mechanics import Order, Resting, Sides, loading, stripping
from undercroft.domain.program.methods import Method, UnstableRule
from undercroft.domain.sheet.day import Day
from undercroft.domain.sheet.plates import stack_of

NO_LIMIT = 99.0
"""How a margin without limit is told: nothing that hangs there could turn the bar over."""


def orders(day: Day, sheet: SheetExercise) -> tuple[SheetOrder, SheetOrder] | None:
    """Loading and stripping for the heaviest set; None where the bar is not of the light sort."""
    bar = next((bar for bar in day.kit.bars if bar.key == sheet.implement.key), None)
    light = sheet.method is Method.UNSTABLE_BAR
    light = light or sheet.implement.kind == Implement.OSCILLATING_BAR
    heaviest = max((one.load for one in sheet.sets if one.load is not None), default=None)
    if bar is None or not light or heaviest is None or not day.kit.supports:
        return None
    hanging = isinstance(sheet.details, UnstableRule) and sheet.details.hanging
    stack = stack_of(day.kit, sheet.loads[heaviest].side)
    return _both(bar, day.kit.supports[0], Sides(stack, stack), hanging)


def _both(bar: Bar, support: Support, full: Sides, hanging: bool) -> tuple[SheetOrder, SheetOrder]:
    resting = Resting(bar.mass_kg, support.spacing_m)
    return (
        _on_sheet(loading(bar, resting, full, hanging)),
        _on_sheet(stripping(bar, resting, full, hanging)),
    )


def _on_sheet(order: Order) -> SheetOrder:
    moves = tuple(SheetMove(move.side, move.kg, move.on) for move in order.moves)
    margin = round(order.margin, 2) if isfinite(order.margin) else NO_LIMIT
    return SheetOrder(moves, margin, order.advice)
