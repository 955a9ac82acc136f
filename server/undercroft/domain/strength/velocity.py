"""Share of a maximum from bar velocity, loss of velocity within a set, and when speed work is over.

Velocities are mean propulsive velocities in m/s. A general equation is a first guess: among people
who do not train strength, velocity at a given share differs by 9-25 % (seen, abstract only), so the
athlete's own line (`load_velocity`) takes over as soon as there is one. Where nobody measures,
quality 1-5 stands in and is never turned into m/s.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from undercroft.domain.errors import DomainError, positive, whole


@dataclass(frozen=True, slots=True)
class GeneralEquation:
    """Percent of the maximum = a v² + b v + c. `lift` is a key of the catalogue."""

    lift: str
    a: float
    b: float
    c: float
    source: str
    mark: str

    def percent(self, velocity: float) -> float:
        """The bare formula."""
        return self.a * velocity**2 + self.b * velocity + self.c


@dataclass(frozen=True, slots=True)
class MinimalVelocity:
    """Velocity of a maximum in m/s, with its SD between people."""

    lift: str
    velocity: float
    sd: float
    source: str
    mark: str


@dataclass(frozen=True, slots=True)
class VelocityMaximum:
    """A maximum in kg read off a velocity; `sd` is its relative standard deviation."""

    kg: float
    sd: float
    basis: str


GENERAL_EQUATIONS: dict[str, GeneralEquation] = {
    one.lift: one
    for one in (
        GeneralEquation(
            "bench-press",
            8.4326,
            -73.501,
            112.33,
            "González-Badillo & Sánchez-Medina 2010, guided bar, from a stop at the chest",
            "coefficients from memory",
        ),
        GeneralEquation(
            "bench-pull",
            18.5797,
            -104.182,
            147.94,
            "Sánchez-Medina et al. 2014",
            "coefficients from memory",
        ),
        GeneralEquation(
            "back-squat",
            -5.961,
            -50.71,
            117.0,
            "Sánchez-Medina et al. 2017, full squat with a guided bar",
            "coefficients from memory",
        ),
    )
}
"""No coefficients were found for the deadlift and the hex bar: they need the athlete's own line."""

MINIMAL_VELOCITIES: dict[str, MinimalVelocity] = {
    one.lift: one
    for one in (
        MinimalVelocity("bench-press", 0.17, 0.05, "0.16 ± 0.04 (2010) and 0.17 (2021)", "seen"),
        MinimalVelocity("back-squat", 0.30, 0.05, "0.24 ± 0.06 free, 0.32 ± 0.03 guided", "seen"),
        MinimalVelocity("deadlift", 0.15, 0.05, "0.14 ± 0.05 (Helms et al. 2017)", "seen"),
        MinimalVelocity("hex-bar-deadlift", 0.25, 0.05, "27 men (Janićijević 2024)", "seen"),
        MinimalVelocity("bench-pull", 0.50, 0.05, "about 0.52", "from memory"),
    )
}
"""Rounded by us, SD of our own choice, until the athlete's own last repetition replaces it."""

GENERAL_SD = 0.09
"""Relative SD of a maximum from a general equation: 8-10 %, our own choice from validity papers."""

LEAST_PERCENT, MOST_PERCENT = 30.0, 105.0
"""Where a general equation is read: lighter loads were not tested, heavier ones do not exist."""


class Over(StrEnum):
    """Why speed work is over."""

    SLOWER = "slower"
    QUALITY = "quality"


@dataclass(frozen=True, slots=True)
class SpeedSet:
    """A speed set as done: velocities of its repetitions, or quality 1-5 where nobody measured."""

    velocities: tuple[float, ...] = ()
    quality: int | None = None

    @property
    def mean(self) -> float | None:
        """Mean velocity of the set in m/s."""
        return sum(self.velocities) / len(self.velocities) if self.velocities else None


def percent_of_maximum(lift: str, velocity: float) -> float:
    """Percent of the maximum that goes with a velocity, by the general equation of the lift.

    DomainError for a lift without one, or a velocity outside what the equation was made for.
    """
    if lift not in GENERAL_EQUATIONS:
        known = ", ".join(GENERAL_EQUATIONS)
        right = f"should be one of {known}, or have at least three loads of the athlete's own"
        raise DomainError("general equation of velocity", f"there is none for {lift}", right)
    percent = GENERAL_EQUATIONS[lift].percent(positive("velocity in m/s", velocity))
    if not LEAST_PERCENT <= percent <= MOST_PERCENT:
        told = f"{velocity:g} m/s would be {percent:.0f} % of the maximum"
        span = f"should go with {LEAST_PERCENT:g} to {MOST_PERCENT:g} %"
        raise DomainError("velocity", told, span)
    return percent


def maximum_by_velocity(lift: str, load_kg: float, velocity: float) -> VelocityMaximum:
    """A first guess of the maximum from one load moved as fast as possible.

    DomainError as for `percent_of_maximum`.
    """
    percent = percent_of_maximum(lift, velocity)
    kg = positive("load in kg", load_kg) / (percent / 100)
    return VelocityMaximum(kg, GENERAL_SD, "general equation")


def minimal_velocity(lift: str) -> MinimalVelocity:
    """The velocity at which a maximum of the lift goes up. DomainError where none is known."""
    if lift not in MINIMAL_VELOCITIES:
        right = "should be measured: the velocity of a last repetition or of a tested maximum"
        raise DomainError("velocity of a maximum", f"is not known for {lift}", right)
    return MINIMAL_VELOCITIES[lift]


def velocity_loss(velocities: Sequence[float]) -> float:
    """Percent by which the last repetition is slower than the fastest of the set.

    Loss over a set goes with lactate at r = 0.93-0.97 (Sánchez-Medina & González-Badillo 2011,
    seen). DomainError for no velocities or one that is not above 0.
    """
    checked = [positive("velocity in m/s", one) for one in velocities]
    if not checked:
        raise DomainError("velocities of a set", "are none", "should be one for each repetition")
    fastest = max(checked)
    return 100 * (fastest - checked[-1]) / fastest


def speed_work_over(
    sets: Sequence[SpeedSet], loss_percent: float = 10.0, quality: int = 2, times: int = 2
) -> Over | None:
    """Should the exercise stop after the last of these sets?

    It should once that set's mean velocity lies more than `loss_percent` below the best set's, or
    once quality has been `quality` or less in so many sets (10 % and twice: our own choices).
    """
    whole("times that quality may fall", times, least=1)
    means = [one.mean for one in sets if one.mean is not None]
    if means and sets[-1].mean is not None:
        floor = max(means) * (1 - loss_percent / 100)
        # Equal to the limit is not beyond it, whatever the last binary digit says.
        if means[-1] < floor - 1e-9:
            return Over.SLOWER
    poor = [one for one in sets if one.quality is not None and one.quality <= quality]
    return Over.QUALITY if len(poor) >= times else None
