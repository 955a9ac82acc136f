"""The athlete's own load-velocity line, and the maximum that it speaks for.

Velocity falls in a straight line with load. The line is fitted as velocity on load, because the
load is known and the velocity is what is measured; the other way round gives a slightly different
answer. Papers advise against setting each session's load anew from it: it is one noisy reading.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from undercroft.domain.errors import DomainError, positive
from undercroft.domain.strength.velocity import VelocityMaximum

LEAST_LOADS = 3
LEAST_SPREAD = 0.30
"""Loads must differ, lightest to heaviest, by this share of the maximum: our own choice."""

OWN_LINE_SD: dict[str, float] = {
    "bench-press": 0.04,
    "hex-bar-deadlift": 0.04,
    "back-squat": 0.075,
    "deadlift": 0.075,
}
"""Relative SD of a maximum read off an own line. Bench 2.7-3.7 % off, hex bar CV 2.53 %, squat CV
7.4 % with loads to 90 % and read too high (Banyard et al. 2017; all seen); rounded by us."""

LEAST_SHARE = 0.60
"""Of a maximum: lighter loads tell nothing of it here, our own choice."""

OTHER_LINE_SD = 0.075
"""For a lift that no paper tells of: the larger of the two."""


@dataclass(frozen=True, slots=True)
class LoadVelocity:
    """One load in kg and the velocity of its fastest repetition in m/s."""

    load_kg: float
    velocity: float


@dataclass(frozen=True, slots=True)
class LoadVelocityLine:
    """velocity = intercept + slope · load; `slope` is below 0.

    `r2` is the share of the spread that the line explains, `se` the standard error of the estimate
    in m/s (n - 2 degrees of freedom), `se_kg` the same across the line, in kg.
    """

    intercept: float
    slope: float
    r2: float
    se: float
    count: int
    lightest_kg: float
    heaviest_kg: float

    @property
    def se_kg(self) -> float:
        return self.se / -self.slope

    def velocity_at(self, load_kg: float) -> float:
        """The velocity in m/s at which this load goes up."""
        return self.intercept + self.slope * load_kg

    def load_at(self, velocity: float) -> float:
        """The load in kg that goes up at this velocity. DomainError where it is no load."""
        kg = (positive("velocity in m/s", velocity) - self.intercept) / self.slope
        if kg <= 0:
            told = f"of {velocity:g} m/s is faster than the line goes without any load"
            raise DomainError("velocity", told, f"should be below {self.intercept:.2f} m/s")
        return kg


def fit_line(
    points: Sequence[LoadVelocity], minimal: float, maximum_kg: float | None = None
) -> LoadVelocityLine:
    """The straight line through at least three loads spread over 30 % of the maximum.

    `minimal` is the velocity of a maximum; without a known `maximum_kg` the spread is measured
    against the maximum that the line itself gives. DomainError where the loads are too few or too
    close together, or where heavier loads were not slower.
    """
    for one in points:
        positive("load in kg", one.load_kg)
        positive("velocity in m/s", one.velocity)
    loads = sorted({one.load_kg for one in points})
    if len(loads) < LEAST_LOADS:
        told = f"{len(loads)} different loads"
        raise DomainError("load-velocity line", told, f"at least {LEAST_LOADS} are needed")
    line = _least_squares(points)
    if line.slope >= 0:
        told = "heavier loads were not slower"
        raise DomainError("load-velocity line", told, "move every load as fast as possible")
    reference = line.load_at(minimal) if maximum_kg is None else positive("maximum", maximum_kg)
    spread = (loads[-1] - loads[0]) / reference
    if spread < LEAST_SPREAD - 1e-9:
        told = f"loads spread over {spread:.0%} of the maximum"
        raise DomainError("load-velocity line", told, f"at least {LEAST_SPREAD:.0%} is needed")
    return line


def maximum_on_line(line: LoadVelocityLine, lift: str, minimal: float) -> VelocityMaximum:
    """The load at the velocity of a maximum, with what such readings are worth for the lift."""
    sd = OWN_LINE_SD.get(lift, OTHER_LINE_SD)
    return VelocityMaximum(line.load_at(minimal), sd, "own line")


def maximum_through(
    line: LoadVelocityLine, lift: str, minimal: float, point: LoadVelocity
) -> VelocityMaximum:
    """The maximum of the day: the line moved to go through one reading of that day.

    Its slope is the athlete's, its height the day's (our own choice). DomainError for a load below
    60 % of what comes out: papers tried loads up to 90 %, and farther down the slope's own error
    decides.
    """
    kg = point.load_kg + (point.velocity - minimal) / -line.slope
    if point.load_kg < LEAST_SHARE * kg:
        told = f"{point.load_kg:g} kg is {point.load_kg / kg:.0%} of a maximum of {kg:.0f} kg"
        raise DomainError("velocity", told, f"a load of at least {LEAST_SHARE:.0%} tells")
    return VelocityMaximum(kg, OWN_LINE_SD.get(lift, OTHER_LINE_SD), "own line")


def _least_squares(points: Sequence[LoadVelocity]) -> LoadVelocityLine:
    n = len(points)
    x = [one.load_kg for one in points]
    y = [one.velocity for one in points]
    mean_x, mean_y = sum(x) / n, sum(y) / n
    sxx = sum((a - mean_x) ** 2 for a in x)
    syy = sum((b - mean_y) ** 2 for b in y)
    sxy = sum((a - mean_x) * (b - mean_y) for a, b in zip(x, y, strict=True))
    slope = sxy / sxx
    unexplained = max(0.0, syy - slope * sxy)
    r2 = 1 - unexplained / syy if syy > 0 else 0.0
    intercept = mean_y - slope * mean_x
    return LoadVelocityLine(intercept, slope, r2, sqrt(unexplained / (n - 2)), n, min(x), max(x))
