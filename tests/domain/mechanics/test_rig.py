"""From band, anchor and route to the force on the bar."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from tests.domain.mechanics.things import BEAM, ENDS, PEG, PEGS, PULL, kgf, true_law

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Anchor
from undercroft.domain.mechanics.band import tension_n
from undercroft.domain.mechanics.curve import curve_of, work_j
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.rig import (
    HungBand,
    flat_length_m,
    left_and_right_n,
    part_of,
    pull,
)
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.methods import Side
from undercroft.domain.program.rig import Route


def along_kgf(hung: HungBand, height_m: float) -> float:
    """Force on the bar at a height, in kgf against a lift upwards."""
    return kgf(float(pull(hung, Path(height_m, 0.1), np.zeros(1)).along_n[0]))


def test_a_single_loop_is_slack_for_a_whole_pull_from_the_floor() -> None:
    hung = HungBand(true_law(), Anchor("a", "a", height_m=0.05), Route.SINGLE)
    assert pull(hung, PULL, np.linspace(0, 1, 11)).along_n.tolist() == [0.0] * 11


@pytest.mark.parametrize(
    ("offset", "height", "stretch", "upward"),
    [
        (0.45, 0.225, 0.93, 0.0), (0.45, 0.45, 1.16, 5.41), (0.45, 0.725, 1.56, 17.2),
        (0.55, 0.225, 1.11, 1.81), (0.55, 0.45, 1.31, 8.07), (0.55, 0.725, 1.67, 17.99),
        (0.65, 0.225, 1.29, 3.45), (0.65, 0.45, 1.47, 9.62), (0.65, 0.725, 1.80, 18.6),
    ],
)  # fmt: skip
def test_an_inverted_v_over_the_sleeve(
    offset: float, height: float, stretch: float, upward: float
) -> None:
    """One 29 mm loop, pegs 5 cm high; worked out by another hand, within 0.05 kgf."""
    hung = HungBand(true_law(), Anchor("p", "p", 0.05, offset), Route.INVERTED_V)
    flat = flat_length_m(hung, Path(height, 0.1), np.zeros(1))[0]
    assert flat / 1.04 == pytest.approx(stretch, abs=0.006)
    assert along_kgf(hung, height) == pytest.approx(upward, abs=0.05)


def test_the_inverted_v_of_the_check_values() -> None:
    """Pegs at ±0.55 m, bar at 0.225 and 0.725 m: 1.81 and 17.99 kgf, within 0.03."""
    hung = HungBand(true_law(), PEGS, Route.INVERTED_V)
    assert along_kgf(hung, 0.225) == pytest.approx(1.81, abs=0.03)
    assert along_kgf(hung, 0.725) == pytest.approx(17.99, abs=0.03)


def test_an_inverted_v_gives_ten_times_more_at_lockout_though_its_tension_rises_fourfold() -> None:
    hung = HungBand(true_law(), PEGS, Route.INVERTED_V)
    along = pull(hung, PULL, ENDS).along_n
    tension = tension_n(hung.law, flat_length_m(hung, PULL, ENDS))
    assert along[1] / along[0] == pytest.approx(9.9, abs=0.1)
    assert tension[1] / tension[0] == pytest.approx(3.9, abs=0.1)


@pytest.mark.parametrize(
    ("height", "wide", "narrow"), [(0.80, 14.9, 6.7), (1.00, 24.4, 10.9), (1.20, 31.4, 14.1)]
)
def test_a_doubled_loop_under_a_bench(height: float, wide: float, narrow: float) -> None:
    """29 and 13 mm loops round a peg at 0.10 m; worked out by another hand."""
    assert along_kgf(HungBand(true_law(29), PEG, Route.DOUBLED), height) == pytest.approx(
        wide, abs=0.06
    )
    assert along_kgf(HungBand(true_law(13), PEG, Route.DOUBLED), height) == pytest.approx(
        narrow, abs=0.06
    )


@pytest.mark.parametrize(
    ("offset", "upward", "aside"),
    [(0.0, 5.87, 0.0), (0.1, 5.92, 0.46), (0.2, 6.06, 0.93), (0.3, 6.28, 1.45), (0.4, 6.55, 2.02)],
)
def test_a_slanted_single_loop_pulls_harder_and_sideways(
    offset: float, upward: float, aside: float
) -> None:
    """29 mm, 1.30 m above its anchor; worked out by another hand, within 0.02 kgf."""
    hung = HungBand(true_law(), Anchor("a", "a", 0.0, offset), Route.SINGLE)
    found = pull(hung, Path(1.30, 0.1), np.zeros(1))
    assert kgf(float(found.along_n[0])) == pytest.approx(upward, abs=0.02)
    assert kgf(float(found.sideways_n[0])) == pytest.approx(aside, abs=0.02)


def test_looping_a_band_through_itself_uses_some_of_it_up() -> None:
    single = HungBand(true_law(), PEG, Route.SINGLE)
    choked = HungBand(true_law(), PEG, Route.CHOKED)
    measured = HungBand(true_law(), Anchor("p", "p", 0.10, choke_m=0.25), Route.CHOKED)
    path = Path(1.0, 0.5)
    assert flat_length_m(choked, path, ENDS) - flat_length_m(single, path, ENDS) == pytest.approx(
        DEFAULT.choke_m
    )
    assert flat_length_m(measured, path, ENDS) - flat_length_m(single, path, ENDS) == pytest.approx(
        0.25
    )


def test_an_anchor_above_helps_a_lift_and_most_at_its_start() -> None:
    hung = HungBand(true_law(), BEAM, Route.SINGLE)
    along = pull(hung, Path(0.8, 0.6), ENDS).along_n
    assert along[0] < along[1] < 0


def test_an_anchor_above_resists_a_pulldown_and_most_at_its_end() -> None:
    hung = HungBand(true_law(), BEAM, Route.SINGLE)
    along = pull(hung, Path(1.4, 0.6, rises=False), ENDS).along_n
    assert 0 < along[0] < along[1]


ROUTED = st.tuples(
    st.sampled_from(list(Route)),
    st.floats(0.0, 0.4),
    st.floats(0.0, 0.8),
    st.floats(0.0, 1.0),
    st.floats(0.2, 0.7),
)


@settings(max_examples=60)
@given(ROUTED)
def test_work_against_a_band_is_what_it_stores(
    drawn: tuple[Route, float, float, float, float],
) -> None:
    """Conservation of energy: the integral of tension over flat length, by scipy."""
    route, low, offset, start, way = drawn
    hung = HungBand(true_law(), Anchor("a", "a", low, offset), route)
    path = Path(low + start, way)
    first, last = flat_length_m(hung, path, ENDS).tolist()
    assume(last < hung.law.most_m)
    stored = quad(
        lambda at: float(tension_n(hung.law, np.array(at))), first, last,
        points=[hung.law.rest_m] if first < hung.law.rest_m < last else None,
    )[0]  # fmt: skip
    work = work_j(curve_of((part_of(hung, path),), way))
    assert work == pytest.approx(stored, rel=1e-6, abs=1e-9)


@settings(max_examples=40)
@given(ROUTED)
def test_left_and_right_are_alike_for_bands_alike(
    drawn: tuple[Route, float, float, float, float],
) -> None:
    route, low, offset, start, way = drawn
    anchor, path = Anchor("a", "a", low, offset), Path(low + start, way)
    pair = [HungBand(true_law(), anchor, route, side) for side in (Side.LEFT, Side.RIGHT)]
    assume(flat_length_m(pair[0], path, ENDS).max() < pair[0].law.most_m)
    left, right = left_and_right_n(pair, path, ENDS)
    assert left.tolist() == right.tolist()
    turned = left_and_right_n(pair[::-1], path, ENDS)
    assert [one.tolist() for one in turned] == [left.tolist(), right.tolist()]


def test_a_band_in_the_middle_gives_half_to_each_side() -> None:
    hung = HungBand(true_law(), BEAM, Route.SINGLE)
    path = Path(1.4, 0.6, rises=False)
    left, right = left_and_right_n([hung], path, ENDS)
    assert (left + right).tolist() == pull(hung, path, ENDS).along_n.tolist()
    assert left.tolist() == right.tolist()


def test_a_band_that_would_be_stretched_too_far_is_refused() -> None:
    hung = HungBand(true_law(key="thin"), PEG, Route.DOUBLED)
    with pytest.raises(LoadError, match=r"thin: stretched length in m: is 3; should be 2\.6 or le"):
        part_of(hung, Path(1.0, 0.6))


@pytest.mark.parametrize(
    ("anchor", "message"),
    [
        (Anchor("post", "post", -0.1), "post: height in m: is -0.1"),
        (Anchor("post", "post", float("nan")), "post: height in m: is nan"),
        (Anchor("post", "post", 0.1, -0.2), "post: offset in m: is -0.2"),
    ],
)
def test_an_anchor_that_cannot_be_is_refused(anchor: Anchor, message: str) -> None:
    with pytest.raises(LoadError, match=message):
        part_of(HungBand(true_law(), anchor, Route.SINGLE), PULL)


def test_a_bar_level_with_its_anchor_is_not_pulled_up_or_down() -> None:
    hung = HungBand(true_law(), Anchor("a", "a", 0.5, 1.2), Route.SINGLE)
    assert pull(hung, Path(0.5, 0.3), np.zeros(1)).along_n[0] == 0
    touching = HungBand(true_law(), Anchor("a", "a", 0.5), Route.SINGLE)
    assert pull(touching, Path(0.5, 0.3), np.zeros(1)).along_n[0] == 0
