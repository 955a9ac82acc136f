"""A lift's own load-velocity line and the maximum it speaks for, or why there is none yet."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.domain.errors import DomainError
from undercroft.domain.strength.load_velocity import (
    LEAST_LOADS,
    LEAST_SPREAD,
    LoadVelocityLine,
    fit_line,
    maximum_on_line,
)
from undercroft.domain.strength.velocity import MinimalVelocity, minimal_velocity
from undercroft.services.velocities import Reading

Z_90 = 1.645
COUNTS = ("is none", "is one", "are two")
NEEDED = f"Three loads spread over {LEAST_SPREAD:.0%} of the maximum are needed".replace("%", " %")


@dataclass(frozen=True, slots=True)
class PointSeen:
    """A set's load and the velocity of its fastest repetition."""

    on: date
    load_kg: float
    velocity_m_s: float


@dataclass(frozen=True, slots=True)
class LineSeen:
    """velocity = intercept + slope · load, and the maximum at the lift's minimal velocity.

    The standard error is told in m/s and, across the line, in kg; the band of the maximum is 90 %.
    """

    intercept_m_s: float
    slope_m_s_per_kg: float
    r2: float
    standard_error_m_s: float
    standard_error_kg: float
    lightest_kg: float
    heaviest_kg: float
    velocity_at_lightest_m_s: float
    velocity_at_heaviest_m_s: float
    minimal_velocity_m_s: float
    minimal_velocity_from: str
    maximum_kg: float
    maximum_low_kg: float
    maximum_high_kg: float


@dataclass(frozen=True, slots=True)
class VelocitySeen:
    """`why_no_line` says what is missing, "" where there is a line."""

    points: list[PointSeen]
    line: LineSeen | None
    why_no_line: str


def velocity_of(lift: str, readings: Sequence[Reading], maximum_kg: float | None) -> VelocitySeen:
    """From the readings that the lift's tracker goes by; `maximum_kg` is the one that is known."""
    points = [PointSeen(on, one.load_kg, one.velocity) for on, one in readings]
    few = len({one.load_kg for one in points})
    if few < LEAST_LOADS:
        return VelocitySeen(points, None, f"{NEEDED}; there {COUNTS[few]}.")
    try:
        minimal = minimal_velocity(lift)
        line = fit_line([one for _, one in readings], minimal.velocity, maximum_kg)
        return VelocitySeen(points, _line(lift, line, minimal), "")
    except DomainError as fault:
        return VelocitySeen(points, None, f"{str(fault)[:1].upper()}{str(fault)[1:]}.")


def _line(lift: str, line: LoadVelocityLine, minimal: MinimalVelocity) -> LineSeen:
    maximum = maximum_on_line(line, lift, minimal.velocity)
    reach = Z_90 * maximum.sd
    return LineSeen(
        intercept_m_s=round(line.intercept, 4),
        slope_m_s_per_kg=round(line.slope, 6),
        r2=round(line.r2, 4),
        standard_error_m_s=round(line.se, 4),
        standard_error_kg=round(line.se_kg, 2),
        lightest_kg=line.lightest_kg,
        heaviest_kg=line.heaviest_kg,
        velocity_at_lightest_m_s=round(line.velocity_at(line.lightest_kg), 4),
        velocity_at_heaviest_m_s=round(line.velocity_at(line.heaviest_kg), 4),
        minimal_velocity_m_s=minimal.velocity,
        minimal_velocity_from=minimal.source,
        maximum_kg=round(maximum.kg, 1),
        maximum_low_kg=round(maximum.kg * (1 - reach), 1),
        maximum_high_kg=round(maximum.kg * (1 + reach), 1),
    )
