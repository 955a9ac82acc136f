"""Stacks for the notches around a set, given what hangs on the bar already."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.domain.plates.kits import CELLAR, CELLAR_BAR, bars, kits

from undercroft.domain.errors import LoadError
from undercroft.domain.following import loads_after
from undercroft.domain.handling import handlings_between
from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import nearest, nearest_many
from undercroft.domain.plates import alternatives, loadable


def test_a_notch_up_hangs_a_plate_on_what_is_there() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    standing = nearest(table, 60).load.plates
    lighter, same, heavier = loads_after(table, standing, [50, 60, 70])
    assert (lighter.side, same.side, heavier.side) == ((15,), (20,), (20, 5))


def test_an_inner_plate_stays_where_the_heavier_load_has_it_too() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    (load,) = loads_after(table, nearest(table, 55).load.plates, [95])
    assert nearest(table, 55).load.side == (15, 2.5)
    assert load.side == (15, 2.5, 20)


def test_no_notch_passes_the_bound() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    loads = loads_after(table, (), [100 * 1.01**notch for notch in range(-20, 21)], upper_kg=104)
    assert max(load.kg for load in loads) == 103.5


def test_a_plate_from_another_kit_is_refused() -> None:
    with pytest.raises(LoadError, match=r"standing plate: is 7\.0; should be a plate of"):
        loads_after(loadable(CELLAR_BAR, CELLAR), [Plate(7.0, 1, 0.02)], [60])


def test_in_a_gym_with_too_many_stacks_a_load_keeps_its_own() -> None:
    table = loadable(CELLAR_BAR, tuple(Plate(0.5 + 1.25 * n, 8, 0.012) for n in range(12)))
    heavy = table.loads[-1]
    assert loads_after(table, (), [heavy.kg]) == (heavy,)


@given(bars, kits, st.integers(20, 160), st.lists(st.integers(20, 160), min_size=1, max_size=5))
@settings(deadline=None)
def test_the_loads_are_the_nearest_and_no_other_stack_is_fewer_handlings_away(
    bar: Bar, kit: tuple[Plate, ...], before: int, wishes: list[int]
) -> None:
    table = loadable(bar, kit)
    standing = nearest(table, before).load.plates
    loads = loads_after(table, standing, wishes)
    plain = nearest_many(table, wishes)
    assert [load.kg for load in loads] == [load.kg for load in plain]
    for load, own in zip(loads, plain, strict=True):
        away = handlings_between(standing, load.plates)
        assert sorted(load.side) in [
            sorted(p.mass_kg for p in stack) for stack in alternatives(table, own, 100, most=10**6)
        ]
        assert away <= min(
            len(standing) + len(stack) - 2 * could_stay(standing, stack)
            for stack in alternatives(table, own, 100, most=10**6)
        )


def could_stay(standing: tuple[Plate, ...], stack: tuple[Plate, ...]) -> int:
    """How many plates may stay if the others are hung in the best order."""
    left = list(stack)
    for kept, plate in enumerate(standing):
        if plate not in left:
            return kept
        left.remove(plate)
    return len(standing)
