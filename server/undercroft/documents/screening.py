"""What the coach records to open occlusion work: signatures, clearances, measured pressures."""

from typing import Any

from marshmallow import Schema, ValidationError, fields

from undercroft.documents.fields import Day, Key, Many, Number, OneOf, Text, Truth, Whole, say
from undercroft.documents.shape import Shape
from undercroft.domain import occlusion
from undercroft.domain.occlusion import LIMITS, Aim, Profession
from undercroft.domain.occlusion.site import ALL_SITES, Site


class Keys(Many):
    """A set of keys, written as a list."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(Key(), fewest=1, most=100, **kwargs)

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> Any:
        return frozenset(super()._deserialize(value, attr, data, **kwargs))

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Any:
        return sorted(value)


class SiteText(Text):
    """A limb and its side, as `left-thigh`."""

    def _deserialize(self, value: Any, attr: Any, data: Any, **kwargs: Any) -> Site:  # type: ignore[override]
        found = {str(site): site for site in ALL_SITES}
        if not isinstance(value, str) or value not in found:
            known = ", ".join(sorted(found))
            raise ValidationError(f"{say(value)} is not known here; use one of {known}")
        return found[value]

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> str:
        return str(value)


class SignatureShape(Shape):
    builds = occlusion.Signature
    of = Text(64, 1, required=True)
    by = Text(80, 1, required=True)
    on = Day(required=True)
    note = Text(2000)
    aim = OneOf(Aim)


class SigningShape(Schema):
    """Which screening was read, and a note where there is something to weigh."""

    of = Text(64, 1, required=True)
    note = Text(2000, load_default="")
    aim = OneOf(Aim, load_default=Aim.TRAINING)


class ClinicianLimitsShape(Shape):
    builds = occlusion.ClinicianLimits
    load_percent = Number(above=0, most=LIMITS.most_load_percent, unit="% of the maximum")
    wear_minutes = Number(above=0, most=LIMITS.wear_stop_s / 60, unit="minutes")
    days_a_week = Whole(least=1, most=LIMITS.days_a_week, unit="days")
    tightness = Whole(least=1, most=LIMITS.most_tightness_leg, unit="of 10")
    pressure_percent = Number(above=0, most=LIMITS.most_pressure_percent, unit="%")
    in_words = Text(1000)


class PrescriptionShape(Shape):
    builds = occlusion.Prescription
    cuff = Text(80, 1, required=True)
    width_mm = Number(least=30, most=250, unit="mm", required=True)
    material = Text(40, 1, required=True)
    pressure = Text(200, 1, required=True)
    as_written = Text(500, 1, required=True)


class ClearanceShape(Shape):
    builds = occlusion.Clearance
    by = Text(80, 1, required=True)
    profession = OneOf(Profession, required=True)
    licence = Text(80, 1, required=True)
    on = Day(required=True)
    until = Day(required=True)
    covers = Keys(required=True)
    limits = fields.Nested(ClinicianLimitsShape)
    alone = Truth()
    prescription = fields.Nested(PrescriptionShape)


class MeasuredShape(Shape):
    builds = occlusion.Measured
    mmhg = Number(least=LIMITS.measured_mmhg[0], most=LIMITS.measured_mmhg[1], unit="mmHg",
                  required=True)  # fmt: skip
    on = Day(required=True)
    by = Text(80, 1, required=True)
    site = SiteText(20, 1, required=True)
    position = Text(80, 1, required=True)
    width_mm = Number(least=10, most=300, unit="mm", required=True)
    material = Text(40, 1, required=True)
