"""Sharing athletes with other coaches, and handing them over.

A link works as the one that pairs a phone: a secret in its fragment, single use, seven days, and
nothing happens before an explicit yes of a coach who is logged in and sees who offers what.
"""

from typing import Any

from undercroft.api import shapes, sharing_shapes
from undercroft.api.context import origin
from undercroft.api.contract import COACH, Section, by, gives, needs, refuses, takes
from undercroft.services import sharing
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import Conflict, NotAllowed, NotFound, TooOften
from undercroft.services.rights import OWN, READ

section = Section("sharing", "/api/v1/desk")

PAGE = "/athletes/<athlete_id>/sharing"


@section.get(PAGE)
@by(COACH)
@gives(sharing_shapes.SharingAnswer)
def show_sharing(coach: CoachSeen, athlete_id: str, now: int) -> sharing.SharingSeen:
    """Who else has to do with an athlete, and what is offered."""
    return sharing.sharing_of(coach.id, athlete_id, now)


@section.post(f"{PAGE}/<coach_id>/right")
@by(COACH)
@needs(OWN)
@takes(sharing_shapes.RightAsked)
@gives(None)
def change_right(athlete_id: str, coach_id: str, body: dict[str, Any], now: int) -> None:
    """Let another coach who shares the athlete do more or less, at once."""
    sharing.change(athlete_id, coach_id, body["right"], now)


@section.post(f"{PAGE}/<coach_id>/end")
@by(COACH)
@needs(OWN)
@gives(None)
def end_sharing(athlete_id: str, coach_id: str, now: int) -> None:
    """Take another coach's right back, at once."""
    sharing.end(athlete_id, coach_id, now)


@section.post(f"{PAGE}/leave")
@by(COACH)
@needs(READ)
@gives(None)
@refuses(Conflict)
def leave_athlete(coach: CoachSeen, athlete_id: str, now: int) -> None:
    """Give up the own right to an athlete of another coach."""
    sharing.leave(athlete_id, coach.id, now)


@section.get("/offers")
@by(COACH)
@gives(sharing_shapes.SharingOffersAnswer)
def list_offers(coach: CoachSeen, now: int) -> dict[str, Any]:
    """Links that the coach has made and nobody has used yet, newest first."""
    return {"offers": sharing.open_offers(coach.id, now)}


@section.post("/offers")
@by(COACH)
@takes(sharing_shapes.OfferAsked)
@gives(sharing_shapes.OfferMadeAnswer, 201)
@refuses(NotFound, NotAllowed)
def make_offer(coach: CoachSeen, body: dict[str, Any], now: int) -> dict[str, Any]:
    """Make a link that gives one other coach a right to athletes, or the athletes themselves."""
    made = sharing.offer(coach.id, body["athletes"], body["gives"], body["keeps"], now)
    url = f"{origin()}/desk/join#{made.secret}"
    return {"id": made.id, "url": url, "expires_at": made.expires_at}


@section.post("/offers/<offer_id>/revoke")
@by(COACH)
@gives(None)
def revoke_offer(coach: CoachSeen, offer_id: str, now: int) -> None:
    """Make a link useless."""
    sharing.revoke_offer(coach.id, offer_id, now)


@section.post("/offers/look")
@by(COACH)
@takes(shapes.Secret)
@gives(sharing_shapes.SharingOfferOpenedAnswer)
@refuses(NotFound, TooOften)
def look_at_offer(coach: CoachSeen, body: dict[str, str], now: int) -> sharing.OfferOpened:
    """See who offers what, and what comes with it; uses nothing up."""
    return sharing.look(coach.id, body["secret"], now)


@section.post("/offers/accept")
@by(COACH)
@takes(shapes.Secret)
@gives(sharing_shapes.OfferTakenAnswer)
@refuses(NotFound, Conflict, TooOften)
def accept_offer(coach: CoachSeen, body: dict[str, str], now: int) -> sharing.Accepted:
    """Use a link up and take what it gives."""
    return sharing.accept(coach.id, body["secret"], now)
