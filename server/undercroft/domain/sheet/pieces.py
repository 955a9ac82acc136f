"""Which piece of the kit an exercise uses, and every load that the piece can make."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from undercroft.domain import implements
from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Implement
from undercroft.domain.kit import Bar, BarKind, Kit, Stack
from undercroft.domain.load_sheet import SheetImplement
from undercroft.domain.loads import LoadTable

BAR_KINDS = {
    Implement.STRAIGHT_BAR: BarKind.STRAIGHT,
    Implement.HEX_BAR: BarKind.HEX,
    Implement.CURL_BAR: BarKind.CURL,
    Implement.OSCILLATING_BAR: BarKind.OSCILLATING,
}


@dataclass(frozen=True, slots=True, eq=False)
class Piece:
    """What is lifted; `table` is None where there is nothing to choose."""

    implement: SheetImplement
    table: LoadTable | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Pieces:
    """One piece of each sort in a kit, and by exercise the stack that is only for it."""

    of_sort: Mapping[Implement, Piece]
    only_for: Mapping[str, Piece]

    def find(self, kind: Implement, exercise: str) -> Piece | None:
        """What the exercise is done with, where it is done with this sort."""
        own = self.only_for.get(exercise) if kind is Implement.STACK else None
        return own or self.of_sort.get(kind)


def pieces_of(kit: Kit, athlete: Athlete) -> Pieces:
    """The first of each sort is taken; of stacks the first that is not kept for some exercises."""
    found = {kind: _maker(kind)(kit, athlete, kind) for kind in Implement}
    of_sort = {kind: piece for kind, piece in found.items() if piece is not None}
    kept = {key: _of_stack(one) for one in reversed(kit.stacks) for key in one.only_for}
    return Pieces(of_sort, kept)


def _maker(kind: Implement) -> Callable[[Kit, Athlete, Implement], Piece | None]:
    return MAKERS.get(kind, _bar)


def _bar(kit: Kit, _: Athlete, kind: Implement) -> Piece | None:
    bar = next((bar for bar in kit.bars if bar.kind is BAR_KINDS[kind]), None)
    if bar is None:
        return None
    return Piece(_sleeved(kind, bar, sides=2), implements.barbell(bar, kit.plates))


def _landmine(kit: Kit, _: Athlete, kind: Implement) -> Piece | None:
    bar = next((bar for bar in kit.bars if bar.kind is BarKind.STRAIGHT), None)
    if bar is None or not kit.landmines:
        return None
    return Piece(_sleeved(kind, bar, sides=1), implements.landmine(bar, kit.plates))


def _sleeved(kind: Implement, bar: Bar, sides: int) -> SheetImplement:
    return SheetImplement(
        kind=kind,
        name=bar.name if sides == 2 else f"{bar.name} in the landmine",
        key=bar.key,
        mass_kg=bar.mass_kg,
        collars_kg=bar.collar_mass_kg * sides,
        sides=sides,
        sleeve_length_m=bar.sleeve_length_m,
    )


def _dumbbells(kit: Kit, _: Athlete, kind: Implement) -> Piece | None:
    pair = kind is Implement.DUMBBELLS
    least = 2 if pair else 1
    counts = [fixed.count for fixed in kit.dumbbells] + [handle.count for handle in kit.handles]
    if max(counts, default=0) < least:
        return None
    name = "Pair of dumbbells" if pair else "Dumbbell"
    return Piece(SheetImplement(kind=kind, name=name), implements.dumbbells(kit, pair))


def _stack(kit: Kit, _: Athlete, __: Implement) -> Piece | None:
    return next((_of_stack(one) for one in kit.stacks if not one.only_for), None)


def _of_stack(stack: Stack) -> Piece:
    named = SheetImplement(kind=Implement.STACK, name=stack.name, key=stack.key)
    return Piece(named, implements.stack(stack))


def _body(kit: Kit, athlete: Athlete, kind: Implement) -> Piece | None:
    mass = athlete.body_mass_kg
    table = None if mass is None else implements.body(mass, kit.plates)
    return Piece(SheetImplement(kind=kind, name="Your own body", mass_kg=mass), table)


def _band(kit: Kit, _: Athlete, kind: Implement) -> Piece | None:
    if not kit.bands:
        return None
    return Piece(SheetImplement(kind=kind, name="Band"))


MAKERS: dict[Implement, Callable[[Kit, Athlete, Implement], Piece | None]] = {
    Implement.LANDMINE: _landmine,
    Implement.DUMBBELLS: _dumbbells,
    Implement.DUMBBELL: _dumbbells,
    Implement.STACK: _stack,
    Implement.BODY: _body,
    Implement.BAND: _band,
}
"""What is no bar with two sleeves."""
