"""A force curve as a load sheet carries it: kg at points to draw, and what matters of it."""

import numpy as np

from undercroft.domain.load_sheet import ForceCurve
from undercroft.domain.mechanics.curve import (
    Curve,
    doubt_at_n,
    force_n,
    hanging,
    mean_n,
    plus,
)
from undercroft.domain.mechanics.find import Choice
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.wish import Point

ENDS = (Point.START, Point.MEAN, Point.LOCKOUT)


def on_sheet(curve: Curve, points: int = DEFAULT.drawn_points) -> ForceCurve:
    """The curve in kg at so many points, with the largest doubt of start, mean and end."""
    drawn = force_n(curve, np.linspace(0.0, 1.0, points)) / STANDARD_GRAVITY
    doubt = max(doubt_at_n(curve, point) for point in ENDS) / STANDARD_GRAVITY
    return ForceCurve(
        start_kg=round(float(drawn[0]), 2),
        mean_kg=round(mean_n(curve) / STANDARD_GRAVITY, 2),
        end_kg=round(float(drawn[-1]), 2),
        doubt_kg=round(doubt, 2),
        points_kg=tuple(round(kg, 2) for kg in drawn.tolist()),
    )


def with_still(choice: Choice, still_kg: float, doubt_kg: float = 0.0) -> ForceCurve:
    """A set's curve: what stays the same (bar, collars and plates), and the rig."""
    return on_sheet(plus(choice.curve, hanging("bar and plates", still_kg, doubt_kg)))
