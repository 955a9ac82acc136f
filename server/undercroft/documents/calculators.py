"""What each calculator of the desk is given: fields with units and limits, and words for people."""

from enum import StrEnum
from typing import ClassVar

from marshmallow import fields

from undercroft.documents.fields import Day, Many, Number, OneOf, Text, Whole
from undercroft.documents.inputs import AskedFor, Inputs
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
        "width_mm": "Width; of the loop, lying flat",
        "thickness_mm": "Thickness; of one strand",
        "rest_length_m": "Rest length; of the loop, lying flat",
        "readings": "Readings of a hanging scale; upwards, after five stretches",
        "readings.length_m": "Length",
        "readings.force_n": "Force",
        "length_m": "Stretched to; flat length",
    }
    width_mm = Number(above=0, most=200, unit="mm", required=True)
    thickness_mm = Number(above=0, most=20, unit="mm", required=True)
    rest_length_m = Number(least=0.1, most=5, unit="m", required=True)
    readings = Many(fields.Nested(BandReadingShape), most=20, load_default=())
    length_m = Number(least=0, most=12.5, unit="m", required=True)


class LandmineInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "bar_kg": "Bar; its mass",
        "bar_centre_m": "Middle of the bar; from the pivot, along the bar",
        "plates_kg": "Plates; with the collar, on the far sleeve",
        "plates_at_m": "Middle of the plates; from the pivot, along the bar",
        "hand_m": "Hand; from the pivot, along the bar",
        "hand_height_m": "Height of the hand; above the floor",
        "pivot_height_m": "Height of the pivot; above the floor",
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
        "bar_kg": "Bar; its mass",
        "spacing_m": "Between the supports",
        "left_kg": "Plates on the left; with the collar",
        "left_at_m": "Middle of the left plates; from the middle of the bar",
        "right_kg": "Plates on the right; with the collar",
        "right_at_m": "Middle of the right plates; from the middle of the bar",
        "play_m": "Play; how far the bar may slide along the supports, either way",
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
        "load_kg": "Load; of the set",
        "reps": "Repetitions done",
        "rir": "Left in reserve; 0 to failure",
    }
    load_kg = Number(above=0, most=1000, unit="kg", required=True)
    reps = Whole(least=1, most=15, unit="repetitions", required=True)
    rir = Number(least=0, most=10, unit="repetitions", load_default=0.0)


class RepsInputs(Inputs):
    words: ClassVar[dict[str, str]] = {
        "load_kg": "Load; of the set",
        "maximum_kg": "One-repetition maximum",
        "curve": "Chart or equation; an equation is turned round",
        "curve.handbook": "Handbook chart",
        "curve.epley": "Epley",
        "curve.brzycki": "Brzycki",
        "curve.lander": "Lander",
        "curve.lombardi": "Lombardi",
        "curve.mayhew": "Mayhew",
        "curve.oconner": "O'Conner",
        "curve.wathan": "Wathan",
    }
    load_kg = Number(above=0, most=1000, unit="kg", required=True)
    maximum_kg = Number(above=0, most=1000, unit="kg", required=True)
    curve = OneOf(CurveName, load_default=CurveName.HANDBOOK)


class PressureInputs(Inputs):
    asked_for: ClassVar[AskedFor] = {
        "basis": {
            PressureBasis.EQUATION: ("thigh_cm", "systolic", "age", "sex"),
            PressureBasis.PADDING: ("systolic", "girth_cm", "factor", "table"),
            PressureBasis.MEASURED: ("measured_mmhg", "measured_on", "measured_by", "position"),
        }
    }
    words: ClassVar[dict[str, str]] = {
        "basis": "It rests on",
        "basis.equation": "the equation for a thigh",
        "basis.padding": "a padding table",
        "basis.measured": "a measurement",
        "limb": "Limb; where the cuff sits",
        "width_mm": "Width; of the cuff",
        "material": "Material; of the cuff",
        "percent": "Wanted share; of limb occlusion pressure",
        "systolic": "Systolic blood pressure",
        "thigh_cm": "Girth of the thigh",
        "age": "Age",
        "sex": "Sex; as the equation codes it",
        "girth_cm": "Girth of the limb; in the padding table",
        "factor": "Tissue padding factor; of that girth",
        "table": "Padding table; where it was measured",
        "measured_mmhg": "Limb occlusion pressure; measured with this very cuff",
        "measured_on": "Measured on",
        "measured_by": "Measured by",
        "position": "Position; lying, sitting or standing, as in the exercise",
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
        "bar_kg": "Bar; its mass, bare",
        "collar_kg": "One collar; on each sleeve with plates",
        "sleeve_length_m": "Sleeve; room for plates",
        "rated_load_kg": "Rated load; of the bar",
        "plates": "Plates; what stands there, both sides counted together",
        "plates.mass_kg": "Mass",
        "plates.count": "Pieces",
        "plates.thickness_m": "Thickness",
        "plates.label": "Written on it",
        "target_kg": "Target; bar, collars and plates together",
        "upper_kg": "Upper bound; not to be passed",
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
        "stack_kg": "Stack; what the pin selects, with add-on plates",
        "travel_ratio": "Travel ratio; way of the hand over way of the stack",
        "sheaves": "Pulleys; that the cable passes",
        "efficiency": "Efficiency; share of the force that each pulley lets through",
    }
    stack_kg = Number(least=0, most=400, unit="kg", required=True)
    travel_ratio = Number(least=0.25, most=8, load_default=1.0)
    sheaves = Whole(least=0, most=12, load_default=2)
    efficiency = Number(least=0.7, most=1, load_default=0.98)
