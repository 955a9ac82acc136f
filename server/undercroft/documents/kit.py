"""The kit document: everything that stands in one gym."""

from itertools import pairwise
from typing import Any

from marshmallow import ValidationError, fields, pre_load, validates_schema

from undercroft.documents.fields import (
    Key,
    Many,
    Number,
    OneOf,
    Text,
    Truth,
    Whole,
    say,
)
from undercroft.documents.shape import Shape
from undercroft.domain import kit
from undercroft.domain.loads import KG_PER_LB


class BarShape(Shape):
    builds = kit.Bar
    key = Key(required=True)
    name = Text(80, 1, required=True)
    mass_kg = Number(above=0, most=60, unit="kg", required=True)
    kind = OneOf(kit.BarKind)
    sleeve_length_m = Number(least=0.05, most=0.6, unit="m")
    rated_load_kg = Number(above=0, most=1000, unit="kg")
    collar_mass_kg = Number(least=0, most=5, unit="kg")


POUNDS = Number(above=0, most=220, unit="lb")


class PlateShape(Shape):
    """Mass in kg or, for plates cast in pounds, in lb; never both."""

    builds = kit.Plate
    mass_kg = Number(above=0, most=100, unit="kg", required=True)
    count = Whole(least=0, most=100, required=True)
    thickness_m = Number(above=0, most=0.2, unit="m", required=True)
    label = Text(40)

    @pre_load
    def _from_pounds(self, data: Any, **_: Any) -> Any:
        if not isinstance(data, dict) or "mass_lb" not in data:
            return data
        if "mass_kg" in data:
            raise ValidationError({"mass_lb": ["given beside mass_kg; give one of the two"]})
        pounds: float = POUNDS.deserialize(data["mass_lb"])  # type: ignore[assignment]
        rest = {key: value for key, value in data.items() if key != "mass_lb"}
        return {"label": f"{pounds:g} lb", **rest, "mass_kg": pounds * KG_PER_LB}


class DumbbellShape(Shape):
    builds = kit.Dumbbell
    mass_kg = Number(above=0, most=100, unit="kg", required=True)
    count = Whole(least=0, most=40, required=True)


class HandleShape(Shape):
    builds = kit.DumbbellHandle
    key = Key(required=True)
    name = Text(80, 1, required=True)
    mass_kg = Number(above=0, most=20, unit="kg", required=True)
    count = Whole(least=1, most=20, required=True)
    sleeve_length_m = Number(least=0.03, most=0.4, unit="m")
    rated_load_kg = Number(above=0, most=200, unit="kg")
    collar_mass_kg = Number(least=0, most=2, unit="kg")


class StackShape(Shape):
    builds = kit.Stack
    key = Key(required=True)
    name = Text(80, 1, required=True)
    pins_kg = Many(Number(above=0, most=400, unit="kg"), fewest=1, most=60, required=True)
    add_ons_kg = Many(Number(above=0, most=20, unit="kg"), most=8)
    travel_ratio = Number(least=0.25, most=8)
    sheaves = Whole(least=0, most=12)
    sheave_efficiency = Number(least=0.7, most=1)
    efficiency_measured = Truth()
    only_for = Many(Key(), most=60)

    @validates_schema
    def _pins_rise(self, data: dict[str, Any], **_: Any) -> None:
        pins = data.get("pins_kg", ())
        if any(low >= high for low, high in pairwise(pins)):
            raise ValidationError(
                {"pins_kg": ["not in rising order; list each pin once, lightest first"]}
            )


class BandReadingShape(Shape):
    builds = kit.BandReading
    length_m = Number(above=0, most=6, unit="m", required=True)
    force_n = Number(least=0, most=3000, unit="N", required=True)


class BandShape(Shape):
    builds = kit.Band
    key = Key(required=True)
    label = Text(40, 1, required=True)
    width_mm = Number(least=3, most=150, unit="mm", required=True)
    thickness_mm = Number(least=1, most=12, unit="mm", required=True)
    rest_length_m = Number(least=0.1, most=3, unit="m", required=True)
    readings = Many(fields.Nested(BandReadingShape), most=20)
    measured_on = Text(10)

    @validates_schema
    def _readings_are_stretched(self, data: dict[str, Any], **_: Any) -> None:
        rest = data.get("rest_length_m", 0)
        for place, reading in enumerate(data.get("readings", ())):
            if reading.length_m <= rest:
                what = (
                    f"{reading.length_m:g} m is no longer than the band at rest; read it stretched"
                )
                raise ValidationError({"readings": {place: {"length_m": [what]}}})


class ChainShape(Shape):
    builds = kit.Chain
    key = Key(required=True)
    label = Text(40, 1, required=True)
    length_m = Number(above=0, most=6, unit="m", required=True)
    mass_per_m_kg = Number(above=0, most=20, unit="kg per metre")
    diameter_mm = Number(least=3, most=25, unit="mm")
    count = Whole(least=1, most=20)

    @validates_schema
    def _known_mass(self, data: dict[str, Any], **_: Any) -> None:
        if data.get("mass_per_m_kg") is None and data.get("diameter_mm") is None:
            raise ValidationError(
                {"mass_per_m_kg": ["neither this nor diameter_mm is given; give one of the two"]}
            )


class AnchorShape(Shape):
    builds = kit.Anchor
    key = Key(required=True)
    name = Text(80, 1, required=True)
    height_m = Number(least=0, most=4, unit="m", required=True)
    offset_m = Number(least=0, most=3, unit="m")
    sides = Whole(least=1, most=2)
    choke_m = Number(least=0, most=1, unit="m")


class SupportShape(Shape):
    builds = kit.Support
    key = Key(required=True)
    name = Text(80, 1, required=True)
    spacing_m = Number(least=0.3, most=1.5, unit="m", required=True)
    safeties = Truth(required=True)
    rated_load_kg = Number(above=0, most=1000, unit="kg")


class LandmineShape(Shape):
    builds = kit.Landmine
    key = Key(required=True)
    name = Text(80, 1, required=True)
    pivot_height_m = Number(least=0, most=0.5, unit="m")
    socket_m = Number(least=0, most=0.3, unit="m")


class WrapShape(Shape):
    builds = kit.Wrap
    key = Key(required=True)
    label = Text(40, 1, required=True)
    width_mm = Number(least=20, most=200, unit="mm", required=True)
    count = Whole(least=1, most=8)


class CuffShape(Shape):
    builds = kit.Cuff
    key = Key(required=True)
    label = Text(40, 1, required=True)
    width_mm = Number(least=20, most=250, unit="mm", required=True)
    material = Text(40, 1, required=True)
    count = Whole(least=1, most=8)


class KitShape(Shape):
    builds = kit.Kit
    key = Key(required=True)
    name = Text(80, 1, required=True)
    bars = Many(fields.Nested(BarShape), most=40)
    plates = Many(fields.Nested(PlateShape), most=60)
    dumbbells = Many(fields.Nested(DumbbellShape), most=80)
    handles = Many(fields.Nested(HandleShape), most=20)
    stacks = Many(fields.Nested(StackShape), most=20)
    bands = Many(fields.Nested(BandShape), most=60)
    chains = Many(fields.Nested(ChainShape), most=20)
    anchors = Many(fields.Nested(AnchorShape), most=40)
    supports = Many(fields.Nested(SupportShape), most=20)
    landmines = Many(fields.Nested(LandmineShape), most=10)
    wraps = Many(fields.Nested(WrapShape), most=20)
    cuffs = Many(fields.Nested(CuffShape), most=20)
    notes = Text(2000)
    things = Many(Text(60, 1), most=60)

    @validates_schema
    def _keys_differ(self, data: dict[str, Any], **_: Any) -> None:
        seen: set[str] = set()
        for sort, things in data.items():
            for place, thing in enumerate(things if isinstance(things, tuple) else ()):
                key = getattr(thing, "key", None)
                if key in seen:
                    what = f"{say(key)} is already taken in this kit; give it a key of its own"
                    raise ValidationError({sort: {place: {"key": [what]}}})
                if key:
                    seen.add(key)
