"""Cables over pulleys, against statics worked out by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics.pulley import (
    STANDARD_GRAVITY,
    force_doubt_share,
    lifting_force_n,
    lowering_force_n,
)

cables = st.tuples(st.floats(0.1, 300), st.floats(0.25, 4), st.integers(0, 8), st.floats(0.5, 1.0))


@pytest.mark.parametrize(
    ("stack_kg", "ratio", "sheaves", "efficiency", "up_kgf", "down_kgf"),
    [
        (50, 1, 3, 0.98, 53.1, 47.1),
        (50, 1, 3, 0.95, 58.3, 42.9),
        (50, 2, 4, 0.98, 27.1, 23.1),
        (80, 2, 4, 0.97, 45.2, 35.4),
        (100, 4, 5, 0.98, 27.7, 22.6),
    ],
)
def test_lifting_and_lowering_forces(
    stack_kg: float, ratio: float, sheaves: int, efficiency: float, up_kgf: float, down_kgf: float
) -> None:
    """Worked out from W / (R e^n) and W e^n / R, rounded to 0.1 kgf."""
    cable = (stack_kg, ratio, sheaves, efficiency)
    assert lifting_force_n(*cable) / STANDARD_GRAVITY == pytest.approx(up_kgf, abs=0.05)
    assert lowering_force_n(*cable) / STANDARD_GRAVITY == pytest.approx(down_kgf, abs=0.05)


def test_a_two_to_one_cable_over_four_good_sheaves() -> None:
    """Check value: 27.10 up, 23.06 down, within 0.02 kgf."""
    cable = (50.0, 2.0, 4, 0.98)
    assert lifting_force_n(*cable) == pytest.approx(27.10 * 9.80665, abs=0.2)
    assert lowering_force_n(*cable) == pytest.approx(23.06 * 9.80665, abs=0.2)


def test_a_cable_without_friction_conserves_work() -> None:
    """Hand force times hand travel is stack weight times stack travel."""
    travel_m, ratio = 0.4, 2.0
    work_j = lifting_force_n(60.0, ratio, 3, 1.0) * travel_m * ratio
    assert work_j == pytest.approx(60.0 * STANDARD_GRAVITY * travel_m)


@given(cables)
def test_lowering_never_takes_more_than_lifting_and_their_ratio_is_the_loss_both_ways(
    cable: tuple[float, float, int, float],
) -> None:
    up, down = lifting_force_n(*cable), lowering_force_n(*cable)
    _, _, sheaves, efficiency = cable
    assert down <= up
    assert down / up == pytest.approx(efficiency ** (2 * sheaves))


@given(cables, st.floats(0.0001, 0.001))
def test_the_doubt_is_that_of_a_slightly_different_efficiency(
    cable: tuple[float, float, int, float], doubt: float
) -> None:
    stack_kg, ratio, sheaves, efficiency = cable
    worse = lifting_force_n(stack_kg, ratio, sheaves, efficiency - doubt)
    moved = worse / lifting_force_n(*cable) - 1
    assert force_doubt_share(sheaves, efficiency, doubt) == pytest.approx(moved, rel=0.02)


@pytest.mark.parametrize(
    ("cable", "message"),
    [
        ((-1.0, 1.0, 2, 0.98), "stack mass in kg: is -1.0; should be 0 or a number above 0"),
        ((float("nan"), 1.0, 2, 0.98), "stack mass in kg: is nan"),
        ((50.0, 0.0, 2, 0.98), "travel ratio, hand over stack: is 0.0; should be a number above 0"),
        ((50.0, 1.0, -1, 0.98), "number of sheaves: is -1; should be a whole number from 0 up"),
        ((50.0, 1.0, True, 0.98), "number of sheaves: is True"),
        ((50.0, 1.0, 2, 98.0), "sheave efficiency: is 98.0; should be a share above 0 and up to 1"),
        ((50.0, 1.0, 2, float("nan")), "sheave efficiency: is nan"),
    ],
)
def test_a_cable_that_cannot_be_is_refused(
    cable: tuple[float, float, int, float], message: str
) -> None:
    for force in (lifting_force_n, lowering_force_n):
        with pytest.raises(LoadError, match=message):
            force(*cable)


def test_a_doubt_below_nothing_is_refused() -> None:
    with pytest.raises(LoadError, match=r"doubt of the sheave efficiency: is -0\.1"):
        force_doubt_share(2, 0.98, -0.1)
