"""A cable over pulleys: what the hand feels of a weight stack.

With travel ratio R (hand travel over stack travel), n sheaves of efficiency e and stack mass W,
lifting takes W g / (R e^n) at the hand and lowering W g e^n / R; at rest the force lies between.
An efficiency of 0.98 is generally taken for wire rope over a sheave with a good bearing (a rope
maker's teaching page, seen); a rigger's handbook gives 2-10 % lost at a sheave (seen). Machines
differ: a hanging scale at the handle settles it.
"""

from math import isfinite

from undercroft.domain.errors import LoadError, not_negative, positive, whole

STANDARD_GRAVITY = 9.80665
"""m/s², CGPM 1901."""


def lifting_force_n(stack_kg: float, travel_ratio: float, sheaves: int, efficiency: float) -> float:
    """Force in N at the hand while the stack goes up. LoadError for values that cannot be."""
    return _frictionless_n(stack_kg, travel_ratio) / _passed(sheaves, efficiency)


def lowering_force_n(
    stack_kg: float, travel_ratio: float, sheaves: int, efficiency: float
) -> float:
    """Force in N at the hand while the stack goes down. LoadError for values that cannot be."""
    return _frictionless_n(stack_kg, travel_ratio) * _passed(sheaves, efficiency)


def force_doubt_share(sheaves: int, efficiency: float, efficiency_doubt: float) -> float:
    """Doubt of either force as a share of it, n δe / e to first order, from the doubt of e."""
    _passed(sheaves, efficiency)
    return sheaves * not_negative("doubt of the sheave efficiency", efficiency_doubt) / efficiency


def _frictionless_n(stack_kg: float, travel_ratio: float) -> float:
    mass = not_negative("stack mass in kg", stack_kg)
    return mass * STANDARD_GRAVITY / positive("travel ratio, hand over stack", travel_ratio)


def _passed(sheaves: int, efficiency: float) -> float:
    """The share of force that gets past all sheaves."""
    if not isfinite(efficiency) or not 0 < efficiency <= 1:
        raise LoadError(
            "sheave efficiency", efficiency, "a share above 0 and up to 1, such as 0.98"
        )
    return float(efficiency ** whole("number of sheaves", sheaves))
