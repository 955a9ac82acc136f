"""The desk's sheets for paper."""

from typing import Any

from marshmallow import Schema, fields

from undercroft.api.contract import COACH, Section, by, gives
from undercroft.documents.sheet import LoadSheetShape
from undercroft.services import sheets_shown

section = Section("sheets", "/api/v1/desk")


class SheetsAnswer(Schema):
    name = fields.String(metadata={"description": "of the athlete"})
    block = fields.String()
    revision = fields.Integer(allow_none=True)
    sheets = fields.List(fields.Nested(LoadSheetShape))
    wrap_signs = fields.List(
        fields.String(), metadata={"description": "what forbids and ends work with a wrap on"}
    )


@section.get("/athletes/<athlete_id>/sheets")
@by(COACH)
@gives(SheetsAnswer, plain=True)
def show_sheets(athlete_id: str) -> dict[str, Any]:
    """The load sheets of what an athlete trains by, in the order of the plan."""
    shown = sheets_shown.sheets_shown(athlete_id)
    return {
        "name": shown.name,
        "block": shown.block,
        "revision": shown.revision,
        "sheets": shown.sheets,
        "wrap_signs": list(shown.wrap_signs),
    }
