"""A bar on two supports that turns over while it is loaded or stripped, even in the best order.

What rests on the bar is told apart from a plate on its way. A plate at the sleeve's end is in the
lifter's hands, and 20 kg there all but turn an Olympic bar over: a stop for that would stop every
squat. So there it is a warning, and only where the bar would really go; where everything rests,
the margins of the mechanics hold.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from undercroft.domain.exercise import Implement
from undercroft.domain.kit import Bar, Plate, Support
from undercroft.domain.mechanics import DEFAULT, Move, Resting, Sides, loading, margin
from undercroft.domain.mechanics import Order as Handling
from undercroft.domain.mechanics.tipping import SideLoad, hung, seated, together
from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.line import Line
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Side, UnstableRule
from undercroft.domain.sheet.plates import plate_kg

ON_SUPPORTS = frozenset({Implement.STRAIGHT_BAR, Implement.CURL_BAR, Implement.OSCILLATING_BAR})

TURNS_OVER = 1.0
"""Margin below which a bar turns over: statics."""


@dataclass(frozen=True, slots=True)
class _Tried:
    """A bar loaded on a support in its best order; stripping is the same order backwards."""

    support: Support
    handling: Handling
    resting_margin: float


@check(
    "bar-tips",
    Severity.STOP,
    looks_for="bars that are about to turn over with plates where they rest, whatever the order",
    message="on {support} the bar is about to turn over: {margin:.2f} times what hangs would do it",
    mend="load and strip on the floor or with help, on wider supports, or with smaller plates",
    thresholds=("mechanics.stop_margin", "mechanics.plate_face_m"),
)
def bar_tips(context: CheckContext) -> Iterator[Found]:
    for line, tried in _tried(context):
        if tried.resting_margin < DEFAULT.stop_margin:
            yield _found(line, tried, tried.resting_margin)


@check(
    "bar-nearly-tips",
    Severity.WARN,
    looks_for="bars that stay on their supports only in a safe order, or with a plate held to its"
    " place",
    message="on {support} {margin:.2f} times what hangs would turn the bar over",
    mend="load in this order, hands on each plate until it rests, and strip backwards: {order}",
    thresholds=("mechanics.warn_margin", "mechanics.plate_face_m"),
)
def bar_nearly_tips(context: CheckContext) -> Iterator[Found]:
    for line, tried in _tried(context):
        if tried.resting_margin < DEFAULT.stop_margin:
            continue
        if tried.resting_margin < DEFAULT.warn_margin:
            yield _found(line, tried, tried.resting_margin)
        elif tried.handling.margin < TURNS_OVER:
            yield _found(line, tried, tried.handling.margin)


def resting_margin(
    bar: Bar, resting: Resting, moves: Sequence[Move], stack: Sequence[Plate], hanging: bool
) -> float:
    """The least margin between the moves that load `stack` on both sides of a bare bar."""
    loads = _loads(bar, stack, hanging)
    on = dict.fromkeys(Side, 0)
    margins = []
    for move in moves:
        on[move.side] += 1
        left, right = (together(loads[: on[side]]) for side in (Side.LEFT, Side.RIGHT))
        margins.append(margin(resting, left, right))
    return min(margins, default=float("inf"))


def _loads(bar: Bar, stack: Sequence[Plate], hanging: bool) -> list[SideLoad]:
    """The plates of one side and its collar, each where it rests or swings."""
    collar = Plate(bar.collar_mass_kg, 1, DEFAULT.collar_thickness_m, "collar")
    whole = [*stack, collar] if bar.collar_mass_kg else list(stack)
    return hung(bar, whole) if hanging else seated(whole)


def _tried(context: CheckContext) -> Iterator[tuple[Line, _Tried]]:
    """Every loading once, where it first comes, on the support on which it is tightest."""
    seen: set[tuple[str, tuple[Plate, ...], bool]] = set()
    for line in context.ahead:
        bar, stack = _bar(context, line), _heaviest_stack(context, line)
        if bar is None or not stack or "support" not in line.exercise.needs:
            continue
        hanging = isinstance(line.plan.details, UnstableRule) and line.plan.details.hanging
        if (bar.key, stack, hanging) in seen or not context.order.kit.supports:
            continue
        seen.add((bar.key, stack, hanging))
        tried = [_on(one, bar, stack, hanging) for one in context.order.kit.supports]
        yield line, min(tried, key=lambda one: (one.resting_margin, one.handling.margin))


@lru_cache(maxsize=10_000)
def _on(support: Support, bar: Bar, stack: tuple[Plate, ...], hanging: bool) -> _Tried:
    """Kept, because both checks ask for it, and each look at a draft for the same few stacks."""
    resting = Resting(bar.mass_kg, support.spacing_m)
    handling = loading(bar, resting, Sides(stack, stack), hanging)
    least = resting_margin(bar, resting, handling.moves, stack, hanging)
    return _Tried(support, handling, least)


def _found(line: Line, tried: _Tried, least: float) -> Found:
    order = ", ".join(f"{one.label or f'{one.kg:g} kg'} {one.side}" for one in tried.handling.moves)
    values = {"support": tried.support.name.lower(), "margin": least, "order": order}
    return Found(line.place, values)


def _bar(context: CheckContext, line: Line) -> Bar | None:
    if line.sheet is None or line.implement not in ON_SUPPORTS:
        return None
    key = line.sheet.implement.key
    return next((bar for bar in context.order.kit.bars if bar.key == key), None)


def _heaviest_stack(context: CheckContext, line: Line) -> tuple[Plate, ...]:
    """The plates of one side at the heaviest planned load, innermost first."""
    if line.sheet is None:
        return ()
    chosen = [line.sheet.loads[one.load] for one in line.sheet.sets if one.load is not None]
    heaviest = max(chosen, key=lambda load: load.kg, default=None)
    sorts = {plate_kg(plate.mass_kg): plate for plate in context.order.kit.plates}
    return tuple(sorts[kg] for kg in heaviest.side) if heaviest else ()


CHECKS: tuple[Check, ...] = (bar_tips, bar_nearly_tips)
