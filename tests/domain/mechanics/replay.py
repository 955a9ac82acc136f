"""Loading and stripping carried out plate by plate, apart from the code that is tested.

Margins come from their definition, holding over tipping moment about a support, and places from
the bar's figures alone.
"""

from collections.abc import Iterator
from itertools import combinations
from math import inf

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.mechanics.order import Order, Sides
from undercroft.domain.program.methods import Side

FACE, COLLAR_M = 0.685, 0.03

Placed = list[tuple[float, float, float]]
"""Mass, innermost and outermost place of each plate."""


def places(bar: Bar, stack: list[Plate], hanging: bool) -> Placed:
    """Mass, innermost and outermost place of each plate, from the bar's figures alone."""
    found, at = [], FACE
    end = FACE + bar.sleeve_length_m - 0.02
    for one in stack:
        middle = at + one.thickness_m / 2
        found.append((one.mass_kg, FACE, end) if hanging else (one.mass_kg, middle, middle))
        at += one.thickness_m
    return found


def tipping_margin(bar: Bar, spacing: float, near: Placed, far: Placed) -> float:
    """Holding over tipping moment about the near support: the definition, without a limit."""
    half = spacing / 2
    mass = sum(kg for kg, _, _ in near)
    tipping = sum(kg * (out - half) for kg, _, out in near)
    holding = bar.mass_kg * half + sum(kg * (inn + half) for kg, inn, _ in far)
    return holding / tipping if mass and tipping > 0 else inf


def least(bar: Bar, spacing: float, left: Placed, right: Placed) -> float:
    return min(tipping_margin(bar, spacing, left, right), tipping_margin(bar, spacing, right, left))


def replayed(
    bar: Bar, spacing: float, start: Sides, moves: list[tuple[Side, Plate, bool]], hanging: bool
) -> tuple[Sides, list[float]]:
    """Carry the moves out plate by plate; the margin at each, on its way and once moved."""
    stacks = {Side.LEFT: list(start.left), Side.RIGHT: list(start.right)}
    end = FACE + bar.sleeve_length_m - 0.02
    margins = []
    for side, one, on in moves:
        other = stacks[Side.RIGHT if side is Side.LEFT else Side.LEFT]
        if not on:
            assert stacks[side].pop() == one
        seated = places(bar, [*stacks[side], one], hanging)
        moving = [*seated[:-1], (one.mass_kg, end, max(end, seated[-1][2]))]
        if on:
            stacks[side].append(one)
        after = places(bar, stacks[side], hanging)
        standing = places(bar, other, hanging)
        margins.append(
            min(least(bar, spacing, moving, standing), least(bar, spacing, after, standing))
        )
    return Sides(tuple(stacks[Side.LEFT]), tuple(stacks[Side.RIGHT])), margins


def collared(bar: Bar, stack: tuple[Plate, ...]) -> tuple[Plate, ...]:
    if not stack or not bar.collar_mass_kg:
        return stack
    return (*stack, Plate(bar.collar_mass_kg, 1, COLLAR_M, "collar"))


def both(bar: Bar, sides: Sides) -> Sides:
    return Sides(collared(bar, sides.left), collared(bar, sides.right))


def moves_of(bar: Bar, start: Sides, goal: Sides, order: Order) -> list[tuple[Side, Plate, bool]]:
    """The printed moves with their plates looked up by mass on the side's own way."""
    ways = {
        Side.LEFT: list(one_way(Side.LEFT, start.left, goal.left)),
        Side.RIGHT: list(one_way(Side.RIGHT, start.right, goal.right)),
    }
    found = []
    for move in order.moves:
        side, plate, on = ways[move.side].pop(0)
        assert (plate.mass_kg, on) == (move.kg, move.on)
        found.append((side, plate, on))
    return found


def one_way(
    side: Side, start: tuple[Plate, ...], goal: tuple[Plate, ...]
) -> Iterator[tuple[Side, Plate, bool]]:
    kept = 0
    while kept < min(len(start), len(goal)) and start[kept] == goal[kept]:
        kept += 1
    yield from ((side, one, False) for one in reversed(start[kept:]))
    yield from ((side, one, True) for one in goal[kept:])


def every_order(start: Sides, goal: Sides) -> Iterator[list[tuple[Side, Plate, bool]]]:
    """All ways to weave the moves of the two sides into one another."""
    left = list(one_way(Side.LEFT, start.left, goal.left))
    right = list(one_way(Side.RIGHT, start.right, goal.right))
    for turns in combinations(range(len(left) + len(right)), len(left)):
        lefts, rights = iter(left), iter(right)
        yield [
            next(lefts) if turn in turns else next(rights) for turn in range(len(left) + len(right))
        ]
