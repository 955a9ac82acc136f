"""What bars, handles, dumbbells, stacks and the body can load."""

import pytest
from tests.domain.plates.kits import CELLAR, CELLAR_BAR

from undercroft.domain.errors import LoadError
from undercroft.domain.implements import (
    assisted_body,
    barbell,
    body,
    dumbbells,
    fixed_dumbbells,
    landmine,
    loadable_dumbbells,
    stack,
)
from undercroft.domain.kit import Bar, BarKind, Dumbbell, DumbbellHandle, Kit, Plate, Stack
from undercroft.domain.loads import nearest

HANDLE = DumbbellHandle("handle", "Short handle", 2.0, 2, collar_mass_kg=0.1)
TOWER = Stack("tower", "Cable tower", (10.0, 15.0, 20.0, 25.0), (2.5, 1.25))
CABLE = Stack("cable", "Two-to-one cable", (50.0,), travel_ratio=2.0, sheaves=4)


@pytest.mark.parametrize("kind", list(BarKind))
def test_a_bar_of_any_kind_is_loaded_from_its_own_mass(kind: BarKind) -> None:
    table = barbell(Bar("bar", "Bar", 8.0, kind), CELLAR)
    assert table.loads[0].kg == 8
    assert nearest(table, 18).load.side == (5,)


def test_a_landmine_counts_what_is_on_its_sleeve() -> None:
    load = nearest(landmine(CELLAR_BAR, CELLAR), 21).load
    assert (load.kg, load.side, load.label) == (21, (20, 0.5, 0.5), "20 + 0.5 + 0.5 on the sleeve")


def test_a_pair_of_handles_needs_each_plate_four_times() -> None:
    kit = (Plate(5.0, 4, 0.025), Plate(2.5, 2, 0.02))
    pair, single = (loadable_dumbbells(HANDLE, kit, pair) for pair in (True, False))
    assert [load.kg for load in pair.loads] == [2, 12.2]
    assert [load.kg for load in single.loads] == [2, 7.2, 12.2, 17.2, 22.2, 27.2]
    assert pair.loads[1].label == "5 on each end of both"
    assert pair.loads[1].pieces == 2


def test_one_handle_is_no_pair() -> None:
    lone = DumbbellHandle("handle", "Short handle", 2.0, 1)
    with pytest.raises(LoadError, match="handle: number of handles: is 1; should be 2 or more"):
        loadable_dumbbells(lone, CELLAR, pair=True)


def test_a_pair_of_fixed_dumbbells_wants_two_alike() -> None:
    rack = [Dumbbell(10.0, 2), Dumbbell(12.0, 1), Dumbbell(14.0, 1), Dumbbell(14.0, 1)]
    pairs, singles = (fixed_dumbbells(rack, pair) for pair in (True, False))
    assert [load.kg for load in pairs.loads] == [10, 14]
    assert [load.kg for load in singles.loads] == [10, 12, 14]
    assert (pairs.loads[0].label, singles.loads[0].label) == ("two of 10 kg", "one of 10 kg")


def test_a_kit_without_a_pair_says_so() -> None:
    with pytest.raises(LoadError, match="pairs of dumbbells: is empty; should be something that"):
        fixed_dumbbells([Dumbbell(12.0, 1)], pair=True)
    with pytest.raises(LoadError, match="pairs of dumbbells: is empty"):
        dumbbells(Kit("cellar", "Cellar"), pair=True)


def test_of_equal_dumbbells_the_fixed_ones_are_taken() -> None:
    plain = DumbbellHandle("handle", "Short handle", 2.0, 2)
    kit = Kit("k", "K", plates=CELLAR, dumbbells=(Dumbbell(12.0, 2),), handles=(plain,))
    twelve = nearest(dumbbells(kit, pair=True), 12).load
    twenty_two = nearest(dumbbells(kit, pair=True), 22).load
    assert twelve.dumbbell_kg == 12
    assert (twenty_two.dumbbell_kg, twenty_two.side, twenty_two.on) == (None, (10,), "handle")


def test_a_stack_makes_every_sum_of_pin_and_add_ons_with_the_fewest_pieces() -> None:
    table = stack(Stack("s", "S", (10.0, 15.0), (5.0, 2.5, 2.5)), in_hand=False)
    assert [load.kg for load in table.loads] == [10, 12.5, 15, 17.5, 20, 22.5, 25]
    assert nearest(table, 15).load.add_ons_kg == ()
    assert nearest(table, 20).load.add_ons_kg == (5,)
    assert nearest(table, 22.5).load.label == "pin at 15 kg, 5 + 2.5 kg on top"


def test_the_hand_feels_the_lifting_force_of_a_two_to_one_cable() -> None:
    """50 kg, ratio 2, four sheaves of 0.98: 27.10 kgf (worked out from statics)."""
    (load,) = stack(CABLE).loads
    assert load.kg == pytest.approx(27.10, abs=0.01)
    assert (load.pin_kg, load.label) == (50, "pin at 50 kg")


def test_a_cable_that_nobody_measured_is_marked_and_doubted_more() -> None:
    guessed = stack(CABLE).loads[0]
    measured = stack(
        Stack("cable", "Cable", (50.0,), travel_ratio=2.0, sheaves=4, efficiency_measured=True)
    ).loads[0]
    assert (guessed.estimated, measured.estimated) == (True, False)
    assert guessed.doubt_kg == pytest.approx(guessed.kg * 4 * 0.02 / 0.98)
    assert measured.doubt_kg == pytest.approx(0.01 * measured.kg)


def test_a_stack_without_pins_is_refused() -> None:
    with pytest.raises(LoadError, match="s: pins: is empty"):
        stack(Stack("s", "S", ()))


@pytest.mark.parametrize(
    ("broken", "message"),
    [
        (Stack("s", "S", (0.0,)), "s: pin in kg: is 0.0"),
        (Stack("s", "S", (10.0,), (-1.0,)), "s: add-on in kg: is -1.0"),
        (Stack("s", "S", (10.0,), travel_ratio=0.0), "travel ratio, hand over stack: is 0.0"),
        (Stack("s", "S", (10.0,), (1.0,) * 11), "s: add-ons: is 11; should be 10 or fewer"),
    ],
)
def test_a_stack_that_cannot_be_is_refused(broken: Stack, message: str) -> None:
    with pytest.raises(LoadError, match=message):
        stack(broken)


def test_the_body_carries_single_plates_on_a_belt() -> None:
    table = body(81.4, (Plate(10.0, 1, 0.03), Plate(2.5, 1, 0.02)))
    assert [load.kg for load in table.loads] == [81.4, 83.9, 91.4, 93.9]
    assert table.loads[-1].label == "10 + 2.5 on the belt"


def test_help_from_a_stack_is_its_lowering_force_and_never_lifts_the_body_whole() -> None:
    """As the body rises the stack sinks: 20 kg over two sheaves of 0.98 bear 20 · 0.98² kg."""
    table = assisted_body(19.5, Stack("tower", "Tower", (10.0, 20.0, 25.0)))
    assert [load.pin_kg for load in table.loads] == [20, 10]
    assert table.loads[0].kg == pytest.approx(19.5 - 20 * 0.98**2)
    assert table.loads[0].estimated


def test_a_tower_gives_its_next_step_on_either_side() -> None:
    fit = nearest(stack(TOWER, in_hand=False), 18)
    assert fit.below is not None
    assert fit.above is not None
    assert (fit.below.kg, fit.load.kg, fit.above.kg) == (17.5, 17.5, 18.75)
