"""The body of `kit.changed`: what a phone proposes to change in the kit.

    {"kind": "gone", "list": "plates", "name": 20, "count": 2}
    {"kind": "gone", "list": "bars", "name": "bar-20", "row": {…so that it can come back…}}
    {"kind": "back", "list": "bars", "name": "bar-20", "row": {…as it was…}}
    {"kind": "bar-weighed", "key": "bar-20", "with_kg": 91.4, "without_kg": 71.8}
    {"kind": "band-measured", "key": "thin-left", "rest_length_m": 1.04,
     "readings": [{"length_m": 1.25, "kg": 5.3}, …]}
    {"kind": "withdrawn"}, which replaces one that was a mistake

Anything else is kept too and shown to the coach as it is.
"""

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError, fields

from undercroft.documents import kit as shapes
from undercroft.documents.fields import Key, Many, Number, Tagged, Whole
from undercroft.documents.shape import Shape
from undercroft.domain import kit_changes
from undercroft.domain.kit_changes import Back, KitChange, Piece

ROWS: Mapping[str, type[Shape]] = {
    "bars": shapes.BarShape,
    "plates": shapes.PlateShape,
    "dumbbells": shapes.DumbbellShape,
    "handles": shapes.HandleShape,
    "stacks": shapes.StackShape,
    "bands": shapes.BandShape,
    "chains": shapes.ChainShape,
    "anchors": shapes.AnchorShape,
    "supports": shapes.SupportShape,
    "landmines": shapes.LandmineShape,
    "wraps": shapes.WrapShape,
    "cuffs": shapes.CuffShape,
}
"""The shape of a row by its list in the kit; `things` are texts."""


class HangingReadingShape(Shape):
    builds = kit_changes.HangingReading
    length_m = Number(above=0, most=6, unit="m", required=True)
    kg = Number(least=0, most=300, unit="kg", required=True)


class BarWeighedShape(Shape):
    builds = kit_changes.BarWeighed
    key = Key(required=True)
    with_kg = Number(above=0, most=400, unit="kg", required=True)
    without_kg = Number(least=0, most=400, unit="kg")


class BandMeasuredShape(Shape):
    builds = kit_changes.BandMeasured
    key = Key(required=True)
    rest_length_m = Number(least=0.1, most=3, unit="m", required=True)
    readings = Many(fields.Nested(HangingReadingShape), fewest=2, most=20, required=True)


WITHDRAWN = "withdrawn"

MEASURED = Tagged("kind", {"bar-weighed": BarWeighedShape, "band-measured": BandMeasuredShape})
COUNT = Whole(least=1, most=100)


def read_kit_change(change: Any) -> KitChange | None:
    """The change that is proposed; None where it has another shape than those above."""
    try:
        if change.get("kind") in ("gone", "back"):
            return _came_or_went(change)
        measured: KitChange = MEASURED.deserialize(change)
    except (ValidationError, AttributeError, TypeError):
        return None
    return measured


def _came_or_went(change: Mapping[str, Any]) -> KitChange | None:
    list_, name = change.get("list"), change.get("name")
    if list_ not in (*ROWS, "things") or not isinstance(name, str | int | float):
        return None
    piece = Piece(list_, name)
    count = COUNT.deserialize(change.get("count", 1))
    if change["kind"] == "gone":
        return kit_changes.Gone(piece, count)
    return Back(piece, count, _row(list_, change.get("row")))


def _row(list_: str, row: Any) -> Any:
    """The piece as it was; a thing is its own name."""
    if row is None or list_ == "things":
        return row
    return ROWS[list_]().load(row)
