"""Reference bands: the rubber shape, loops 4.5 mm thick and 1.04 m long lying flat, k = 1.

Their sizes are from memory; the tensions follow from the shape and are derived.
"""

from functools import partial

import numpy as np

from undercroft.domain.kit import Anchor, Band, BandReading
from undercroft.domain.mechanics import STANDARD_GRAVITY, BandLaw, Path, band_law
from undercroft.domain.mechanics.band import at_length_n
from undercroft.domain.mechanics.curve import curve_of, mean_n
from undercroft.domain.mechanics.rig import HungBand, part_of, pull
from undercroft.domain.mechanics.rubber import section_mm2, stress_mpa
from undercroft.domain.program.rig import Route
from undercroft.figures.row import REFUSED, Mark, Row

SUBJECT = "bands"
REST_M, THICK_MM = 1.04, 4.5
SHAPE = "rubber shape fitted to Treloar's data"
PULL = Path(0.225, 0.5)
PEGS = Anchor("pegs", "pegs", height_m=0.05, offset_m=0.55)
BENCH_PEG = Anchor("peg", "peg", height_m=0.10)


def stress(stretch: float, c1: float | None = None, c2: float = 0.0) -> float:
    """MPa, by our own constants or by others."""
    at = np.array(stretch)
    return float(stress_mpa(at) if c1 is None else stress_mpa(at, c1, c2))


def law(width_mm: float, rest_m: float = REST_M) -> BandLaw:
    """A loop of that rubber as it is, from one reading far out."""
    far = 2.45 * rest_m
    force = section_mm2(width_mm, THICK_MM) * stress(2.45)
    reading = BandReading(far, force)
    return band_law(Band("loop", "loop", width_mm, THICK_MM, rest_m, (reading,)))


def kg_at(width_mm: float, length_m: float, rest_m: float = REST_M) -> float:
    """Tension in kg at a flat length."""
    return at_length_n(law(width_mm, rest_m), length_m)[0] / STANDARD_GRAVITY


def longer_rest(longer: float, stretch: float) -> float:
    """Change of tension in % where the rest length is longer than was thought."""
    length = stretch * REST_M
    return 100 * (kg_at(29, length, REST_M * (1 + longer)) / kg_at(29, length) - 1)


def mean_kg(width_mm: float, low: float, high: float) -> float:
    """Mean over a straight pull between two stretches, anchored at the floor."""
    way = Path(low * REST_M, (high - low) * REST_M)
    floor = Anchor("floor", "floor", height_m=0.0)
    part = part_of(HungBand(law(width_mm), floor, Route.SINGLE), way)
    return mean_n(curve_of((part,), way.range_m)) / STANDARD_GRAVITY


def hung_kg(width_mm: float, anchor: Anchor, route: Route, height_m: float) -> tuple[float, float]:
    """Along the path and sideways, in kg, with the hands at a height."""
    way = Path(height_m, 0.01)
    found = pull(HungBand(law(width_mm), anchor, route), way, np.zeros(1))
    return (
        float(found.along_n[0]) / STANDARD_GRAVITY,
        float(found.sideways_n[0]) / STANDARD_GRAVITY,
    )


def doubled_kg(width_mm: float, height_m: float) -> float:
    """Along the path, doubled round a peg under a bench."""
    return hung_kg(width_mm, BENCH_PEG, Route.DOUBLED, height_m)[0]


ASIDE = Anchor("aside", "aside", height_m=0.0, offset_m=0.40)

ROWS = (
    Row(SUBJECT, "neo-Hookean stress, MPa", "G 0.5 MPa, λ 1.5", 0.5278,
        lambda: stress(1.5, 0.25), 0.0005, "physics", Mark.DERIVED),
    Row(SUBJECT, "neo-Hookean, 200 % over 100 % elongation", "λ 3 and 2", 1.651,
        lambda: stress(3, 0.25) / stress(2, 0.25), 0.001, "physics", Mark.DERIVED),
    Row(SUBJECT, "rubber shape, MPa", "λ 2", 0.553,
        lambda: stress(2), 0.001, SHAPE, Mark.DERIVED),
    Row(SUBJECT, "rubber shape against a measured stress, MPa", "λ 1.585", 0.408,
        lambda: stress(1.585), 0.04 * 0.408, "Treloar 1944", Mark.SEEN),
    Row(SUBJECT, "rubber shape against a measured stress, MPa", "λ 2.18", 0.588,
        lambda: stress(2.18), 0.05 * 0.588, "Treloar 1944", Mark.SEEN),
    Row(SUBJECT, "13 mm loop, kg", "λ 1.5", 4.30,
        lambda: kg_at(13, 1.5 * REST_M), 0.02, SHAPE, Mark.DERIVED),
    Row(SUBJECT, "loop of 1.04 m, kg", "0.675 m from its anchor", 0.0,
        lambda: kg_at(29, 0.675), 0.0, "slack below its rest length", Mark.DERIVED),
    Row(SUBJECT, "beyond 2.5 times the rest length", "2.7 m", REFUSED,
        lambda: kg_at(29, 2.7), 0.0, "Page and Ellenbecker 2003, cited", Mark.COPY),
    Row(SUBJECT, "rest length 3.5 % longer, change in %", "λ 1.5", -6.8,
        lambda: longer_rest(0.035, 1.5), 0.2, SHAPE, Mark.DERIVED),
    Row(SUBJECT, "rest length 5.2 % longer, change in %", "λ 1.3", -16.6,
        lambda: longer_rest(0.052, 1.3), 0.3, "McMaster et al. 2010 saw 8-19 %", Mark.SEEN),
    Row(SUBJECT, "13 mm loop, mean in kg", "λ 1.2 to 2.0", 4.70,
        lambda: mean_kg(13, 1.2, 2.0), 0.02, "quadrature", Mark.DERIVED),
    Row(SUBJECT, "29 mm in an inverted V, kg", "bar at 0.225 m", 1.81,
        lambda: hung_kg(29, PEGS, Route.INVERTED_V, 0.225)[0], 0.03, SHAPE, Mark.DERIVED),
    Row(SUBJECT, "29 mm in an inverted V, kg", "bar at 0.725 m", 17.99,
        lambda: hung_kg(29, PEGS, Route.INVERTED_V, 0.725)[0], 0.03, SHAPE, Mark.DERIVED),
    Row(SUBJECT, "29 mm single, 0.40 m aside, kg along", "1.30 m up", 6.55,
        lambda: hung_kg(29, ASIDE, Route.SINGLE, 1.30)[0], 0.02, SHAPE, Mark.DERIVED),
    Row(SUBJECT, "29 mm single, 0.40 m aside, kg sideways", "1.30 m up", 2.02,
        lambda: hung_kg(29, ASIDE, Route.SINGLE, 1.30)[1], 0.02, SHAPE, Mark.DERIVED),
    *(
        Row(SUBJECT, f"{width} mm doubled under a bench, kg", f"bar at {height:.2f} m", expected,
            partial(doubled_kg, width, height), 0.06, SHAPE,
            Mark.DERIVED)
        for width, height, expected in (
            (29, 0.80, 14.9), (29, 1.00, 24.4), (29, 1.20, 31.4),
            (13, 0.80, 6.7), (13, 1.00, 10.9), (13, 1.20, 14.1),
        )
    ),
)  # fmt: skip
