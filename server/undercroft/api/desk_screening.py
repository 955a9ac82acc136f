"""The desk's screening: asked for, read and signed; clearances and pressures recorded.

What may open occlusion work is for the athlete's own coach alone; whoever may write may close it.
"""

from typing import Any

from undercroft.api import screening_shapes as shapes
from undercroft.api.contract import COACH, Section, by, gives, needs, takes
from undercroft.documents.screening import ClearanceShape, MeasuredShape, SigningShape
from undercroft.services import occlusion_guide, screening, screening_page
from undercroft.services.accounts import CoachSeen
from undercroft.services.occlusion_guide import OcclusionGuide
from undercroft.services.rights import OWN
from undercroft.services.screening_seen import ScreeningPage

section = Section("screening", "/api/v1/desk")

PAGE = "/athletes/<athlete_id>/screening"


@section.get("/occlusion")
@by(COACH)
@gives(shapes.OcclusionGuideAnswer)
def show_occlusion() -> OcclusionGuide:
    """Patterns of sets to begin with, and the limits that nobody moves."""
    return occlusion_guide.guide()


@section.get(PAGE)
@by(COACH)
@gives(shapes.ScreeningPageAnswer)
def show_screening(athlete_id: str, now: int) -> ScreeningPage:
    """Answers, what they lead to, what was recorded, and what opens occlusion work."""
    return screening_page.page(athlete_id, now)


@section.post(f"{PAGE}/ask")
@by(COACH)
@gives(shapes.ScreeningPageAnswer)
def ask_for_screening(athlete_id: str, now: int) -> ScreeningPage:
    """Let the athlete's phones ask the questions."""
    screening.ask(athlete_id, now)
    return screening_page.page(athlete_id, now)


@section.post(f"{PAGE}/sign")
@by(COACH)
@needs(OWN)
@takes(SigningShape)
@gives(shapes.ScreeningPageAnswer)
def sign_screening(
    coach: CoachSeen, athlete_id: str, body: dict[str, Any], now: int
) -> ScreeningPage:
    """Sign the latest screening, once it was read."""
    screening.sign(athlete_id, screening.Signed(**body), _recording(coach), now)
    return screening_page.page(athlete_id, now)


@section.post(f"{PAGE}/clearances")
@by(COACH)
@needs(OWN)
@takes(ClearanceShape)
@gives(shapes.ScreeningPageAnswer, 201)
def record_clearance(coach: CoachSeen, athlete_id: str, body: Any, now: int) -> ScreeningPage:
    """Record a licensed clinician's clearance; the coach's own word is none."""
    screening.clear(athlete_id, body, _recording(coach), now)
    return screening_page.page(athlete_id, now)


@section.post(f"{PAGE}/pressures")
@by(COACH)
@needs(OWN)
@takes(MeasuredShape)
@gives(shapes.ScreeningPageAnswer, 201)
def record_pressure(coach: CoachSeen, athlete_id: str, body: Any, now: int) -> ScreeningPage:
    """Record a limb occlusion pressure that somebody trained has measured."""
    screening.measure(athlete_id, body, _recording(coach), now)
    return screening_page.page(athlete_id, now)


@section.post(f"{PAGE}/records/<int:number>/withdraw")
@by(COACH)
@needs(OWN)
@gives(shapes.ScreeningPageAnswer)
def withdraw_record(athlete_id: str, number: int, now: int) -> ScreeningPage:
    """Let a record count no more; what rests on it closes.

    Without the tighter of two, the other one may open more: that too is the own coach's to say.
    """
    screening.withdraw(athlete_id, number, now)
    return screening_page.page(athlete_id, now)


def _recording(coach: CoachSeen) -> screening.Coach:
    return screening.Coach(coach.id, coach.name)
