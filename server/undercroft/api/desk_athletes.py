"""The desk's athletes: who they are, their phones, how a phone is invited.

Phones are for the athlete's own coach: a phone that another coach paired would outlast their right.
"""

from typing import Any

from undercroft.api import qr, shapes
from undercroft.api.context import origin
from undercroft.api.contract import COACH, Section, by, gives, needs, takes
from undercroft.services import athletes, devices, pairing
from undercroft.services.accounts import CoachSeen
from undercroft.services.rights import OWN

section = Section("desk", "/api/v1/desk")


@section.get("/athletes")
@by(COACH)
@gives(shapes.AthletesAnswer)
def list_athletes(coach: CoachSeen) -> dict[str, Any]:
    """The coach's own and shared athletes by name, with their devices."""
    return {"athletes": athletes.athletes_of(coach.id)}


@section.post("/athletes")
@by(COACH)
@takes(shapes.NewAthlete)
@gives(shapes.AthleteAnswer, 201)
def add_athlete(coach: CoachSeen, body: dict[str, str], now: int) -> athletes.AthleteSeen:
    """Add an athlete."""
    return athletes.add_athlete(coach.id, body["name"], now)


@section.post("/athletes/<athlete_id>/invitations")
@by(COACH)
@needs(OWN)
@gives(shapes.InvitationMade, 201)
def invite(athlete_id: str, now: int) -> dict[str, Any]:
    """Make an invitation; its link is good for seven days and one phone."""
    invitation_id, secret, expires_at = pairing.invite(athlete_id, now)
    url = f"{origin()}/pair#{secret}"
    return {"id": invitation_id, "url": url, "qr": qr.svg_of(url), "expires_at": expires_at}


@section.get("/athletes/<athlete_id>/invitations")
@by(COACH)
@needs(OWN)
@gives(shapes.InvitationsAnswer)
def list_invitations(athlete_id: str) -> dict[str, Any]:
    """The athlete's invitations, newest first."""
    return {"invitations": pairing.invitations(athlete_id)}


@section.post("/athletes/<athlete_id>/invitations/<invitation_id>/revoke")
@by(COACH)
@needs(OWN)
@gives(None)
def revoke_invitation(athlete_id: str, invitation_id: str, now: int) -> None:
    """Make an invitation useless."""
    pairing.revoke_invitation(athlete_id, invitation_id, now)


@section.post("/athletes/<athlete_id>/codes")
@by(COACH)
@needs(OWN)
@gives(shapes.CodeAnswer, 201)
def make_code(athlete_id: str, now: int) -> dict[str, Any]:
    """Make a code to be read out to the athlete; good for ten minutes and five tries."""
    code, expires_at = pairing.make_code(athlete_id, now)
    return {"code": code, "expires_at": expires_at}


@section.get("/athletes/<athlete_id>/devices")
@by(COACH)
@gives(shapes.DevicesAnswer)
def list_devices(athlete_id: str) -> dict[str, Any]:
    """The athlete's devices, oldest first."""
    return {"devices": devices.devices_of(athlete_id)}


@section.post("/athletes/<athlete_id>/devices/<device_id>/revoke")
@by(COACH)
@needs(OWN)
@gives(None)
def revoke_device(athlete_id: str, device_id: str, now: int) -> None:
    """Unpair a device; what it still sends is held for the coach."""
    devices.revoke(athlete_id, device_id, now)
