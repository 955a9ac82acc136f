"""A bar pivoted at the floor: what the hand feels of the plates on its far sleeve.

All distances run along the bar from the pivot: bar mass m_b at r_b, plates m_p at r_p, hand at r_h;
θ is the bar's angle to the floor, sin θ = (hand height - pivot height) / r_h. Square to the bar,
the way the hand goes, the force is g (m_b r_b + m_p r_p) cos θ / r_h; straight up it is the same
without cos θ. Worked out from statics; no published table of load over angle was found.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import asin, cos

import numpy as np

from undercroft.domain.errors import LoadError, not_negative, positive
from undercroft.domain.kit import Bar, Landmine, Plate
from undercroft.domain.mechanics.curve import Curve, Part, curve_of
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rubber import Floats
from undercroft.domain.mechanics.settings import DEFAULT

MOST_ROUNDS = 20


@dataclass(frozen=True, slots=True)
class Lever:
    """Bar and hand, lengths in m from the pivot; `face_m` is where the innermost plate begins."""

    bar_kg: float
    bar_centre_m: float
    face_m: float
    hand_m: float
    pivot_height_m: float = 0.0
    collar_kg: float = 0.0


def lever(bar: Bar, landmine: Landmine) -> Lever:
    """The lever that a bar makes in a landmine, from its sleeve and the usual shoulders.

    Half a bar is 0.685 m to the plates' face and the sleeve beyond; `socket_m` of it stands beyond
    the pivot. Raises LoadError for sizes that cannot be.
    """
    half = DEFAULT.plate_face_m + positive(f"{bar.key}: sleeve length in m", bar.sleeve_length_m)
    socket = not_negative(f"{landmine.key}: bar inside the socket in m", landmine.socket_m)
    if socket > DEFAULT.plate_face_m:
        wants = f"{DEFAULT.plate_face_m:g} or less"
        raise LoadError(f"{landmine.key}: bar inside the socket in m", socket, wants)
    return Lever(
        bar_kg=positive(f"{bar.key}: mass of the bar in kg", bar.mass_kg),
        bar_centre_m=half - socket,
        face_m=half + DEFAULT.plate_face_m - socket,
        hand_m=2 * half - DEFAULT.hand_from_end_m - socket,
        pivot_height_m=not_negative(f"{landmine.key}: pivot in m", landmine.pivot_height_m),
        collar_kg=not_negative(f"{bar.key}: collar mass in kg", bar.collar_mass_kg),
    )


def angle_rad(of: Lever, hand_height_m: float) -> float:
    """The bar's angle to the floor. LoadError where the hand would be past the bar's reach."""
    rise = not_negative("height of the hand in m", hand_height_m) - of.pivot_height_m
    if not -of.hand_m < rise < of.hand_m:
        top = of.pivot_height_m + of.hand_m
        wants = f"below {top:.2f}: the bar is {of.hand_m:.2f} m from pivot to hand"
        raise LoadError("height of the hand in m", f"{hand_height_m:g}", wants)
    return asin(rise / of.hand_m)


def plates_moment_kg_m(of: Lever, stack: tuple[Plate, ...]) -> float:
    """Mass times distance from the pivot of the plates, innermost first, and their collar."""
    at, moment = of.face_m, 0.0
    for plate in stack:
        moment += plate.mass_kg * (at + plate.thickness_m / 2)
        at += plate.thickness_m
    return moment + (of.collar_kg * (at + DEFAULT.collar_thickness_m / 2) if stack else 0.0)


def straight_up_n(of: Lever, plates_kg_m: float) -> float:
    """Force in N at the hand straight up, whatever the angle; plates as mass times distance."""
    moment = not_negative("plates' mass times distance in kg m", plates_kg_m)
    return STANDARD_GRAVITY * (of.bar_kg * of.bar_centre_m + moment) / of.hand_m


def square_to_bar_n(of: Lever, plates_kg_m: float, hand_height_m: float) -> float:
    """Force in N at the hand square to the bar, with the hand at a height."""
    return straight_up_n(of, plates_kg_m) * cos(angle_rad(of, hand_height_m))


def in_hand_kg(of: Lever, stack: tuple[Plate, ...], hand_height_m: float) -> float:
    """What a stack feels like in the hand, in kg square to the bar."""
    return square_to_bar_n(of, plates_moment_kg_m(of, stack), hand_height_m) / STANDARD_GRAVITY


def sleeve_kg_for(
    of: Lever,
    wish_kg: float,
    hand_height_m: float,
    stack_for: Callable[[float], tuple[Plate, ...]],
) -> float:
    """Mass on the sleeve, collar included, for `wish_kg` in the hand at a height.

    Where the plates' middle lies depends on the plates, so `stack_for` (the stack nearest to a
    mass) is asked until the answer stays. Raises LoadError where the bare bar is heavier.
    """
    bare = in_hand_kg(of, (), hand_height_m)
    if not_negative("wish in the hand in kg", wish_kg) < bare - 1e-9:
        wants = f"{bare:.1f} or more, the bare bar"
        raise LoadError("wish in the hand in kg", f"{wish_kg:g}", wants)
    needed = wish_kg * of.hand_m / cos(angle_rad(of, hand_height_m)) - of.bar_kg * of.bar_centre_m
    kg, asked = max(0.0, needed) / of.face_m, set[tuple[Plate, ...]]()
    for _ in range(MOST_ROUNDS):
        stack = stack_for(kg)
        mass = sum(plate.mass_kg for plate in stack) + (of.collar_kg if stack else 0.0)
        if not stack or stack in asked:
            break
        asked.add(stack)
        kg = max(0.0, needed) * mass / plates_moment_kg_m(of, stack)
    return kg


def press(of: Lever, stack: tuple[Plate, ...], start_m: float, end_m: float) -> Curve:
    """Force square to the bar while the hand goes along its arc from one height to another.

    The curve's range is the arc's length, so that its work is what lifting bar and plates takes.
    """
    first, last = angle_rad(of, start_m), angle_rad(of, end_m)
    if last <= first:
        wants = f"above {start_m:g}, the height at the start"
        raise LoadError("height of the hand at the end in m", end_m, wants)
    upright = straight_up_n(of, plates_moment_kg_m(of, stack))

    def force(s: Floats) -> Floats:
        return upright * np.cos(first + s * (last - first))

    part = Part("lever", force, lambda s: DEFAULT.lever_doubt * force(s))
    return curve_of((part,), of.hand_m * (last - first))
