"""The force curve as a sum of parts."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from tests.domain.mechanics.test_chain import HEAVY
from tests.domain.mechanics.things import PEGS, PULL, band, true_law

from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics.band import band_law
from undercroft.domain.mechanics.chain import HungChain
from undercroft.domain.mechanics.chain import part_of as chain_part
from undercroft.domain.mechanics.curve import (
    Curve,
    Part,
    curve_of,
    doubt_at_n,
    force_at_n,
    force_n,
    hanging,
    mean_n,
    plus,
    share_at,
    varying,
    work_j,
)
from undercroft.domain.mechanics.drawing import on_sheet
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rig import HungBand, part_of
from undercroft.domain.program.rig import Route
from undercroft.domain.program.wish import Point


def v_of(*readings_m: float, key: str = "band") -> Part:
    """A 29 mm band in an inverted V on the platform."""
    law = band_law(band(29.0, *readings_m, key=key))
    return part_of(HungBand(law, PEGS, Route.INVERTED_V), PULL)


def curve(*parts: Part) -> Curve:
    return curve_of(parts, PULL.range_m)


def straight(start_n: float, end_n: float) -> Part:
    return Part("line", lambda s: start_n + (end_n - start_n) * s, np.zeros_like)


WHOLE = curve(
    hanging("bar and plates", 60.0),
    v_of(1.3, 1.5, 1.7, 1.9),
    v_of(1.9, key="other"),
    chain_part(HungChain(HEAVY, leader_m=0.3), PULL),
)


@pytest.mark.parametrize(
    "one",
    [
        WHOLE,
        curve(v_of(1.9)),
        curve(v_of(1.2, 1.4, 1.5, 1.65, 1.8)),
        curve(chain_part(HungChain(HEAVY, Route.DOUBLED, leader_m=0.4), PULL)),
        curve(part_of(HungBand(true_law(), PEGS, Route.CHOKED), PULL), straight(5, 90)),
    ],
)
def test_mean_and_work_are_those_of_scipy_within_0_1_per_cent(one: Curve) -> None:
    whole = quad(lambda s: float(force_n(one, np.array(s))), 0, 1, limit=200)[0]
    assert mean_n(one) == pytest.approx(whole, rel=1e-3, abs=1e-6)
    assert work_j(one) == pytest.approx(whole * PULL.range_m, rel=1e-3, abs=1e-6)


def test_the_parts_add_up() -> None:
    s = np.linspace(0, 1, 9)
    apart = sum(force_n(Curve((part,), PULL.range_m), s) for part in WHOLE.parts)
    assert force_n(WHOLE, s) == pytest.approx(apart)


def test_start_and_lockout_are_the_ends_of_the_curve_and_the_bar_is_what_stays() -> None:
    ends = force_n(WHOLE, np.array([0.0, 1.0]))
    assert force_at_n(WHOLE, Point.START) == ends[0]
    assert force_at_n(WHOLE, Point.LOCKOUT) == ends[1]
    assert force_at_n(WHOLE, Point.BAR) == 60.0 * STANDARD_GRAVITY


def test_the_share_of_the_rig_at_a_point() -> None:
    line = curve(hanging("bar", 120.0), straight(8 * STANDARD_GRAVITY, 30 * STANDARD_GRAVITY))
    assert share_at(line, Point.LOCKOUT) == pytest.approx(30 / 150)
    assert share_at(line, Point.START) == pytest.approx(8 / 128)
    assert share_at(line, Point.MEAN) == pytest.approx(19 / 139)
    assert share_at(line, Point.BAR) == 0.0


def test_doubts_of_measured_parts_add_as_the_root_of_summed_squares() -> None:
    parts = (v_of(1.9, key="a"), v_of(1.9, key="b"), hanging("bar", 60.0, doubt_kg=0.5))
    alone = [doubt_at_n(curve(part), Point.LOCKOUT) for part in parts]
    together = doubt_at_n(curve(*parts), Point.LOCKOUT)
    assert together == pytest.approx(float(np.linalg.norm(alone)))


def test_doubts_of_bands_that_nobody_measured_go_the_same_way() -> None:
    """They rest on one assumption, so a pair is as doubtful as one band: 20 %."""
    pair = curve(v_of(key="a"), v_of(key="b"))
    doubt = doubt_at_n(pair, Point.LOCKOUT)
    assert doubt / force_at_n(pair, Point.LOCKOUT) == pytest.approx(0.20)


def test_doubt_on_the_bar_alone_leaves_the_bands_out() -> None:
    assert doubt_at_n(curve(v_of(), hanging("bar", 60.0, 0.5)), Point.BAR) == pytest.approx(
        0.5 * STANDARD_GRAVITY
    )


@settings(max_examples=40)
@given(st.floats(0, 300), st.floats(0, 50))
def test_a_heavier_bar_is_heavier_everywhere_by_as_much(kg: float, more: float) -> None:
    lift = curve(v_of(1.9))
    light, heavy = plus(lift, hanging("bar", kg)), plus(lift, hanging("bar", kg + more))
    for point in (Point.START, Point.MEAN, Point.LOCKOUT):
        gap = force_at_n(heavy, point) - force_at_n(light, point)
        assert gap == pytest.approx(more * STANDARD_GRAVITY, abs=1e-9)


def test_bands_alone_are_what_varies() -> None:
    assert [part.name for part in varying(WHOLE).parts] == ["band", "other", "heavy chain"]


def test_on_the_sheet_the_curve_is_in_kg() -> None:
    drawn = on_sheet(WHOLE)
    assert len(drawn.points_kg) == 11
    assert drawn.points_kg[0] == drawn.start_kg
    assert drawn.points_kg[-1] == drawn.end_kg
    assert drawn.start_kg == pytest.approx(force_at_n(WHOLE, Point.START) / 9.80665, abs=0.005)
    assert drawn.mean_kg == pytest.approx(mean_n(WHOLE) / 9.80665, abs=0.005)
    assert drawn.doubt_kg == pytest.approx(doubt_at_n(WHOLE, Point.LOCKOUT) / 9.80665, abs=0.005)


@pytest.mark.parametrize("place", [-0.01, 1.01, float("nan")])
def test_there_is_no_force_outside_the_lift(place: float) -> None:
    with pytest.raises(LoadError, match=r"place in the lift: is \[.*\]; should be numbers from 0"):
        force_n(WHOLE, np.array([place]))


@pytest.mark.parametrize("range_m", [0.0, -0.5, float("nan")])
def test_a_lift_without_a_range_is_refused(range_m: float) -> None:
    with pytest.raises(LoadError, match="range of the lift in m"):
        curve_of((hanging("bar", 20.0),), range_m)


def test_a_bar_lighter_than_nothing_is_refused() -> None:
    with pytest.raises(LoadError, match="bar and plates in kg: is -5"):
        hanging("bar and plates", -5)
