"""What each calculator of the desk is given: fields with units and limits, and words for people."""

from enum import StrEnum
from typing import ClassVar

from marshmallow import fields

from undercroft.documents.fields import Day, Many, Number, OneOf, Text, Whole
from undercroft.documents.inputs import Inputs
from undercroft.documents.kit import BandReadingShape, PlateShape
from undercroft.domain.program.methods import Limb


class CurveName(StrEnum):
    """The repetition curves by which a load becomes repetitions."""

    HANDBOOK = "handbook"
    EPLEY = "epley"
    BRZYCKI = "brzycki"
    LANDER = "lander"
    LOMBARDI = "lombardi"
    MAYHEW = "mayhew"
    OCONNER = "oconner"
    WATHAN = "wathan"


class PressureBasis(StrEnum):
    """What a limb occlusion pressure rests on."""

    EQUATION = "equation"
    PADDING = "padding"
    MEASURED = "measured"


class SexWord(StrEnum):
    MALE = "male"
    FEMALE = "female"


class BandForceInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "width_mm": "width of the loop, lying flat",
        "thickness_mm": "thickness of one strand",
        "rest_length_m": "length of the loop, lying flat",
        "readings": "what a hanging scale said, upwards, after five stretches",
        "length_m": "flat length to which it is stretched",
    }
    width_mm = Number(above=0, most=200, unit="mm", required=True)
    thickness_mm = Number(above=0, most=20, unit="mm", required=True)
    rest_length_m = Number(least=0.1, most=5, unit="m", required=True)
    readings = Many(fields.Nested(BandReadingShape), most=20, load_default=())
    length_m = Number(least=0, most=12.5, unit="m", required=True)


class LandmineInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "bar_kg": "mass of the bar",
        "bar_centre_m": "from the pivot to the bar's middle, along the bar",
        "plates_kg": "plates and collar on the far sleeve",
        "plates_at_m": "from the pivot to the plates' middle, along the bar",
        "hand_m": "from the pivot to the hand, along the bar",
        "hand_height_m": "of the hand above the floor",
        "pivot_height_m": "of the pivot above the floor",
    }
    bar_kg = Number(above=0, most=60, unit="kg", required=True)
    bar_centre_m = Number(above=0, most=3, unit="m", required=True)
    plates_kg = Number(least=0, most=400, unit="kg", required=True)
    plates_at_m = Number(above=0, most=3, unit="m", required=True)
    hand_m = Number(least=0.2, most=3, unit="m", required=True)
    hand_height_m = Number(least=0, most=3, unit="m", required=True)
    pivot_height_m = Number(least=0, most=1, unit="m", load_default=0.05)


class TippingInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "bar_kg": "mass of the bar",
        "spacing_m": "between the two supports",
        "left_kg": "plates and collar on the left",
        "left_at_m": "from the bar's middle to their middle",
        "right_kg": "plates and collar on the right",
        "right_at_m": "from the bar's middle to their middle",
        "play_m": "how far the bar may slide along the supports, either way",
    }
    bar_kg = Number(above=0, most=60, unit="kg", required=True)
    spacing_m = Number(least=0.2, most=2, unit="m", required=True)
    left_kg = Number(least=0, most=400, unit="kg", required=True)
    left_at_m = Number(least=0, most=1.5, unit="m", required=True)
    right_kg = Number(least=0, most=400, unit="kg", load_default=0.0)
    right_at_m = Number(least=0, most=1.5, unit="m", load_default=0.0)
    play_m = Number(least=0, most=0.5, unit="m", load_default=0.0)


class MaximumInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "load_kg": "load of the set",
        "reps": "repetitions done",
        "rir": "repetitions left in reserve; 0 to failure",
    }
    load_kg = Number(above=0, most=1000, unit="kg", required=True)
    reps = Whole(least=1, most=15, unit="repetitions", required=True)
    rir = Number(least=0, most=10, unit="repetitions", load_default=0.0)


class RepsInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "load_kg": "load of the set",
        "maximum_kg": "the one-repetition maximum",
        "curve": "handbook chart, or an equation turned round",
    }
    load_kg = Number(above=0, most=1000, unit="kg", required=True)
    maximum_kg = Number(above=0, most=1000, unit="kg", required=True)
    curve = OneOf(CurveName, load_default=CurveName.HANDBOOK)


class PressureInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "basis": "thigh equation, padding factor from a measured table, or a measurement",
        "limb": "where the cuff sits",
        "width_mm": "width of the cuff",
        "material": "of the cuff",
        "percent": "of limb occlusion pressure that is wanted",
        "systolic": "blood pressure; for equation and padding",
        "thigh_cm": "girth of the thigh; for the equation",
        "age": "for the equation",
        "sex": "as the equation codes it",
        "girth_cm": "girth of the limb in the padding table",
        "factor": "tissue padding factor of that girth",
        "table": "where that padding table was measured",
        "measured_mmhg": "limb occlusion pressure with this very cuff",
        "measured_on": "day of the measurement",
        "measured_by": "who measured it",
        "position": "lying, sitting or standing, as in the exercise",
    }
    basis = OneOf(PressureBasis, required=True)
    limb = OneOf(Limb, required=True)
    width_mm = Number(least=10, most=300, unit="mm", required=True)
    material = Text(40, 1, required=True)
    percent = Number(least=1, most=100, unit="%", required=True)
    systolic = Number(least=60, most=260, unit="mmHg")
    thigh_cm = Number(least=20, most=120, unit="cm")
    age = Whole(least=1, most=120, unit="years")
    sex = OneOf(SexWord)
    girth_cm = Number(least=10, most=120, unit="cm")
    factor = Number(least=0.1, most=2)
    table = Text(200, 1)
    measured_mmhg = Number(least=20, most=500, unit="mmHg")
    measured_on = Day()
    measured_by = Text(80, 1)
    position = Text(40, 1)


class PlatesInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "bar_kg": "mass of the bare bar",
        "collar_kg": "one collar; it goes on each sleeve with plates",
        "sleeve_length_m": "room for plates on each sleeve",
        "rated_load_kg": "the most that the bar is rated for",
        "plates": "what stands there, both sides counted together",
        "target_kg": "bar, collars and plates together",
        "upper_kg": "what the load must not pass",
    }
    bar_kg = Number(above=0, most=60, unit="kg", required=True)
    collar_kg = Number(least=0, most=5, unit="kg", load_default=0.0)
    sleeve_length_m = Number(least=0.05, most=0.6, unit="m", load_default=0.415)
    rated_load_kg = Number(above=0, most=1000, unit="kg", load_default=None)
    plates = Many(fields.Nested(PlateShape), fewest=1, most=24, required=True)
    target_kg = Number(least=0, most=1000, unit="kg", required=True)
    upper_kg = Number(above=0, most=1000, unit="kg", load_default=None)


class PulleyInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "stack_kg": "what the pin selects, add-on plates included",
        "travel_ratio": "way of the hand over way of the stack",
        "sheaves": "pulleys that the cable passes",
        "efficiency": "share of the force that each sheave lets through",
    }
    stack_kg = Number(least=0, most=400, unit="kg", required=True)
    travel_ratio = Number(least=0.25, most=8, load_default=1.0)
    sheaves = Whole(least=0, most=12, load_default=2)
    efficiency = Number(least=0.7, most=1, load_default=0.98)
