"""In which order to load and strip a bar on two supports, alone, so that it stays on them.

A sleeve is a stack, last on first off, and one plate moves at a time. Every move is looked at
twice: with the plate at the sleeve's end, on its way, and with it seated or gone. Of all orders the
one is best whose smallest margin is greatest, then its second smallest, and so on; of those alike
the one that changes sides least.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product, takewhile
from math import inf

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.mechanics.tipping import (
    Brink,
    Resting,
    SideLoad,
    brink,
    fixed,
    hung,
    seated,
    sleeve_end_m,
    together,
)
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Side

Stack = tuple[Plate, ...]
SAME = 9
"""Decimals to which margins are compared: mirrored moves are the same move."""


@dataclass(frozen=True, slots=True)
class Sides:
    """The sleeve stacks of a bar, innermost first."""

    left: Stack = ()
    right: Stack = ()


@dataclass(frozen=True, slots=True)
class Move:
    """One plate on or off.

    `margin` is the smallest while the plate moves and once it has moved, `seated` once it has.
    """

    side: Side
    kg: float
    on: bool
    margin: float
    seated: float
    label: str = ""


@dataclass(frozen=True, slots=True)
class Order:
    """Moves in turn, the smallest margin of them all, and what is to be said about it.

    `seated` is the smallest margin with no plate on its way; `severity` is by `margin`: stop below
    1.33, warn below 2, else None. Margins are infinite where nothing can tip.
    """

    moves: tuple[Move, ...]
    margin: float
    seated: float
    severity: Severity | None = None
    advice: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class _Step:
    """A side's next move: the plate, the load while it is on its way, the load after."""

    plate: Plate
    on: bool
    moving: SideLoad
    after: SideLoad


@dataclass(frozen=True, slots=True, eq=False)
class _Way:
    """A side from its stack at the start to its goal."""

    side: Side
    start: SideLoad
    steps: tuple[_Step, ...]

    def load(self, done: int) -> SideLoad:
        return self.steps[done - 1].after if done else self.start


@dataclass(frozen=True, slots=True, eq=False)
class _Tried:
    """Moves so far; `margins` sorted, smallest first; `stays` counts moves on the same side."""

    margins: tuple[float, ...]
    stays: int
    moves: tuple[tuple[Move, Brink], ...]

    @property
    def worth(self) -> tuple[tuple[float, ...], int, bool]:
        """More is better; of two orders alike the one that begins on the left."""
        return self.margins, self.stays, bool(self.moves) and self.moves[0][0].side is Side.LEFT


def loading(bar: Bar, resting: Resting, goal: Sides, hanging: bool = False) -> Order:
    """The best order to load a bare bar."""
    return best_order(bar, resting, Sides(), goal, hanging)


def stripping(bar: Bar, resting: Resting, start: Sides, hanging: bool = False) -> Order:
    """The best order to strip a bar to its bare self."""
    return best_order(bar, resting, start, Sides(), hanging)


def best_order(
    bar: Bar, resting: Resting, start: Sides, goal: Sides, hanging: bool = False
) -> Order:
    """The best order from one loading to another, collars off first and on last.

    With `hanging` the plates hang from bands or straps and may swing along the sleeve.
    """
    left = _way(bar, Side.LEFT, start.left, goal.left, hanging)
    right = _way(bar, Side.RIGHT, start.right, goal.right, hanging)
    best = _search(resting, left, right)
    standing = brink(resting, left.start, right.start)
    tightest = min([standing, *(at for _, at in best.moves)], key=lambda at: at.margin)
    severity = _severity(tightest.margin)
    moves = tuple(move for move, _ in best.moves)
    seated = min([standing.margin, *(move.seated for move in moves)])
    return Order(moves, tightest.margin, seated, severity, _advice(severity, tightest))


def smallest_margin(bar: Bar, resting: Resting, start: Stack, goal: Stack, hanging: bool) -> float:
    """The margin of the best order where both sides go from one stack to another.

    The same as `best_order` finds, without the order itself: many stacks are weighed by it.
    """
    way = _way(bar, Side.LEFT, start, goal, hanging)
    places = [_moments(resting, way.load(done)) for done in range(len(way.steps) + 1)]
    moving = [_moments(resting, step.moving) for step in way.steps]
    best = {(0, 0): _least(places[0], places[0])}
    for i, j in product(range(len(places)), range(len(places))):
        came = [
            min(best[near - 1, far], _least(moving[near - 1], places[far]))
            for near, far in {(i, j), (j, i)}
            if near and (near - 1, far) in best
        ]
        if came:
            best[i, j] = best[j, i] = min(max(came), _least(places[i], places[j]))
    return best[len(way.steps), len(way.steps)]


def _moments(resting: Resting, load: SideLoad) -> tuple[float, float]:
    """Moments in kg m by which a side holds the bar down on its far support, and tips it."""
    half, shift, own = resting.half_m, resting.shift_m, resting.bar_kg / 2
    holding = own * (half - shift) + load.mass_kg * (load.inner_m + half - shift)
    return holding + own * (half - shift), load.mass_kg * (load.outer_m + shift - half)


def _least(one: tuple[float, float], other: tuple[float, float]) -> float:
    return min(
        other[0] / one[1] if one[1] > 0 else inf,
        one[0] / other[1] if other[1] > 0 else inf,
    )


def _search(resting: Resting, left: _Way, right: _Way) -> _Tried:
    """Over how many moves each side has done and which side moved last.

    Comparing sorted margins keeps its sense when the same margins are added to both, so the best
    way to each place is all that the next needs.
    """
    none = _Tried((), 0, ())
    best: dict[tuple[int, int], dict[Side | None, _Tried]] = {(0, 0): {None: none}}
    for i, j in product(range(len(left.steps) + 1), range(len(right.steps) + 1)):
        if (i, j) != (0, 0):
            best[i, j] = {}
            if i:
                at = left.steps[i - 1]
                found = _move(resting, left.side, at, right.load(j))
                best[i, j][Side.LEFT] = _with(best[i - 1, j], found)
            if j:
                at = right.steps[j - 1]
                found = _move(resting, right.side, at, left.load(i))
                best[i, j][Side.RIGHT] = _with(best[i, j - 1], found)
    ends = best[len(left.steps), len(right.steps)].values()
    return max(ends, key=lambda tried: tried.worth)


def _move(resting: Resting, side: Side, step: _Step, other: SideLoad) -> tuple[Move, Brink]:
    def at(load: SideLoad) -> Brink:
        return brink(resting, *((load, other) if side is Side.LEFT else (other, load)))

    moving, after = at(step.moving), at(step.after)
    least = moving if moving.margin <= after.margin else after
    kg, label = step.plate.mass_kg, step.plate.label
    return Move(side, kg, step.on, least.margin, after.margin, label), least


def _with(before: dict[Side | None, _Tried], found: tuple[Move, Brink]) -> _Tried:
    """The best way that ends in this move."""
    move = found[0]
    margin = move.margin if move.margin == inf else round(move.margin, SAME)
    grown = [
        _Tried(
            tuple(sorted((*tried.margins, margin))),
            tried.stays + (last is move.side),
            (*tried.moves, found),
        )
        for last, tried in before.items()
    ]
    return max(grown, key=lambda tried: tried.worth)


def _way(bar: Bar, side: Side, start: Stack, goal: Stack, hanging: bool) -> _Way:
    start, goal = _collared(bar, start), _collared(bar, goal)
    steps = list(_steps(bar, start, goal, hanging))
    return _Way(side, together(_loads(bar, start, hanging)), tuple(steps))


def _steps(bar: Bar, start: Stack, goal: Stack, hanging: bool) -> Iterator[_Step]:
    kept = sum(1 for _ in takewhile(lambda two: two[0] == two[1], zip(start, goal, strict=False)))
    for size in range(len(start), kept, -1):
        yield _step(bar, start[:size], False, hanging)
    for size in range(kept + 1, len(goal) + 1):
        yield _step(bar, goal[:size], True, hanging)


def _step(bar: Bar, stack: Stack, on: bool, hanging: bool) -> _Step:
    """The outermost plate of a stack goes on or comes off."""
    loads = _loads(bar, stack, hanging)
    end = max(sleeve_end_m(bar), loads[-1].outer_m)
    moving = together([*loads[:-1], fixed(stack[-1].mass_kg, end)])
    after = together(loads if on else loads[:-1])
    return _Step(stack[-1], on, moving, after)


def _loads(bar: Bar, stack: Sequence[Plate], hanging: bool) -> list[SideLoad]:
    return hung(bar, stack) if hanging else seated(stack)


def _collared(bar: Bar, stack: Stack) -> Stack:
    if not stack or not bar.collar_mass_kg:
        return stack
    return (*stack, Plate(bar.collar_mass_kg, 1, DEFAULT.collar_thickness_m, "collar"))


def _severity(margin: float) -> Severity | None:
    if margin < DEFAULT.stop_margin:
        return Severity.STOP
    return Severity.WARN if margin < DEFAULT.warn_margin else None


def _advice(severity: Severity | None, at: Brink) -> str:
    if severity is None:
        return ""
    numbers = (
        f"the bar turns over with {at.limit_kg:.1f} kg on the {at.side} and {at.load_kg:g} kg"
        f" come to hang there, a margin of {at.margin:.2f}"
    )
    if severity is Severity.STOP:
        return f"Load and strip on the floor, or with one person at each end: {numbers}."
    return f"Keep to this order: {numbers}."
