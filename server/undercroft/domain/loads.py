"""What can be loaded, lightest first, and the load nearest to a wish.

Loads are compared as whole grains of 1e-10 kg, because in them both kilogram and pound plates are
exact (1 lb = 0.45359237 kg by definition of 1959, so a quarter of a pound is 1133980925 grains):
equal loads are equal and a tie is a tie.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from undercroft.domain.errors import LoadError, not_negative
from undercroft.domain.kit import Plate

GRAINS_PER_KG = 10**10
KG_PER_LB = 0.45359237


def grains(kg: float) -> int:
    """Mass in whole grains of 1e-10 kg."""
    return round(kg * GRAINS_PER_KG)


def kilograms(count: int) -> float:
    """Mass in kg of whole grains: the float that is nearest to the decimal."""
    return count / GRAINS_PER_KG


@dataclass(frozen=True, slots=True)
class Load:
    """One load that can be made, and what to hang or select for it.

    `kg` is what the program counts: bar with plates and collars; one dumbbell, also of a pair; the
    mass on a landmine's sleeve; the pull at the handle of a cable while lifting, over g; the body
    with what hangs on it or less what bears it. `plates` are those of one sleeve, innermost first,
    and go on every sleeve alike. `doubt_kg` is one standard deviation where the load is not simply
    weighed; `estimated` says that it rests on an assumed figure.
    """

    kg: float
    on: str = ""
    pieces: int = 1
    plates: tuple[Plate, ...] = ()
    where: str = ""
    pin_kg: float | None = None
    add_ons_kg: tuple[float, ...] = ()
    dumbbell_kg: float | None = None
    doubt_kg: float = 0.0
    estimated: bool = False

    @property
    def side(self) -> tuple[float, ...]:
        """The sleeve stack in kg, innermost first."""
        return tuple(plate.mass_kg for plate in self.plates)

    @property
    def label(self) -> str:
        """What to hang or select, in words."""
        if self.dumbbell_kg is not None:
            return f"{'two of' if self.pieces == 2 else 'one of'} {self.dumbbell_kg:g} kg"
        if self.pin_kg is not None:
            added = " + ".join(f"{kg:g}" for kg in self.add_ons_kg)
            return f"pin at {self.pin_kg:g} kg" + (f", {added} kg on top" if added else "")
        if self.plates:
            return " + ".join(p.label or f"{p.mass_kg:g}" for p in self.plates) + f" {self.where}"
        return f"nothing {self.where}".rstrip()


@dataclass(frozen=True, slots=True, eq=False)
class LoadTable:
    """All loads that one thing can make, strictly rising; `grains` are their masses in grains."""

    loads: tuple[Load, ...]
    grains: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Aim:
    """A wished load in kg, and the bound that the load chosen must not pass."""

    kg: float
    upper_kg: float | None = None


@dataclass(frozen=True, slots=True)
class Fit:
    """The load nearest to a wish.

    `off_kg` is load less wish. `below` and `above` are the nearest loads truly lighter and truly
    heavier than the wish, within the upper bound; None where there is none.
    """

    load: Load
    off_kg: float
    below: Load | None
    above: Load | None


def table_of(loads: Sequence[Load], thing: str) -> LoadTable:
    """Sort loads into a table; of equal loads the first given stays. Raises LoadError on none."""
    if not loads:
        raise LoadError(thing, "empty", "something that can be loaded or selected")
    first: dict[int, Load] = {}
    for load in loads:
        first.setdefault(grains(load.kg), load)
    rising = sorted(first)
    return LoadTable(tuple(first[g] for g in rising), tuple(rising))


def nearest(table: LoadTable, target_kg: float, upper_kg: float | None = None) -> Fit:
    """The load nearest to `target_kg`, the lighter of two as near, none above `upper_kg`.

    Raises LoadError where the wish is no mass or the bound is below the lightest load.
    """
    target = grains(not_negative("wished load in kg", target_kg))
    end = _end(table, upper_kg)
    at = bisect_left(table.grains, target, 0, end)
    row = _nearer(table.grains, target, at, end)
    over = at + 1 if at < end and table.grains[at] == target else at
    return Fit(
        table.loads[row],
        kilograms(table.grains[row] - target),
        table.loads[at - 1] if at else None,
        table.loads[over] if over < end else None,
    )


def nearest_many(
    table: LoadTable, targets_kg: Sequence[float], upper_kg: float | None = None
) -> tuple[Load, ...]:
    """`nearest` for many wishes under one bound, such as the 41 notches around a set."""
    end = _end(table, upper_kg)
    rising = table.grains
    targets = [grains(not_negative("wished load in kg", kg)) for kg in targets_kg]
    return tuple(
        table.loads[_nearer(rising, target, bisect_left(rising, target, 0, end), end)]
        for target in targets
    )


def below(table: LoadTable, kg: float) -> Load | None:
    """The heaviest load truly lighter than `kg`."""
    at = bisect_left(table.grains, grains(not_negative("load in kg", kg)))
    return table.loads[at - 1] if at else None


def above(table: LoadTable, kg: float) -> Load | None:
    """The lightest load truly heavier than `kg`."""
    at = bisect_right(table.grains, grains(not_negative("load in kg", kg)))
    return table.loads[at] if at < len(table.loads) else None


def _end(table: LoadTable, upper_kg: float | None) -> int:
    if upper_kg is None:
        return len(table.grains)
    lightest = table.loads[0].kg
    end = bisect_right(table.grains, grains(upper_kg)) if isfinite(upper_kg) else 0
    if not end:
        raise LoadError("upper bound in kg", upper_kg, f"at least {lightest:g}, the lightest load")
    return end


def _nearer(rising: Sequence[int], target: int, at: int, end: int) -> int:
    if at == 0:
        return 0
    if at == end or target - rising[at - 1] <= rising[at] - target:
        return at - 1
    return at
