"""A bar on two supports: when it turns over."""

from math import inf

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.domain.mechanics.things import plate

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Bar
from undercroft.domain.mechanics.tipping import (
    BARE,
    Resting,
    SideLoad,
    brink,
    fixed,
    hung,
    limit_kg,
    margin,
    seated,
    sleeve_end_m,
    support_forces_kg,
    together,
)
from undercroft.domain.program.methods import Side

STEEL = Resting(20.0, 1.10)
OSCILLATING = Resting(8.0, 1.10)

PLACES = (0.655, 0.685, 0.715, 0.745, 0.775, 1.08)
LIMITS = {
    (20, 1.05): (80.8, 65.6, 55.3, 47.7, 42.0, 18.9),
    (20, 1.10): (104.8, 81.5, 66.7, 56.4, 48.9, 20.8),
    (20, 1.15): (143.7, 104.5, 82.1, 67.6, 57.5, 22.8),
    (20, 1.20): (218.2, 141.2, 104.3, 82.8, 68.6, 25.0),
    (15, 1.10): (78.6, 61.1, 50.0, 42.3, 36.7, 15.6),
    (8, 1.05): (32.3, 26.2, 22.1, 19.1, 16.8, 7.6),
    (8, 1.10): (41.9, 32.6, 26.7, 22.6, 19.6, 8.3),
    (8, 1.20): (87.3, 56.5, 41.7, 33.1, 27.4, 10.0),
}
"""kg that tip a bar (kg) on supports (m) with the other side bare, by the load's place in m: worked
out by another hand. 20 kg, 1.10 m, 0.715 m: 66.7; 20 kg, 1.20 m, 0.655 m: 218.2."""


@pytest.mark.parametrize("bar", LIMITS)
def test_what_tips_a_bar_with_its_other_side_bare(bar: tuple[float, float]) -> None:
    found = [limit_kg(Resting(*bar), place) for place in PLACES]
    assert found == pytest.approx(LIMITS[bar], abs=0.06)


@pytest.mark.parametrize(
    ("resting", "mass", "place", "far", "near"),
    [
        (STEEL, 40.0, 0.745, 2.91, 57.09),
        (STEEL, 60.0, 0.775, -2.27, 82.27),
        (OSCILLATING, 20.0, 0.715, 1.00, 27.00),
    ],
)
def test_forces_on_the_supports(
    resting: Resting, mass: float, place: float, far: float, near: float
) -> None:
    """Two thick 20 kg plates hold, three flip the bar, one flips an 8 kg bar all but 1 kgf."""
    found = support_forces_kg(resting, BARE, fixed(mass, place))
    assert found == pytest.approx((far, near), abs=0.01)


def test_one_plate_on_the_light_bar_holds_and_is_warned_of() -> None:
    assert 1.33 < margin(OSCILLATING, BARE, fixed(20.0, 0.715)) < 2


def test_a_load_hung_far_out_tips_the_light_bar() -> None:
    """12.6 kg at 0.90 m."""
    assert limit_kg(OSCILLATING, 0.90) == pytest.approx(12.6, abs=0.05)


def test_a_plate_left_on_the_other_side_holds_the_bar() -> None:
    """186 kg at 0.745 m with one 20 kg plate at 0.715 m on the left."""
    assert limit_kg(STEEL, 0.745, fixed(20.0, 0.715)) == pytest.approx(186, abs=0.5)


@pytest.mark.parametrize("place", [0.0, 0.50, 0.55])
def test_within_the_supports_nothing_tips_it(place: float) -> None:
    assert limit_kg(STEEL, place) == inf
    assert margin(STEEL, BARE, fixed(500.0, place)) == inf


def test_three_thin_plates_stand_on_the_edge() -> None:
    """Three of 3 cm centre at 0.73 m: limit 61.1 against 60 kg."""
    load = together(seated([plate(20.0, 0.03)] * 3))
    assert load.outer_m == pytest.approx(0.73)
    assert margin(STEEL, BARE, load) == pytest.approx(61.1 / 60, abs=0.001)


def test_a_plate_about_to_leave_the_sleeve_is_at_1_08_m() -> None:
    assert sleeve_end_m(Bar("b", "b", 20.0)) == pytest.approx(1.08)
    assert limit_kg(STEEL, 1.08) == pytest.approx(20.8, abs=0.05)


def test_hanging_plates_count_where_they_can_swing_to() -> None:
    """Outermost where they tip the bar, innermost where they hold it."""
    bar = Bar("b", "b", 8.0, sleeve_length_m=0.30)
    load = together(hung(bar, [plate(10.0)]))
    assert (load.inner_m, load.outer_m) == pytest.approx((0.685, 0.965))
    assert margin(OSCILLATING, BARE, load) == pytest.approx(8 * 1.1 / (2 * 0.965 - 1.1) / 10)
    assert limit_kg(OSCILLATING, 0.715, load) == limit_kg(OSCILLATING, 0.715, fixed(10.0, 0.685))
    assert margin(OSCILLATING, load, load) < margin(OSCILLATING, fixed(10, 0.685), fixed(10, 0.685))


def test_a_bar_that_may_slide_along_its_supports_tips_sooner() -> None:
    """Slid 2 cm to the loaded side, moments about that support: 8 × 0.53 / (0.735 - 0.55)."""
    sliding = Resting(8.0, 1.10, shift_m=0.02)
    assert limit_kg(sliding, 0.715) == pytest.approx(8 * 0.53 / 0.185)
    assert limit_kg(sliding, 0.715) < limit_kg(OSCILLATING, 0.715)


LOADS = st.builds(fixed, st.floats(0.1, 120), st.floats(0.2, 1.2))
RESTING = st.builds(Resting, st.floats(5, 30), st.floats(0.4, 1.3))


@given(RESTING, LOADS, LOADS)
def test_support_forces_balance_weight_and_moment(
    resting: Resting, left: SideLoad, right: SideLoad
) -> None:
    """Against the two equations of statics, solved by numpy."""
    half = resting.spacing_m / 2
    weight = resting.bar_kg + left.mass_kg + right.mass_kg
    moment = right.mass_kg * right.outer_m - left.mass_kg * left.outer_m
    solved = np.linalg.solve([[1.0, 1.0], [-half, half]], [weight, moment])
    assert support_forces_kg(resting, left, right) == pytest.approx(solved.tolist(), abs=1e-6)


@given(RESTING, LOADS, LOADS)
def test_left_and_right_are_alike(resting: Resting, left: SideLoad, right: SideLoad) -> None:
    assert margin(resting, left, right) == margin(resting, right, left)
    assert support_forces_kg(resting, left, right) == support_forces_kg(resting, right, left)[::-1]


@given(RESTING, LOADS, LOADS)
def test_the_bar_turns_over_just_where_the_margin_is_1(
    resting: Resting, left: SideLoad, right: SideLoad
) -> None:
    at = brink(resting, left, right)
    least = min(support_forces_kg(resting, left, right))
    if abs(at.margin - 1) > 1e-9:
        assert (at.margin > 1) == (least > 0)
    if at.margin < inf:
        assert at.limit_kg == pytest.approx(at.margin * at.load_kg)


@given(RESTING, LOADS, st.floats(1.01, 2.0))
def test_more_on_the_heavy_side_is_less_margin(
    resting: Resting, load: SideLoad, times: float
) -> None:
    heavier = fixed(load.mass_kg * times, load.outer_m)
    assert margin(resting, BARE, heavier) <= margin(resting, BARE, load)


@given(RESTING, LOADS, LOADS, st.floats(0.1, 10))
def test_pounds_and_inches_give_the_same_margin(
    resting: Resting, left: SideLoad, right: SideLoad, unit: float
) -> None:
    scaled = Resting(resting.bar_kg * unit, resting.spacing_m / 0.0254)

    def other(load: SideLoad) -> SideLoad:
        return fixed(load.mass_kg * unit, load.outer_m / 0.0254)

    ours = margin(resting, left, right)
    theirs = margin(scaled, other(left), other(right))
    assert theirs == pytest.approx(ours, rel=1e-6) or min(ours, theirs) > 1e9


def test_the_side_that_tips_is_named() -> None:
    assert brink(STEEL, fixed(40, 0.745), fixed(20, 0.715)).side is Side.LEFT
    assert brink(STEEL, fixed(20, 0.715), fixed(40, 0.745)).side is Side.RIGHT


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Resting(-20.0, 1.1), "mass of the bar in kg: is -20"),
        (lambda: Resting(20.0, 0.0), "distance between the supports in m: is 0"),
        (lambda: Resting(20.0, float("nan")), "distance between the supports in m: is nan"),
        (lambda: Resting(20.0, 1.0, 0.5), r"play of the bar in m: is 0\.5; should be below 0\.5"),
        (lambda: fixed(float("nan"), 0.7), "load of a side in kg: is nan"),
        (lambda: fixed(20.0, -0.7), "distance of a load from the middle in m: is -0.7"),
        (lambda: SideLoad(20.0, 0.9, 0.7), "outermost place of a load in m: is 0.7"),
        (lambda: limit_kg(STEEL, float("nan")), "distance of a load from the middle in m: is nan"),
        (lambda: sleeve_end_m(Bar("b", "b", 20.0, sleeve_length_m=-1)), "b: sleeve length in m"),
    ],
)
def test_what_cannot_be_is_refused(make: object, message: str) -> None:
    assert callable(make)
    with pytest.raises(LoadError, match=message):
        make()
