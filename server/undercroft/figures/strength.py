"""Maxima from sets, the reserve table, velocity."""

from functools import partial

from undercroft.domain.strength import (
    LoadVelocity,
    fit_line,
    one_rep_max,
    percent_of_maximum,
    share,
    share_for,
    velocity_loss,
)
from undercroft.domain.strength.maximum import equation, multiplier
from undercroft.figures.row import REFUSED, Mark, Row, Value

SUBJECT = "strength"
BOOK = "load chart of the NSCA's Essentials"

MAXIMA: tuple[tuple[str, float, float, Value, float, str, Mark], ...] = (
    ("epley", 100, 5, 116.667, 0.01, "Epley 1985, formula", Mark.SEEN),
    ("epley", 100, 10, 133.333, 0.01, "Epley 1985, formula", Mark.SEEN),
    ("epley", 225, 10, 299.25, 0.76, "a course's worked example, with 0.033 for 1/30", Mark.SEEN),
    ("brzycki", 100, 5, 112.5, 0.01, "Brzycki 1993", Mark.COPY),
    ("brzycki", 100, 10, 133.369, 0.04, "its form in decimals", Mark.COPY),
    ("brzycki", 100, 10, 133.333, 0.01, "equal to Epley's at ten", Mark.SEEN),
    ("lander", 100, 8, 125.109, 0.01, "Lander 1985", Mark.COPY),
    ("lombardi", 100, 5, 117.462, 0.01, "Lombardi 1989", Mark.COPY),
    ("mayhew", 100, 5, 119.011, 0.01, "Mayhew et al. 1992", Mark.COPY),
    ("oconner", 100, 8, 120.0, 0.01, "O'Conner et al. 1989", Mark.COPY),
    ("wathan", 100, 10, 134.747, 0.01, "Wathan 1994", Mark.COPY),
    ("epley", 100, 1, 100.0, 0.0, "a true single is the maximum", Mark.SEEN),
    ("handbook", 190, 5, 218.391, 0.01, f"{BOOK}, 87 % at 5", Mark.SEEN),
    ("epley", 100, 16, REFUSED, 0.0, "too many to tell, our own bound", Mark.DERIVED),
)

CHART = (
    *((n, percent, Mark.SEEN) for n, percent in
      enumerate((100, 95, 93, 90, 87, 85, 83, 80, 77, 75), start=1)),
    (11, 70, Mark.MEMORY),
    (12, 67, Mark.MEMORY),
    (15, 65, Mark.MEMORY),
)  # fmt: skip

POINTS = tuple(LoadVelocity(kg, v) for kg, v in ((60, 1.02), (80, 0.84), (100, 0.66), (120, 0.47)))


def _maximum(key: str, kg: float, reps: float) -> float:
    return one_rep_max(kg, reps, key).kg


def _percent(n: float) -> float:
    return 100 * share(n)


def _bare(key: str, reps: float) -> float:
    return 100 * multiplier(equation(key), reps)


ROWS = (
    *(
        Row(SUBJECT, f"maximum by {key}", f"{kg:g} kg for {reps:g}", expected,
            partial(_maximum, key, kg, reps), within, source, mark)
        for key, kg, reps, expected, within, source, mark in MAXIMA
    ),
    *(
        Row(SUBJECT, f"bare {key}, no override", f"100 kg for {reps:g}", expected,
            partial(_bare, key, reps), 0.01, source, mark)
        for key, reps, expected, source, mark in (
            ("epley", 1, 103.333, "Epley 1985, formula", Mark.SEEN),
            ("mayhew", 1, 108.864, "Mayhew et al. 1992", Mark.COPY),
            ("brzycki", 37, REFUSED, "it divides by 37 - r", Mark.DERIVED),
            ("lander", 38, REFUSED, "it falls below zero", Mark.DERIVED),
        )
    ),
    *(
        Row(SUBJECT, "reserve table, % of the maximum", f"{n} to failure", percent,
            partial(_percent, n), 0.0, BOOK, mark)
        for n, percent, mark in CHART
    ),
    Row(SUBJECT, "reserve table, % of the maximum", "5 reps at RPE 8", 83.0,
        lambda: 100 * share_for(5, 2), 0.01, f"{BOOK} at 7", Mark.SEEN),
    Row(SUBJECT, "heavy work, % of the maximum", "6 to failure", 85.0,
        lambda: 100 * share(6), 0.0, "about 85 % for five or six", Mark.PRACTICE),
    Row(SUBJECT, "load for a maximum", "190 of 1RM, 5 reps", 165.3,
        lambda: 190 * share(5), 0.05, f"{BOOK}, 87 %", Mark.SEEN),
    Row(SUBJECT, "bench press, % at 0.50 m/s", "mean propulsive velocity", 77.69,
        lambda: percent_of_maximum("bench-press", 0.5), 0.02,
        "González-Badillo & Sánchez-Medina 2010", Mark.MEMORY),
    Row(SUBJECT, "bench press, % at 1.00 m/s", "mean propulsive velocity", 47.26,
        lambda: percent_of_maximum("bench-press", 1.0), 0.02,
        "González-Badillo & Sánchez-Medina 2010", Mark.MEMORY),
    Row(SUBJECT, "squat, % at 0.70 m/s", "mean propulsive velocity", 78.58,
        lambda: percent_of_maximum("back-squat", 0.7), 0.02,
        "Sánchez-Medina et al. 2017", Mark.MEMORY),
    Row(SUBJECT, "load-velocity line, kg at 0.30 m/s", "60, 80, 100, 120 kg", 138.907,
        lambda: fit_line(POINTS, 0.3).load_at(0.3), 0.01, "least squares with numpy", Mark.DERIVED),
    Row(SUBJECT, "loss of velocity, %", "0.80 to 0.64 m/s", 20.0,
        lambda: velocity_loss((0.80, 0.64)), 0.01, "1 - last/best", Mark.DERIVED),
)  # fmt: skip
