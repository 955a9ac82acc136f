"""From a wish at a point of the lift to bar and plates, and shares of it."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics.curve import Curve, Part, curve_of, force_at_n, hanging, plus
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.target import rig_kg, still_kg, total_kg, wanted_kg
from undercroft.domain.program.rig import ShareBase
from undercroft.domain.program.wish import Point


def line(start_kg: float, end_kg: float) -> Curve:
    """A rig that rises on a straight line."""
    way = (end_kg - start_kg) * STANDARD_GRAVITY
    force = Part("bands", lambda s: start_kg * STANDARD_GRAVITY + way * s, np.zeros_like)
    return curve_of((force,), 0.5)


@pytest.mark.parametrize(
    ("point", "plates", "start", "mean", "end"),
    [
        (Point.LOCKOUT, 120, 128, 139, 150),
        (Point.MEAN, 131, 139, 150, 161),
        (Point.START, 142, 150, 161, 172),
        (Point.BAR, 150, 158, 169, 180),
    ],
)
def test_the_point_moves_the_plates_by_22_kg(
    point: Point, plates: float, start: float, mean: float, end: float
) -> None:
    """150 kg wished, the rig gives 8 to 30: worked out by hand, exact."""
    rig = line(8, 30)
    assert still_kg(150, point, rig) == pytest.approx(plates)
    found = plus(rig, hanging("bar and plates", plates))
    for where, kg in ((Point.START, start), (Point.MEAN, mean), (Point.LOCKOUT, end)):
        assert force_at_n(found, where) / STANDARD_GRAVITY == pytest.approx(kg)


@given(st.floats(60, 300), st.floats(0, 20), st.floats(0, 40), st.sampled_from(list(Point)))
def test_from_wish_to_plates_and_back(wish: float, low: float, more: float, point: Point) -> None:
    rig = line(low, low + more)
    assert total_kg(still_kg(wish, point, rig), point, rig) == pytest.approx(wish)


@given(st.floats(60, 300), st.floats(0, 50), st.sampled_from(list(Point)))
def test_a_heavier_wish_is_heavier_by_as_much_on_the_bar(
    wish: float, more: float, point: Point
) -> None:
    rig = line(5, 30)
    assert still_kg(wish + more, point, rig) - still_kg(wish, point, rig) == pytest.approx(more)


def test_chains_of_a_fifth_at_the_top_of_85_per_cent() -> None:
    """1RM 180 kg, 85 %, chains 19.9 % of it at the top (Nijem et al. 2016, seen): 153.0 kg in all,
    30.4 of chain, 122.6 of bar and plates."""
    total = 0.85 * 180
    chains = wanted_kg(19.9, ShareBase.LOAD, total)
    assert (total, chains) == pytest.approx((153.0, 30.4), abs=0.1)
    assert still_kg(total, Point.LOCKOUT, line(5, chains)) == pytest.approx(122.6, abs=0.1)


def test_bands_of_a_fifth_of_a_light_squat() -> None:
    """1RM 150 kg, 55 %, bands 20 % of that (Stevenson et al. 2010, seen): 82.5 and 16.5 kg."""
    assert wanted_kg(20, ShareBase.LOAD, 0.55 * 150) == pytest.approx(16.5)
    assert pytest.approx(82.5) == 0.55 * 150


def test_a_share_of_the_maximum_on_top_of_the_bar() -> None:
    """Plates 55 % and bands 29.7 % of 1RM at the top against 85 % (a handball study, seen)."""
    bands = wanted_kg(29.7, ShareBase.MAXIMUM, 55.0, maximum_kg=100.0)
    assert total_kg(55.0, Point.LOCKOUT, line(0, bands)) == pytest.approx(84.7)
    assert total_kg(55.0, Point.LOCKOUT, line(0, bands)) == pytest.approx(85, abs=0.5)


def test_a_rig_that_helps_makes_room_for_more_plates() -> None:
    assert rig_kg(line(-12, -2), Point.START) == pytest.approx(-12)
    assert still_kg(100, Point.START, line(-12, -2)) == pytest.approx(112)


def test_where_the_bare_bar_is_too_heavy_the_wish_is_refused() -> None:
    with pytest.raises(
        LoadError,
        match=r"wished load in kg at lockout: is 45; should be 50\.0 or more: the bare bar weighs"
        r" 20 kg and the rig gives 30\.0 kg there",
    ):
        still_kg(45, Point.LOCKOUT, line(8, 30), least_kg=20)
    assert still_kg(50, Point.LOCKOUT, line(8, 30), least_kg=20) == pytest.approx(20)


@pytest.mark.parametrize("wish", [0.0, -10.0, float("nan"), float("inf")])
def test_a_wish_that_is_no_load_is_refused(wish: float) -> None:
    with pytest.raises(LoadError, match="wished load in kg"):
        still_kg(wish, Point.BAR, line(8, 30))


@pytest.mark.parametrize("share", [0.0, -5.0, 100.0, float("nan")])
def test_a_share_of_nothing_or_of_all_is_refused(share: float) -> None:
    with pytest.raises(LoadError, match=r"share of the rig in %: is .*; should be a number"):
        wanted_kg(share, ShareBase.LOAD, 100)


def test_a_share_of_a_maximum_that_nobody_knows_is_refused() -> None:
    with pytest.raises(LoadError, match="a maximum for the lift, or a share of the day's load"):
        wanted_kg(20, ShareBase.MAXIMUM, 100)
