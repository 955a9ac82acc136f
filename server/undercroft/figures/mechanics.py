"""Chains, landmine, pulley, tipping, and what bands and chains leave for the plates."""

from functools import partial
from math import cos, degrees, inf, radians

import numpy as np

from undercroft.domain.kit import Bar, Chain
from undercroft.domain.mechanics import (
    STANDARD_GRAVITY,
    Curve,
    Lever,
    Resting,
    SideLoad,
    lifting_force_n,
    limit_kg,
    lowering_force_n,
    still_kg,
    straight_up_n,
    support_forces_kg,
    wanted_kg,
)
from undercroft.domain.mechanics.chain import HungChain, lifted_kg, mass_per_m
from undercroft.domain.mechanics.curve import Part
from undercroft.domain.mechanics.landmine import angle_rad
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.mechanics.tipping import BARE, fixed, sleeve_end_m, together
from undercroft.domain.program.rig import Route, ShareBase
from undercroft.domain.program.wish import Point
from undercroft.figures.row import Mark, Row

STATICS = "statics"
MOMENTS = "moments about the supports"


def per_metre(diameter_mm: float) -> float:
    return mass_per_m(Chain("c", "chain", 1.0, diameter_mm=diameter_mm))[0]


def two_chains_kg(route: Route, height_m: float) -> float:
    """Two chains of 5.8 kg/m and 1.6 m with the bar at a height."""
    hung = HungChain(Chain("c", "chain", 1.6, mass_per_m_kg=5.8), route)
    return float(lifted_kg(hung, np.array(height_m)))


def unloaded_percent(route: Route) -> float:
    """Of a 1.524 m chain just clear of the floor when standing, after a drop of 0.60 m."""
    hung = HungChain(Chain("c", "chain", 1.524, mass_per_m_kg=5.8), route)
    clear = 1.524 if route is Route.SINGLE else 0.762
    up, down = lifted_kg(hung, np.array([clear, clear - 0.60])).tolist()
    return float(100 * (1 - down / up))


LEVER = Lever(20.0, 1.10, 1.815, 2.17, 0.05)


def landmine_kg(of: Lever, plates_kg: float, degrees_up: float | None = None) -> float:
    """Straight up, or square to the bar at an angle, in kg."""
    up = straight_up_n(of, plates_kg * of.face_m) / STANDARD_GRAVITY
    return up if degrees_up is None else up * cos(radians(degrees_up))


def left_support(bar_kg: float, right_kg: float, at_m: float) -> float:
    return support_forces_kg(Resting(bar_kg, 1.10), BARE, fixed(right_kg, at_m))[0]


def twenties(count: int) -> SideLoad:
    """So many plates of 20 kg, their middles 0.685, 0.740, 0.795 m from the bar's middle."""
    return together([fixed(20.0, 0.685 + 0.055 * place) for place in range(count)])


def beside_twenties(count: int) -> float:
    """What the far support of a 20 kg bar bears, in kg."""
    return support_forces_kg(Resting(20, 1.10), BARE, twenties(count))[0]


def cable_kg(up: bool) -> float:
    given = 50.0, 2.0, 4, 0.98
    return (lifting_force_n(*given) if up else lowering_force_n(*given)) / STANDARD_GRAVITY


RISING = Curve(
    (Part("rig", lambda s: (8 + 22 * s) * STANDARD_GRAVITY, lambda s: 0.0 * s),), range_m=1.0
)
"""A straight 8 to 30 kg from start to lockout."""

CHAINS = (
    Row("chains", "13 mm, kg/m", "link diameter", 3.90, lambda: per_metre(13), 0.0,
        "a supplier's table to DIN 766", Mark.SEEN),
    Row("chains", "13 mm by its links' geometry, kg/m", "13, 36, 47 mm", 3.96,
        lambda: per_metre(13), 0.02 * 3.96, "steel of 7850 kg/m³", Mark.DERIVED),
    Row("chains", "0.0225 d² at 16 mm, kg/m", "table 5.80", 5.80,
        lambda: DEFAULT.chain_per_square * 16**2, 0.05 * 5.80,
        "a supplier's table to DIN 766", Mark.SEEN),
    Row("chains", "straight, % unloaded at the bottom", "1.524 m, 0.60 m drop", 39.0,
        lambda: unloaded_percent(Route.SINGLE), 3.0, "Neelly et al. 2010: 36-42", Mark.SEEN),
    Row("chains", "doubled, % unloaded at the bottom", "1.524 m, 0.60 m drop", 83.5,
        lambda: unloaded_percent(Route.DOUBLED), 5.5, "Neelly et al. 2010: 78-89", Mark.SEEN),
    *(
        Row("chains", f"two of 5.8 kg/m, {route.value}, kg", f"bar at {height} m", expected,
            partial(two_chains_kg, route, height), 0.01, "mass off the floor", Mark.DERIVED)
        for route, height, expected in (
            (Route.SINGLE, 0.225, 2.61), (Route.SINGLE, 0.725, 8.41),
            (Route.DOUBLED, 0.225, 5.22), (Route.DOUBLED, 0.725, 16.82),
        )
    ),
)  # fmt: skip

TARGETS = (
    *(
        Row("rig and plates", f"plates for 150 kg {words}", "rig 8 to 30 kg", expected,
            partial(still_kg, 150, point, RISING), 1e-6, "W = T - V", Mark.DERIVED)
        for point, words, expected in (
            (Point.LOCKOUT, "at lockout", 120.0),
            (Point.MEAN, "over the mean", 131.0),
            (Point.START, "at the start", 142.0),
        )
    ),
    Row("rig and plates", "chains of 19.9 % at the top, kg", "85 % of 180 kg", 30.4,
        lambda: wanted_kg(19.9, ShareBase.LOAD, 0.85 * 180), 0.1, "Nijem et al. 2016", Mark.SEEN),
    Row("rig and plates", "bands of 20 % of the load, kg", "55 % of 150 kg", 16.5,
        lambda: wanted_kg(20, ShareBase.LOAD, 82.5), 1e-6, "Stevenson et al. 2010", Mark.SEEN),
    Row("rig and plates", "plates of 55 % and bands of 29.7 % of the maximum", "% of 100 kg", 85.0,
        lambda: 55 + wanted_kg(29.7, ShareBase.MAXIMUM, 55, 100), 0.5,
        "a study in handball compares it with 85 %", Mark.SEEN),
)  # fmt: skip

LANDMINE = (
    Row("landmine", "20 kg bar and 20 kg, straight up, kg", "1.10, 1.815, 2.17 m", 26.87,
        lambda: landmine_kg(LEVER, 20), 0.02, STATICS, Mark.DERIVED),
    Row("landmine", "the same square to the bar, kg", "45°", 19.00,
        lambda: landmine_kg(LEVER, 20, 45), 0.02, STATICS, Mark.DERIVED),
    Row("landmine", "bare bar, kg", "0°", 10.14,
        lambda: landmine_kg(LEVER, 0, 0), 0.01, STATICS, Mark.DERIVED),
    Row("landmine", "angle, degrees", "hand 1.45 m, pivot 0.05 m", 40.2,
        lambda: degrees(angle_rad(LEVER, 1.45)), 0.1, STATICS, Mark.DERIVED),
    Row("landmine", "20 kg bar and 20 kg, kg", "1.1, 2.0, 2.15 m", 28.84,
        lambda: landmine_kg(Lever(20, 1.1, 2.0, 2.15), 20), 0.01, STATICS, Mark.DERIVED),
)  # fmt: skip

PULLEY = (
    Row("pulley", "50 kg lifted, kg in the hand", "R 2, 4 sheaves, 0.98", 27.10,
        lambda: cable_kg(up=True), 0.02, "W/(R eⁿ); 0.98 a sheave seen", Mark.DERIVED),
    Row("pulley", "50 kg lowered, kg in the hand", "R 2, 4 sheaves, 0.98", 23.06,
        lambda: cable_kg(up=False), 0.02, "W eⁿ/R; 0.98 a sheave seen", Mark.DERIVED),
)  # fmt: skip

TIPPING = (
    *(
        Row("tipping", f"limit of a {bar} kg bar, kg", f"s {s}, d {d} m, other side bare", expected,
            partial(limit_kg, Resting(bar, s), d), within, MOMENTS, Mark.DERIVED)
        for bar, s, d, expected, within in (
            (20, 1.10, 0.715, 66.7, 0.1), (20, 1.20, 0.655, 218.2, 0.2),
            (20, 1.10, 0.745, 56.4, 0.1), (20, 1.10, 0.775, 48.9, 0.1),
            (20, 1.10, 1.08, 20.8, 0.1), (8, 1.10, 0.715, 26.7, 0.1),
            (3, 1.00, 0.90, 3.75, 0.01), (20, 1.10, 0.50, inf, 0.0),
        )
    ),
    *(
        Row("tipping", f"far support of a {bar} kg bar, kg", f"{kg} kg at {d} m, s 1.10", expected,
            partial(left_support, bar, kg, d), 0.01, MOMENTS, Mark.DERIVED)
        for bar, kg, d, expected in (
            (20, 40, 0.745, 2.91), (20, 60, 0.775, -2.27), (8, 20, 0.715, 1.00),
        )
    ),
    *(
        Row("tipping", f"{count} plates of 20 kg from 0.685 m out, far support, kg",
            "20 kg bar, s 1.10", expected,
            partial(beside_twenties, count),
            0.05, MOMENTS, Mark.DERIVED)
        for count, expected in ((2, 4.09), (3, -0.36))
    ),
    Row("tipping", "half a bar, m", "1310 mm, ring 30, sleeve 415", 1.10,
        lambda: DEFAULT.plate_face_m + 0.415, 1e-6, "bar figures of the federation", Mark.COPY),
    Row("tipping", "a plate being drawn off, m", "sleeve 415 mm", 1.08,
        lambda: sleeve_end_m(Bar("b", "bar", 20)), 0.001, "2 cm inside the end", Mark.DERIVED),
)  # fmt: skip
