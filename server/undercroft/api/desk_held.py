"""Held entries at the desk."""

from typing import Any

from undercroft.api import shapes
from undercroft.api.contract import COACH, Section, by, gives, refuses
from undercroft.services import held
from undercroft.services.refusals import Invalid

section = Section("held", "/api/v1/desk")


@section.get("/athletes/<athlete_id>/held")
@by(COACH)
@gives(shapes.HeldAnswers)
def list_held(athlete_id: str) -> dict[str, Any]:
    """Entries that could not be placed and wait for the coach, oldest first."""
    return {"held": held.held_of(athlete_id)}


@section.post("/athletes/<athlete_id>/held/<int:position>/accept")
@by(COACH)
@gives(shapes.AcceptedAnswer)
@refuses(Invalid)
def accept_held(athlete_id: str, position: int, now: int) -> dict[str, str]:
    """Let a held entry count."""
    return {"id": held.accept(athlete_id, position, now)}
