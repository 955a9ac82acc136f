"""What each thing in a kit can load, all in one kind of table.

Bars and handles come from their plates, dumbbells as they are, stacks as what the hand feels, the
body with a belt or with help. Look a load up with `loads.nearest`.
"""

from collections import Counter
from collections.abc import Sequence
from itertools import product

from undercroft.domain.errors import LoadError, positive, whole
from undercroft.domain.kit import Bar, Dumbbell, DumbbellHandle, Kit, Plate, Stack
from undercroft.domain.loads import Load, LoadTable, grains, kilograms, table_of
from undercroft.domain.mechanics.pulley import (
    STANDARD_GRAVITY,
    force_doubt_share,
    lifting_force_n,
    lowering_force_n,
)
from undercroft.domain.plates import PlateTable, loadable
from undercroft.domain.sleeves import Sleeves, handle_sleeves, landmine_sleeve

DEFAULT_SHEAVE_DOUBT = 0.02
"""One standard deviation of an efficiency that nobody measured: our own choice."""

SCALE_DOUBT = 0.01
"""Share of the force that a hanging scale leaves open: our own choice."""

BELT_ROOM_M = 0.30
"""Room for plates on a belt's chain: common practice."""

MOST_ADD_ONS = 10


def barbell(bar: Bar, plates: tuple[Plate, ...]) -> PlateTable:
    """A bar of any kind, its own mass and collars counted."""
    return loadable(bar, plates)


def landmine(bar: Bar, plates: tuple[Plate, ...]) -> PlateTable:
    """Masses on the free sleeve of a bar in a landmine; what the hand feels is the lever's."""
    return loadable(landmine_sleeve(bar), plates)


def loadable_dumbbells(handle: DumbbellHandle, plates: tuple[Plate, ...], pair: bool) -> PlateTable:
    """One loadable handle, or two loaded alike; `kg` is one of them."""
    return loadable(handle_sleeves(handle, pair), plates)


def fixed_dumbbells(dumbbells: Sequence[Dumbbell], pair: bool) -> LoadTable:
    """Fixed dumbbells, of which there must be two alike for a pair; `kg` is one of them."""
    pieces = 2 if pair else 1
    standing: Counter[float] = Counter()
    for dumbbell in dumbbells:
        mass = positive("dumbbell mass in kg", dumbbell.mass_kg)
        standing[mass] += whole(f"number of dumbbells of {mass:g} kg", dumbbell.count)
    enough = [mass for mass, count in standing.items() if count >= pieces]
    thing = "pairs of dumbbells" if pair else "dumbbells"
    return table_of([Load(kg=m, pieces=pieces, dumbbell_kg=m) for m in enough], thing)


def dumbbells(kit: Kit, pair: bool) -> LoadTable:
    """All dumbbells of a kit, fixed and loadable; of equal ones the fixed, as nothing is hung.

    A plan of handlings needs the table of one handle: `loadable_dumbbells`.
    """
    pieces = 2 if pair else 1
    fixed = [d for d in kit.dumbbells if d.count >= pieces]
    handles = [handle for handle in kit.handles if handle.count >= pieces]
    loads = list(fixed_dumbbells(kit.dumbbells, pair).loads) if fixed else []
    for handle in handles:
        loads += loadable_dumbbells(handle, kit.plates, pair).loads
    return table_of(loads, "pairs of dumbbells" if pair else "dumbbells")


def stack(of: Stack, in_hand: bool = True) -> LoadTable:
    """A weight stack: every pin with every set of add-ons, fewest add-ons for equal masses.

    `kg` is the lifting force at the handle over g or, with `in_hand` False, the mass chosen.
    """
    if not in_hand:
        return table_of(_chosen(of), f"{of.key}: pins")
    return table_of([_at_the_hand(of, load) for load in _chosen(of)], f"{of.key}: pins")


def body(body_kg: float, plates: tuple[Plate, ...]) -> PlateTable:
    """The body with plates on a belt; `kg` is both together."""
    mass = positive("body mass in kg", body_kg)
    belt = Sleeves("", mass, 1, BELT_ROOM_M, where="on the belt", bare="on the belt")
    return loadable(belt, plates)


def assisted_body(body_kg: float, of: Stack) -> LoadTable:
    """The body less what a stack bears of it; `kg` is what is left to lift.

    The stack sinks while the body rises, so it helps with its lowering force.
    """
    mass = positive("body mass in kg", body_kg)
    share = _doubt_share(of)
    loads = []
    for load in _chosen(of):
        borne = lowering_force_n(*_cable(of, load.kg)) / STANDARD_GRAVITY
        if borne < mass:
            loads.append(_felt(of, load, mass - borne, borne * share))
    return table_of(loads, f"{of.key}: pins lighter than the body")


def _chosen(of: Stack) -> list[Load]:
    """Every mass that pin and add-ons make, as what to choose; equal masses by fewest add-ons."""
    if len(of.add_ons_kg) > MOST_ADD_ONS:
        raise LoadError(f"{of.key}: add-ons", len(of.add_ons_kg), f"{MOST_ADD_ONS} or fewer")
    pins = [positive(f"{of.key}: pin in kg", pin) for pin in of.pins_kg]
    pieces = sorted((positive(f"{of.key}: add-on in kg", a) for a in of.add_ons_kg), reverse=True)
    chosen: dict[int, Load] = {}
    for pin, used in product(pins, product((False, True), repeat=len(pieces))):
        added = tuple(piece for piece, on in zip(pieces, used, strict=True) if on)
        mass = grains(pin) + sum(map(grains, added))
        if mass not in chosen or len(added) < len(chosen[mass].add_ons_kg):
            chosen[mass] = Load(kilograms(mass), on=of.key, pin_kg=pin, add_ons_kg=added)
    return list(chosen.values())


def _at_the_hand(of: Stack, load: Load) -> Load:
    kg = lifting_force_n(*_cable(of, load.kg)) / STANDARD_GRAVITY
    return _felt(of, load, kg, kg * _doubt_share(of))


def _felt(of: Stack, load: Load, kg: float, doubt_kg: float) -> Load:
    return Load(
        kg=kg,
        on=of.key,
        pin_kg=load.pin_kg,
        add_ons_kg=load.add_ons_kg,
        doubt_kg=doubt_kg,
        estimated=not of.efficiency_measured and of.sheaves > 0,
    )


def _cable(of: Stack, mass_kg: float) -> tuple[float, float, int, float]:
    return mass_kg, of.travel_ratio, of.sheaves, of.sheave_efficiency


def _doubt_share(of: Stack) -> float:
    if of.efficiency_measured:
        return SCALE_DOUBT
    return force_doubt_share(of.sheaves, of.sheave_efficiency, DEFAULT_SHEAVE_DOUBT)
