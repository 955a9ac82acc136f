"""From a wished load at a point of the lift to what bar and plates must weigh, and back.

With V the force of bands or chains in kg at the point meant and T the wish there, bar and plates
weigh W = T - V. A straight V from 8 to 30 kg and T = 150 kg give W = 120 at lockout, 131 over the
mean of the range, 142 at the start: the point moves the plates by 22 kg, so it is always said.
"""

from undercroft.domain.errors import LoadError, not_negative, positive
from undercroft.domain.mechanics.curve import Curve, force_at_n, varying
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.program.rig import ShareBase
from undercroft.domain.program.wish import Point

WORDS = {
    Point.BAR: "on the bar",
    Point.START: "at the start",
    Point.MEAN: "over the mean of the range",
    Point.LOCKOUT: "at lockout",
}


def rig_kg(rigged: Curve, point: Point) -> float:
    """What bands and chains give at a point in kg, below zero where they help; none on the bar."""
    if point is Point.BAR:
        return 0.0
    return force_at_n(varying(rigged), point) / STANDARD_GRAVITY


def still_kg(wish_kg: float, point: Point, rigged: Curve, least_kg: float = 0.0) -> float:
    """Mass in kg of bar, collars and plates for `wish_kg` in all at a point.

    Raises LoadError where even `least_kg`, the bare bar, is too heavy.
    """
    wish = positive("wished load in kg", wish_kg)
    given = rig_kg(rigged, point)
    mass = wish - given
    if mass < not_negative("mass of the bare bar in kg", least_kg) - 1e-9:
        wants = f"{least_kg + given:.1f} or more: the bare bar weighs {least_kg:g} kg"
        rigging = f" and the rig gives {given:.1f} kg there" if given else ""
        raise LoadError(f"wished load in kg {WORDS[point]}", f"{wish:g}", wants + rigging)
    return mass


def total_kg(mass_kg: float, point: Point, rigged: Curve) -> float:
    """The resistance in kg at a point with bar, collars and plates of `mass_kg`."""
    return not_negative("mass of bar and plates in kg", mass_kg) + rig_kg(rigged, point)


def wanted_kg(
    share_percent: float, base: ShareBase, load_kg: float, maximum_kg: float | None = None
) -> float:
    """What bands or chains should give, in kg: a share of the day's load or of the maximum.

    The day's load is the load wish itself: 20 % of a wish of 82.5 kg is 16.5 kg, within the wish
    where the wish is meant at that point of the lift, on top of it where it is the bar's alone.
    """
    share = positive("share of the rig in %", share_percent, "a number above 0 and below 100")
    if share >= 100:
        raise LoadError("share of the rig in %", share_percent, "a number above 0 and below 100")
    if base is ShareBase.LOAD:
        return share / 100 * positive("load of the day in kg", load_kg)
    if maximum_kg is None:
        wants = "a maximum for the lift, or a share of the day's load"
        raise LoadError("share of the maximum", "not to be worked out", wants)
    return share / 100 * positive("maximum in kg", maximum_kg)
