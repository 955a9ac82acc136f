"""A band's force, a landmine, a bar that may tip, a cable over pulleys."""

from collections.abc import Mapping
from datetime import date
from math import degrees, isfinite
from typing import Any

from undercroft.documents.calculators import (
    BandForceInputs,
    LandmineInputs,
    PulleyInputs,
    TippingInputs,
)
from undercroft.domain.kit import Band
from undercroft.domain.mechanics import (
    STANDARD_GRAVITY,
    Basis,
    Lever,
    Resting,
    band_law,
    lifting_force_n,
    lowering_force_n,
    square_to_bar_n,
    straight_up_n,
    support_forces_kg,
)
from undercroft.domain.mechanics.band import at_length_n
from undercroft.domain.mechanics.landmine import angle_rad
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.mechanics.tipping import brink, fixed
from undercroft.services.calculators.calculator import (
    Calculator,
    Figure,
    Result,
    blaming,
    fault,
)

LEAST_STRETCH = 1.02
"""A reading nearer to the rest length than 2 % is the tape's error: our own choice."""

BASES = {
    Basis.READINGS: "a monotone cubic through the readings",
    Basis.FITTED: "the rubber shape fitted to the readings",
    Basis.SCALED: "the rubber shape through the one reading",
    Basis.ESTIMATED: "estimated from width and thickness: measure this band",
}


def _band(given: Mapping[str, Any], _: date) -> Result:
    rest = given["rest_length_m"]
    for number, one in enumerate(given["readings"]):
        if one.length_m < LEAST_STRETCH * rest:
            wants = f"read it at {LEAST_STRETCH * rest:.3g} m or more"
            raise fault(f"readings.{number}", f"{one.length_m:g} m is hardly stretched", wants)
    sizes = given["width_mm"], given["thickness_mm"], rest
    with blaming("readings"):
        law = band_law(Band("band", "Band", *sizes, readings=given["readings"]))
    with blaming("length_m"):
        force, off = at_length_n(law, given["length_m"])
    figures = (
        Figure("Tension", force / STANDARD_GRAVITY, "kg"),
        Figure("Tension", force, "N"),
        Figure("Doubt, one standard deviation", off / STANDARD_GRAVITY, "kg"),
        Figure("Length over rest length", given["length_m"] / law.rest_m, ""),
    )
    slack = () if force else ("slack: no longer than its rest length",)
    share = f"{law.doubt_share:.0%} of the tension" if force else "none where it is slack"
    return Result(figures, f"{share}: {BASES[law.basis]}", slack)


def _landmine(given: Mapping[str, Any], _: date) -> Result:
    of = Lever(
        given["bar_kg"],
        given["bar_centre_m"],
        given["plates_at_m"],
        given["hand_m"],
        given["pivot_height_m"],
    )
    moment = given["plates_kg"] * given["plates_at_m"]
    with blaming("hand_height_m"):
        up = straight_up_n(of, moment) / STANDARD_GRAVITY
        square = square_to_bar_n(of, moment, given["hand_height_m"]) / STANDARD_GRAVITY
        angle = degrees(angle_rad(of, given["hand_height_m"]))
    figures = (
        Figure("Square to the bar", square, "kg"),
        Figure("Straight up", up, "kg"),
        Figure("Angle of the bar to the floor", angle, "°"),
    )
    return Result(figures)


def _tipping(given: Mapping[str, Any], _: date) -> Result:
    with blaming("play_m"):
        resting = Resting(given["bar_kg"], given["spacing_m"], given["play_m"])
    left = fixed(given["left_kg"], given["left_at_m"])
    right = fixed(given["right_kg"], given["right_at_m"])
    on_left, on_right = support_forces_kg(resting, left, right)
    near = brink(resting, left, right)
    figures = [Figure("Left support bears", on_left, "kg"),
               Figure("Right support bears", on_right, "kg")]  # fmt: skip
    if not isfinite(near.margin):
        return Result(tuple(figures), notes=("nothing here can turn it over",))
    figures.append(Figure(f"Limit on the {near.side}", near.limit_kg, "kg"))
    figures.append(Figure("Margin, limit over load", near.margin, ""))
    return Result(tuple(figures), notes=(_verdict(near.margin, near.side.value),))


def _verdict(margin: float, side: str) -> str:
    if margin < 1:
        return f"it turns over on the {side}"
    if margin < DEFAULT.stop_margin:
        return f"too near on the {side}: below {DEFAULT.stop_margin:g}, where a block is stopped"
    if margin < DEFAULT.warn_margin:
        return f"take care on the {side}: below {DEFAULT.warn_margin:g}"
    return "it stays, with room"


def _pulley(given: Mapping[str, Any], _: date) -> Result:
    cable = given["stack_kg"], given["travel_ratio"], given["sheaves"], given["efficiency"]
    with blaming("efficiency"):
        up, down = lifting_force_n(*cable), lowering_force_n(*cable)
    figures = (
        Figure("In the hand, lifting", up / STANDARD_GRAVITY, "kg"),
        Figure("In the hand, lowering", down / STANDARD_GRAVITY, "kg"),
        Figure("In the hand, lifting", up, "N"),
    )
    return Result(figures, notes=("at rest the force lies between the two",))


BAND = Calculator(
    key="band-force",
    name="Force of a band",
    formula="tension over flat length: a monotone cubic through four readings or more; else the"
    " rubber shape k · 2 · width · thickness · 2 (λ - λ⁻²)(C₁ + C₂/λ), λ = length/rest length,"
    f" C₁ = 0.1200 and C₂ = 0.0760 MPa, k = {DEFAULT.estimate_scale:g} without a reading",
    source="shape fitted by us to Treloar's data of 1944 (seen); tension over length is curved"
    " (McMaster et al. 2010, seen)",
    range=f"to 105 % of the longest reading, and to {DEFAULT.most_stretch:g} times the rest length",
    doubt="20 % without a reading, 8 % with one, 5 % with two or three, the readings' own with"
    " four or more",
    inputs=BandForceInputs,
    work=_band,
    caution="Look a band over before it is stretched; a nick or a white line ends its life. Stand"
    " out of its way.",
)

LANDMINE = Calculator(
    key="landmine",
    name="Landmine",
    formula="F = (m_bar r_bar + m_plates r_plates) cos θ/r_hand square to the bar, without cos θ"
    " straight up; sin θ = (hand height - pivot height)/r_hand",
    source="statics (derived); no published table of load over angle was found",
    range="the hand within the bar's reach of the pivot",
    doubt=f"{DEFAULT.lever_doubt:.0%} where the distances were not measured; our own choice",
    inputs=LandmineInputs,
    work=_landmine,
)

TIPPING = Calculator(
    key="tipping",
    name="Will the bar turn over?",
    formula="left support = [m s/2 + M_L (d_L + s/2) - M_R (d_R - s/2)]/s, the right one likewise;"
    " with the other side bare the limit is m s/(2 d - s)",
    source="moments about the supports (derived)",
    range="a bar at rest on two supports; loads outside the supports",
    doubt="sag, cups and knocks are not in it: below a margin of 2 take care, below 1.33 do not"
    " (our own choice)",
    inputs=TippingInputs,
    work=_tipping,
    caution="Do not try it out on a rack. Where the margin is small, load and strip on the floor or"
    " with one person at each end.",
)

PULLEY = Calculator(
    key="pulley",
    name="Cable over pulleys",
    formula="lifting W/(R eⁿ), lowering W eⁿ/R",
    source="0.98 for wire rope over a sheave with a good bearing (a rope maker's page, seen);"
    " 2-10 % lost at a sheave (a rigger's handbook, seen)",
    range="a steady pull; machines differ, and a load is not carried over to another one",
    doubt="0.90-0.95 a sheave where bearings are poor: a hanging scale at the handle settles it",
    inputs=PulleyInputs,
    work=_pulley,
)
