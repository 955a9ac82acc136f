"""Inputs for the desk's calculators, and what comes of them by sources from outside."""

import math
from typing import Any

LOOP_29 = {"width_mm": 29, "thickness_mm": 4.5, "rest_length_m": 1.04}
THIGH = {
    "basis": "equation",
    "limb": "thigh",
    "width_mm": 180,
    "material": "nylon",
    "percent": 50,
    "thigh_cm": 55,
    "systolic": 120,
    "age": 23,
    "sex": "male",
}
CELLAR = [
    {"mass_kg": kg, "count": 2 * each, "thickness_m": 0.02}
    for kg, each in ((20, 1), (15, 1), (10, 2), (5, 1), (2.5, 1), (1.25, 1))
]

CASES: tuple[tuple[str, dict[str, Any], dict[str, float], float, str], ...] = (
    # key, inputs, figures by name, tolerance, where the values come from
    (
        "band-force",
        {**LOOP_29, "width_mm": 13, "length_m": 1.56},
        {"Tension": 1.3 * 4.30},
        0.03,
        "rubber shape at 1.5 times the rest length, 4.30 kg for k = 1, derived",
    ),
    (
        "band-force",
        {**LOOP_29, "readings": [{"length_m": 1.56, "force_n": 94}], "length_m": 1.56},
        {"Tension": 94 / 9.80665},
        1e-6,
        "a law goes through its own reading",
    ),
    ("band-force", {**LOOP_29, "length_m": 0.675}, {"Tension": 0.0}, 0.0, "slack, derived"),
    (
        "landmine",
        {
            "bar_kg": 20,
            "bar_centre_m": 1.10,
            "plates_kg": 20,
            "plates_at_m": 1.815,
            "hand_m": 2.17,
            "hand_height_m": 2.17 * math.sin(math.radians(45)) + 0.05,
        },
        {"Straight up": 26.87, "Square to the bar": 19.00, "Angle of the bar to the floor": 45},
        0.02,
        "statics, derived",
    ),
    (
        "tipping",
        {"bar_kg": 20, "spacing_m": 1.10, "left_kg": 0, "left_at_m": 0, "right_kg": 40,
         "right_at_m": 0.745},
        {"Left support bears": 2.91, "Right support bears": 57.09},
        0.01,
        "moments, derived",
    ),
    (
        "tipping",
        {"bar_kg": 20, "spacing_m": 1.10, "left_kg": 60, "left_at_m": 0.775},
        {"Right support bears": -2.27, "Limit on the left": 48.9},
        0.02,
        "moments, derived",
    ),
    (
        "maximum-from-set",
        {"load_kg": 100, "reps": 5},
        {"Epley": 116.667, "Brzycki": 112.5, "Lombardi": 117.462, "Mayhew": 119.011},
        0.01,
        "Epley seen; the others seen in secondary copies",
    ),
    (
        "maximum-from-set",
        {"load_kg": 100, "reps": 5, "rir": 2},
        {"Handbook chart": 120.48},
        0.01,
        "83 % at 7 repetitions, seen",
    ),
    (
        "reps-at-load",
        {"load_kg": 85, "maximum_kg": 100},
        {"Repetitions to failure": 6, "Share": 85},
        1e-6,
        "85 % at 6 repetitions, seen",
    ),
    (
        "reps-at-load",
        {"load_kg": 75, "maximum_kg": 100, "curve": "epley"},
        {"Repetitions to failure": 10},
        1e-6,
        "75 % at 10 repetitions by Epley turned round, derived",
    ),
    (
        "cuff-pressure",
        THIGH,
        {
            "Limb occlusion pressure": 166.235,
            "Pressure": 83.1175,
            "95 % of such people, from": 136.27,
            "95 % of such people, to": 196.20,
        },
        0.01,
        "equation and standard error seen, band derived",
    ),
    (
        "cuff-pressure",
        {**{k: THIGH[k] for k in ("limb", "width_mm", "material", "percent", "systolic")},
         "basis": "padding", "girth_cm": 55, "factor": 0.8, "table": "our clinic's"},
        {"Limb occlusion pressure": 162.5},
        0.05,
        "Tuncali et al. 2006, formula seen",
    ),
    (
        "plates",
        {"bar_kg": 15, "plates": CELLAR, "target_kg": 92.5},
        {"Load": 92.5, "Off the target": 0, "Each side, plate 1 from the middle": 20,
         "Each side, plate 4 from the middle": 1.25},
        1e-9,
        "20 + 15 + 2.5 + 1.25 a side by integer programming",
    ),
    (
        "plates",
        {"bar_kg": 15, "plates": CELLAR, "target_kg": 93},
        {"Load": 92.5, "Off the target": -0.5, "Nearest lighter than the target": 92.5,
         "Nearest heavier than the target": 95},
        1e-9,
        "93 kg cannot be loaded, by integer programming",
    ),
    (
        "pulley",
        {"stack_kg": 50, "travel_ratio": 2, "sheaves": 4, "efficiency": 0.98},
        {"In the hand, lifting": 27.10, "In the hand, lowering": 23.06},
        0.02,
        "derived; 0.98 a sheave seen",
    ),
)  # fmt: skip
