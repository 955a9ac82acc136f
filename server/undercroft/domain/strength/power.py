"""Power of a repetition: mean force times mean velocity.

From rest to rest the mean acceleration of a lift is none, so the mean force is the mean resistance:
the bar's weight, bands and chains at their mean over the range, and the part of the body that goes
up with it where the coach counts that.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from scipy.constants import g

from undercroft.domain.errors import DomainError, not_negative, positive


@dataclass(frozen=True, slots=True)
class SetPower:
    """Power in watts: the mean over the set's repetitions, and the best repetition's."""

    mean_w: float
    peak_w: float


def rep_power_w(resistance_kg: float, velocity: float, body_kg: float = 0.0) -> float:
    """Watts of one repetition: mean resistance in kg (force / g), mean velocity in m/s.

    `body_kg` is the body mass that the lift moves, 0 where it is not counted. LoadError for values
    that cannot be.
    """
    moved = not_negative("resistance in kg", resistance_kg) + not_negative("body in kg", body_kg)
    return moved * g * positive("velocity in m/s", velocity)


def set_power(resistance_kg: float, velocities: Sequence[float], body_kg: float = 0.0) -> SetPower:
    """Power of a set from the mean velocity of each repetition. DomainError for no repetition."""
    if not velocities:
        raise DomainError("velocities of a set", "are none", "should be one for each repetition")
    watts = [rep_power_w(resistance_kg, one, body_kg) for one in velocities]
    return SetPower(sum(watts) / len(watts), max(watts))
