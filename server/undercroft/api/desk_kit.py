"""Changes of the kit that athletes propose, at the desk."""

from typing import Any

from undercroft.api import desk_shapes, kit_shapes
from undercroft.api.contract import COACH, Section, by, gives, refuses
from undercroft.services import kit_proposals
from undercroft.services.refusals import Invalid

section = Section("kit", "/api/v1/desk")

PROPOSALS = "/athletes/<athlete_id>/kit/proposals"


@section.get(PROPOSALS)
@by(COACH)
@gives(kit_shapes.ProposalsAnswer)
def list_proposals(athlete_id: str) -> dict[str, Any]:
    """Changes of the kit that the athlete proposes and nobody has decided, oldest first."""
    return {"proposals": kit_proposals.open_proposals(athlete_id)}


@section.post(f"{PROPOSALS}/<entry_id>/accept")
@by(COACH)
@gives(desk_shapes.KitDocument, plain=True)
@refuses(Invalid)
def accept_proposal(athlete_id: str, entry_id: str) -> dict[str, Any]:
    """Apply a proposed change to the kit; sheets of sessions not begun are worked out again."""
    return {"document": kit_proposals.accept(athlete_id, entry_id)}


@section.post(f"{PROPOSALS}/<entry_id>/decline")
@by(COACH)
@gives(None)
def decline_proposal(athlete_id: str, entry_id: str) -> None:
    """Set a proposed change aside; the kit stays as it is, and the phone is told."""
    kit_proposals.decline(athlete_id, entry_id)
