"""The desk's own changes: what one athlete does otherwise than a block says."""

from typing import Any

from undercroft.api.contract import COACH, Section, by, gives, refuses, takes
from undercroft.api.desk_shapes import MOST_BLOCK_BYTES
from undercroft.api.own_shapes import DecideAsked, OwnAnswer, OwnAsked, OwnSavedAnswer
from undercroft.services import own_changes
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import Conflict, Invalid

section = Section("own", "/api/v1/desk/blocks/<block_id>/own/<athlete_id>")


@section.get("")
@by(COACH)
@gives(OwnAnswer)
@refuses(Invalid)
def show_own(coach: CoachSeen, block_id: str, athlete_id: str) -> own_changes.OwnSeen:
    """A block as one athlete does it, and what in it is this athlete's own."""
    return own_changes.seen(coach.id, block_id, athlete_id)


@section.post("")
@by(COACH)
@takes(OwnAsked, MOST_BLOCK_BYTES)
@gives(OwnSavedAnswer)
@refuses(Invalid, Conflict)
def save_own(
    coach: CoachSeen, block_id: str, athlete_id: str, body: dict[str, Any], now: int
) -> own_changes.OwnSaved:
    """Keep what makes this document of the block; the block itself stays as it is written."""
    document, as_of = body["document"], body["as_of"]
    return own_changes.save(coach.id, block_id, athlete_id, document, as_of, now)


@section.post("/decide")
@by(COACH)
@takes(DecideAsked)
@gives(OwnAnswer)
@refuses(Invalid, Conflict)
def decide_own(
    coach: CoachSeen, block_id: str, athlete_id: str, body: dict[str, Any], now: int
) -> own_changes.OwnSeen:
    """Go back to the block at some places, or keep what is own to what the block says now."""
    places, take = body["places"], body["take"]
    return own_changes.decide(coach.id, block_id, athlete_id, places, take, now)
