"""A phone's hand-over file at the desk."""

from typing import Any

from undercroft.api import hand_over_shapes as shapes
from undercroft.api.contract import COACH, Section, by, gives, refuses, takes
from undercroft.services import hand_over
from undercroft.services.refusals import Invalid

section = Section("hand_over", "/api/v1/desk")

MOST_BYTES = 7 * 1024 * 1024


@section.post("/athletes/<athlete_id>/hand-over/look")
@by(COACH)
@takes(shapes.HandOverAsked, MOST_BYTES)
@gives(shapes.HandOverSeenAnswer)
@refuses(Invalid)
def look_at_hand_over(athlete_id: str, body: dict[str, Any]) -> hand_over.HandOverSeen:
    """Say what a phone's hand-over file holds and whose it is; takes nothing in."""
    return hand_over.look(athlete_id, body["text"])


@section.post("/athletes/<athlete_id>/hand-over")
@by(COACH)
@takes(shapes.HandOverAsked, MOST_BYTES)
@gives(shapes.HandOverTakenAnswer)
@refuses(Invalid)
def take_hand_over(athlete_id: str, body: dict[str, Any], now: int) -> hand_over.HandOverTaken:
    """Take in what a phone could not send, as a sync does: twice is the same as once."""
    return hand_over.take(athlete_id, body["text"], now)
