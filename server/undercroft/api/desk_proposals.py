"""The desk's deciding side: what the next loads should become, and what of it is accepted."""

from typing import Any

from undercroft.api.contract import COACH, Section, by, gives, refuses, takes
from undercroft.api.proposal_shapes import AcceptAnswer, AcceptAsked, LoadProposalsAnswer
from undercroft.services import proposals, sending
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import Conflict

section = Section("proposals", "/api/v1/desk")


@section.get("/athletes/<athlete_id>/proposals")
@by(COACH)
@gives(LoadProposalsAnswer)
def show_proposals(athlete_id: str, now: int) -> proposals.Proposals:
    """What the loads of the week ahead should become, set by set, and why."""
    return proposals.proposals(athlete_id, now)


@section.post("/athletes/<athlete_id>/proposals/accept")
@by(COACH)
@takes(AcceptAsked)
@gives(AcceptAnswer)
@refuses(Conflict)
def accept_proposals(
    coach: CoachSeen, athlete_id: str, body: dict[str, Any], now: int
) -> sending.Sent:
    """Send proposed loads to this athlete; stops refuse them, and can be set aside in writing.

    Nothing is sent where one of them is not proposed any more.
    """
    overrules = sending.overrules_of(coach.name, body, now)
    return proposals.accept(coach.id, athlete_id, body["accepted"], overrules, now)
