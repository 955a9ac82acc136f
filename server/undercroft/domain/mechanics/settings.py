"""Every threshold of the mechanics part, each with the line that answers "why this number?".

Doubts are one standard deviation. "Our own choice" means that no published figure settles it.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class MechanicsSettings:
    """Shares are parts of 1, lengths metres, masses kilograms."""

    estimate_scale: float = 1.3
    estimate_doubt: float = 0.20
    one_reading_doubt: float = 0.08
    few_readings_doubt: float = 0.05
    rest_bound: float = 0.05
    scale_doubt: float = 0.01
    tape_doubt_m: float = 0.005
    beyond_longest: float = 1.05
    most_stretch: float = 2.5
    choke_m: float = 0.16
    uneven_share: float = 0.05
    sideways_share: float = 0.05
    off_share: float = 0.05
    same_share: float = 0.01
    most_rigs: int = 20_000
    weighed_chain_doubt: float = 0.01
    table_chain_doubt: float = 0.02
    formula_chain_doubt: float = 0.05
    chain_per_square: float = 0.0225
    plate_face_m: float = 0.685
    drawn_off_inset_m: float = 0.02
    collar_thickness_m: float = 0.03
    warn_margin: float = 2.0
    stop_margin: float = 1.33
    hand_from_end_m: float = 0.03
    lever_doubt: float = 0.03
    drawn_points: int = 11


DEFAULT = MechanicsSettings()

BASIS: dict[str, str] = {
    "estimate_scale": "a layered loop is about 1.2-1.5 times Treloar's rubber, from one published"
    " pair (273 N, Neelly et al. 2010, seen) with its width and thickness from memory",
    "estimate_doubt": "bands sold as equal differ by 8-19 % in tension (McMaster et al. 2010,"
    " seen)",
    "one_reading_doubt": "the shape through one reading errs by rest length and rubber; our own"
    " choice",
    "few_readings_doubt": "a shape fitted to two or three readings; a straight line between two"
    " costs 2-5 % (worked out from the rubber shape); our own choice",
    "rest_bound": "a fitted rest length stays this near to the tape's: equal bands differ by"
    " 3.5-5.2 % (McMaster et al. 2010, seen), one band from its tape reading by less",
    "scale_doubt": "share of the force that a hanging scale leaves open; our own choice",
    "tape_doubt_m": "a tape along a stretched band reads to half a centimetre; our own choice",
    "beyond_longest": "no tension is given further than 5 % beyond the longest reading: our own"
    " choice",
    "most_stretch": "textbooks keep elastic within 250 % of its rest length (course notes citing"
    " Page and Ellenbecker 2003, seen)",
    "choke_m": "looping a band through itself round a 50 mm post uses up about the post's"
    " circumference (from memory); measure it and write it on the anchor",
    "uneven_share": "pairs that differ by more are told apart: equal bands differ by 8-19 %"
    " (McMaster et al. 2010, seen); the line is our own choice",
    "sideways_share": "a sideways pull above this share of the load is told; our own choice",
    "off_share": "five points off the wished share is more than the doubt of measured bands; our"
    " own choice",
    "same_share": "shares that differ by less than one point are no different; our own choice",
    "most_rigs": "more than this many ways of hanging what stands here are not searched",
    "weighed_chain_doubt": "a chain that was weighed; our own choice",
    "table_chain_doubt": "a supplier's table to DIN 766 against the links' geometry: within 4 %,"
    " mostly 2 % (worked out)",
    "formula_chain_doubt": "0.0225 d² is within 4.5 % of every row of that table (worked out)",
    "chain_per_square": "kg/m per mm² of the link's diameter, fitted to that table",
    "plate_face_m": "1310 mm between the shoulders and a 30 mm shoulder ring: 655 + 30 mm (bar"
    " figures of the international federation, seen on secondary pages)",
    "drawn_off_inset_m": "a plate about to leave has its middle 2 cm inside the sleeve's end",
    "collar_thickness_m": "about the width of a screw or spring collar; our own choice",
    "warn_margin": "the load is half of what would tip the bar; our own choice",
    "stop_margin": "the load is three quarters of what would tip the bar; our own choice: sag,"
    " curved cups and knocks are in it",
    "hand_from_end_m": "the middle of the hand from the bar's end; common practice",
    "lever_doubt": "10 cm of bar inside a pivot's socket take 2.4 % off (worked out); our own"
    " choice where nobody measured along the bar",
    "drawn_points": "enough to draw a curve on a phone; our own choice",
}
"""Why each setting has its value, by field name."""
