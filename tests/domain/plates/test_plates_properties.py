"""What holds for any bar with any plates."""

import pytest
from hypothesis import assume, given, settings
from tests.domain.plates.kits import bars, kits, stacks_by_hand, targets

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import KG_PER_LB, nearest
from undercroft.domain.plates import loadable


@given(bars, kits)
def test_the_table_is_every_load_with_its_fewest_plates(bar: Bar, kit: tuple[Plate, ...]) -> None:
    table = loadable(bar, kit)
    found = {round(load.kg, 6): len(load.plates) for load in table.loads}
    assert found == stacks_by_hand(bar, kit)


@given(bars, kits, targets)
def test_no_load_is_nearer_and_none_as_near_is_lighter(
    bar: Bar, kit: tuple[Plate, ...], target: float
) -> None:
    table = loadable(bar, kit)
    fit = nearest(table, target)
    nearest_by_hand = min(table.loads, key=lambda load: (round(abs(load.kg - target), 6), load.kg))
    assert fit.load == nearest_by_hand
    assert fit.off_kg == pytest.approx(fit.load.kg - target, abs=1e-9)


@given(bars, kits, targets, targets)
def test_no_load_is_above_the_bound(
    bar: Bar, kit: tuple[Plate, ...], target: float, upper: float
) -> None:
    assume(upper >= bar.mass_kg)
    fit = nearest(loadable(bar, kit), target, upper)
    assert fit.load.kg <= upper
    assert fit.above is None or fit.above.kg <= upper


@given(bars, kits)
def test_halfway_between_two_loads_the_lighter_is_taken(bar: Bar, kit: tuple[Plate, ...]) -> None:
    table = loadable(bar, kit)
    for lighter, heavier in zip(table.loads, table.loads[1:], strict=False):
        assert nearest(table, (lighter.kg + heavier.kg) / 2).load is lighter


@given(bars, kits, kits, targets)
def test_more_plates_never_make_a_load_worse(
    bar: Bar, kit: tuple[Plate, ...], more: tuple[Plate, ...], target: float
) -> None:
    with_few = abs(nearest(loadable(bar, kit), target).off_kg)
    with_more = abs(nearest(loadable(bar, kit + more), target).off_kg)
    assert with_more <= with_few


@given(bars, kits)
def test_both_sides_carry_the_same_out_of_the_plates_that_are_there(
    bar: Bar, kit: tuple[Plate, ...]
) -> None:
    owned = {plate.mass_kg: plate.count for plate in kit}
    for load in loadable(bar, kit).loads:
        side = load.side
        assert all(2 * side.count(mass) <= owned[mass] for mass in side)
        collars = 2 * bar.collar_mass_kg if side else 0
        assert load.kg == pytest.approx(bar.mass_kg + collars + 2 * sum(side), abs=1e-9)
        assert list(side) == sorted(side, reverse=True)


@given(bars, kits, targets)
@settings(max_examples=60)
def test_the_stack_does_not_depend_on_the_unit(
    bar: Bar, kit: tuple[Plate, ...], target: float
) -> None:
    """The same figures read as pounds give the same plates."""
    rated = None if bar.rated_load_kg is None else bar.rated_load_kg * KG_PER_LB
    in_pounds = Bar(
        "bar",
        "Bar",
        bar.mass_kg * KG_PER_LB,
        sleeve_length_m=bar.sleeve_length_m,
        rated_load_kg=rated,
        collar_mass_kg=bar.collar_mass_kg * KG_PER_LB,
    )
    plates = tuple(Plate(p.mass_kg * KG_PER_LB, p.count, p.thickness_m) for p in kit)
    kilograms = nearest(loadable(bar, kit), target).load
    pounds = nearest(loadable(in_pounds, plates), target * KG_PER_LB).load
    assert [p.mass_kg for p in pounds.plates] == [m * KG_PER_LB for m in kilograms.side]


@given(bars, kits)
def test_of_a_lighter_and_a_heavier_wish_the_heavier_never_gets_less(
    bar: Bar, kit: tuple[Plate, ...]
) -> None:
    table = loadable(bar, kit)
    loads = [nearest(table, wish / 2).load.kg for wish in range(0, 400, 3)]
    assert loads == sorted(loads)
