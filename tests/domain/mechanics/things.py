"""Bands, anchors and paths of the worked examples, and what Hypothesis makes of them.

The worked examples take bands of Treloar's rubber as it is (k = 1), 4.5 mm thick and 1.04 m long
lying flat; sizes from memory. `true_band` gives one reading of that rubber, which makes the law
follow its shape with k = 1.
"""

import numpy as np
from hypothesis import strategies as st

from undercroft.domain.kit import Anchor, Band, BandReading, Kit, Plate
from undercroft.domain.mechanics.band import BandLaw, band_law
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rubber import section_mm2, stress_mpa

REST_M = 1.04
THICK_MM = 4.5
PULL = Path(0.225, 0.5)
"""A bar from the floor to lockout: 0.225 to 0.725 m."""
PEGS = Anchor("pegs", "pegs", height_m=0.05, offset_m=0.55)
PEG = Anchor("peg", "bench peg", height_m=0.10)
BEAM = Anchor("beam", "beam", height_m=2.6, sides=1)
ENDS = np.array([0.0, 1.0])


def tension_of_rubber(width_mm: float, length_m: float, rest_m: float = REST_M) -> float:
    """What a band of Treloar's rubber pulls, in N."""
    stress = stress_mpa(np.array(length_m / rest_m))
    return section_mm2(width_mm, THICK_MM) * float(stress)


def band(width_mm: float = 29.0, *lengths_m: float, key: str = "band", k: float = 1.0) -> Band:
    """A band of that rubber, times k, read at those lengths."""
    readings = tuple(BandReading(at, k * tension_of_rubber(width_mm, at)) for at in lengths_m)
    return Band(key, key, width_mm, THICK_MM, REST_M, readings)


def true_band(width_mm: float = 29.0, key: str = "band", k: float = 1.0) -> Band:
    """Read once, at its longest."""
    return band(width_mm, 2.55, key=key, k=k)


def true_law(width_mm: float = 29.0, key: str = "band") -> BandLaw:
    return band_law(true_band(width_mm, key))


def kgf(newtons: float) -> float:
    return newtons / STANDARD_GRAVITY


def plate(kg: float, thickness_m: float = 0.06) -> Plate:
    return Plate(kg, 2, thickness_m)


def cellar(*bands: Band, anchors: tuple[Anchor, ...] = (PEGS,)) -> Kit:
    """An invented cellar with these bands."""
    return Kit("cellar", "the cellar", bands=bands, anchors=anchors)


@st.composite
def bands(draw: st.DrawFn, most_readings: int = 6) -> Band:
    """Bands of rubber more or less like Treloar's, with rising readings."""
    rest = draw(st.floats(0.3, 1.5))
    width, thick = draw(st.floats(6, 100)), draw(st.floats(2, 7))
    count = draw(st.integers(0, most_readings))
    steps = draw(st.lists(st.floats(0.05, 0.25), min_size=count, max_size=count))
    stretches = 1.02 + np.cumsum(steps)
    scales = np.sort(draw(st.lists(st.floats(0.8, 1.5), min_size=count, max_size=count)))
    forces = scales * section_mm2(width, thick) * stress_mpa(stretches)
    readings = tuple(
        BandReading(float(rest * stretch), float(force))
        for stretch, force in zip(stretches, forces, strict=True)
    )
    return Band("any", "any band", width, thick, rest, readings)
