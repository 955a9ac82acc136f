"""Chains that leave the floor link by link."""

from math import pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.domain.mechanics.things import ENDS, PULL

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Chain
from undercroft.domain.mechanics.chain import (
    DIN_766_KG_PER_M,
    HungChain,
    lies_still,
    lifted_kg,
    mass_per_m,
    part_of,
)
from undercroft.domain.mechanics.curve import curve_of, work_j
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.program.rig import Route

HEAVY = Chain("heavy", "heavy chain", length_m=1.6, mass_per_m_kg=5.8)

SUPPLIER = {
    6: (18.5, 21.6, 0.80), 8: (24, 28.8, 1.40), 10: (30, 36, 2.25), 13: (36, 47, 3.90),
    16: (45, 58, 5.80),
}  # fmt: skip
"""Link diameter: pitch and width in mm and kg/m of a supplier's table to DIN 766 (seen)."""


def link_kg_per_m(d: float, pitch: float, width: float) -> float:
    """A link's mass from its geometry, steel at 7850 kg/m³: two straights and two half circles."""
    centre_line = 2 * (pitch + d - (width - d)) + pi * (width - d)
    volume_mm3 = centre_line * pi * d**2 / 4
    return 7850e-9 * volume_mm3 / (pitch * 1e-3)


def of_diameter(mm: float) -> Chain:
    return Chain("c", "c", 1.6, diameter_mm=mm)


def test_a_13_mm_chain_to_din_766() -> None:
    """3.90 kg/m in the supplier's table (seen); 3.96 by the links' geometry."""
    assert mass_per_m(of_diameter(13))[0] == pytest.approx(3.90, rel=0.02)
    assert link_kg_per_m(13, 36, 47) == pytest.approx(3.96, abs=0.01)


@pytest.mark.parametrize("mm", SUPPLIER)
def test_the_table_is_within_4_per_cent_of_the_links_geometry(mm: int) -> None:
    pitch, width, listed = SUPPLIER[mm]
    assert mass_per_m(of_diameter(mm))[0] == listed
    assert listed == pytest.approx(link_kg_per_m(mm, pitch, width), rel=0.04)


@pytest.mark.parametrize("mm", DIN_766_KG_PER_M)
def test_0_0225_times_the_square_is_within_5_per_cent_of_every_row(mm: float) -> None:
    """5.76 against 5.80 at 16 mm; used for diameters that the table does not have."""
    near = mass_per_m(of_diameter(mm + 1e-6))[0]
    assert near == pytest.approx(0.0225 * mm**2, rel=1e-5)
    assert near == pytest.approx(DIN_766_KG_PER_M[mm], rel=0.05)


def test_a_weighed_chain_is_believed_and_doubted_least() -> None:
    weighed = Chain("c", "c", 1.6, mass_per_m_kg=4.1, diameter_mm=13)
    assert mass_per_m(weighed) == (4.1, 0.01)
    assert mass_per_m(of_diameter(13))[1] < mass_per_m(of_diameter(11))[1]


@pytest.mark.parametrize(
    ("route", "model", "study"), [(Route.SINGLE, 39.4, (36, 42)), (Route.DOUBLED, 78.7, (78, 89))]
)
def test_how_much_of_a_chain_lies_down_at_the_bottom_of_a_squat(
    route: Route, model: float, study: tuple[float, float]
) -> None:
    """Measured 36-42 % straight and 78-89 % doubled (Neelly et al. 2010, seen). A chain of 1.524 m
    just clear of the floor when standing and 0.60 m of travel are assumed."""
    chain = Chain("c", "c", length_m=1.524, mass_per_m_kg=6.3)
    top = 1.524 if route is Route.SINGLE else 0.762
    bottom, standing = lifted_kg(HungChain(chain, route), np.array([top - 0.60, top]))
    unloaded = 100 * (1 - bottom / standing)
    assert unloaded == pytest.approx(model, abs=0.1)
    assert study[0] <= unloaded <= study[1]


@pytest.mark.parametrize(
    ("route", "start", "end"), [(Route.SINGLE, 2.61, 8.41), (Route.DOUBLED, 5.22, 16.82)]
)
def test_two_heavy_chains_on_a_pull_from_the_floor(route: Route, start: float, end: float) -> None:
    """Two chains of 5.8 kg/m and 1.6 m, bar from 0.225 to 0.725 m; worked out, within 0.01 kg."""
    found = lifted_kg(HungChain(HEAVY, route), PULL.height_m(ENDS))
    assert found == pytest.approx([start, end], abs=0.01)


def test_a_leader_keeps_the_chain_down_longer() -> None:
    hung = HungChain(HEAVY, number=1, leader_m=0.3)
    assert lifted_kg(hung, np.array([0.2, 0.3, 0.8])) == pytest.approx([0.0, 0.0, 0.5 * 5.8])


def test_a_straight_chain_shorter_than_the_start_height_changes_nothing() -> None:
    short = Chain("s", "s", length_m=0.8, mass_per_m_kg=5.8)
    assert lies_still(HungChain(short), Path(0.82, 0.6))
    assert not lies_still(HungChain(HEAVY), Path(0.82, 0.6))
    assert lies_still(HungChain(HEAVY, leader_m=1.5), Path(0.82, 0.6))


@settings(max_examples=50)
@given(
    st.floats(0.5, 3), st.floats(0.0, 1.0), st.floats(0.05, 1.2), st.floats(0.0, 0.8),
    st.sampled_from([Route.SINGLE, Route.DOUBLED]),
)  # fmt: skip
def test_work_against_a_chain_is_the_height_that_its_links_gain(
    length: float, start: float, way: float, leader: float, route: Route
) -> None:
    """Conservation of energy, link by link: each of 2,000 pieces hangs where the rest lets it."""
    chain = Chain("c", "c", length_m=length, mass_per_m_kg=3.0)
    path = Path(start, way)
    work = work_j(curve_of((part_of(HungChain(chain, route, 2, leader), path),), way))
    strands = 1 if route is Route.SINGLE else 2
    along = (np.arange(2000) + 0.5) / 2000 * length / strands
    energy = [
        2 * 3.0 * STANDARD_GRAVITY * length
        * np.mean(np.maximum(height - leader - along, 0.0))
        for height in (path.start_m, path.end_m)
    ]  # fmt: skip
    assert work == pytest.approx(energy[1] - energy[0], rel=1e-3, abs=1e-3)


@pytest.mark.parametrize(
    ("hung", "message"),
    [
        (HungChain(Chain("c", "c", 1.6)), "c: mass per metre in kg: is unknown"),
        (HungChain(Chain("c", "c", 1.6, mass_per_m_kg=-1)), "c: mass per metre in kg: is -1"),
        (HungChain(Chain("c", "c", 0.0, diameter_mm=13)), "c: length in m: is 0.0"),
        (HungChain(of_diameter(float("nan"))), "c: diameter of the links in mm: is nan"),
        (HungChain(HEAVY, leader_m=-0.1), "heavy: leader in m: is -0.1"),
        (HungChain(HEAVY, number=0), "heavy: number of chains: is 0"),
        (HungChain(HEAVY, Route.CHOKED), "heavy: route of a chain: is choked; should be single or"),
    ],
)
def test_a_chain_that_cannot_be_is_refused(hung: HungChain, message: str) -> None:
    with pytest.raises(LoadError, match=message):
        part_of(hung, PULL)
