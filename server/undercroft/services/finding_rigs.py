"""Find bands: which rigs an athlete's kit can make for an exercise of a draft."""

from dataclasses import dataclass
from typing import Any

from undercroft.documents.reading import read_block
from undercroft.domain.errors import LoadError
from undercroft.domain.program.block import Block, ExercisePlan
from undercroft.domain.program.rig import Rig
from undercroft.domain.sheet import Offers, day_of_session, offers
from undercroft.services import lending, planning, preview
from undercroft.services.catalogues import catalogue_of
from undercroft.services.clock import day_of
from undercroft.services.refusals import Invalid
from undercroft.store import athletes


@dataclass(frozen=True, slots=True)
class Place:
    """An exercise of a block, by the keys of its session and its own."""

    session: str
    exercise: str


@dataclass(frozen=True, slots=True)
class NoRig:
    """Why there is none: where something is wrong, what, and what would be right."""

    where: str
    what: str
    right: str


@dataclass(frozen=True, slots=True)
class FoundRigs:
    """What was found, or why nothing could be looked for; one of the two is None."""

    found: Offers | None = None
    none: NoRig | None = None


NO_KIT = NoRig("the kit", "is not written down yet", "should be what stands in the gym")


def find_rigs(
    coach_id: str, athlete_id: str, document: Any, place: Place, asked: Rig, now: int
) -> FoundRigs:
    """Rigs for the share that is asked for, best first, on the athlete's kit as it stands now.

    Nothing is kept. Raises FaultyDocument, and Invalid where the draft has no such exercise.
    """
    block = read_block(document, catalogue_of(coach_id))
    plan = _plan(block, place)
    row = athletes.athlete_with_coach(athlete_id)
    if row.kit is None:
        return FoundRigs(none=NO_KIT)
    start = preview.first_monday(preview.under_way(athlete_id, block), day_of(now))
    known = lending.catalogue_after(lending.of_block(coach_id, row.coach_id, block))
    day = day_of_session(planning.order_for(row, block, start, known=known), place.session)
    try:
        return FoundRigs(found=offers(day, plan, asked))
    except LoadError as fault:
        return FoundRigs(none=NoRig(fault.where, fault.what, fault.right))


def _plan(block: Block, place: Place) -> ExercisePlan:
    sessions = [one for week in block.weeks for one in week.sessions if one.key == place.session]
    plans = [plan for one in sessions for plan in one.exercises if plan.key == place.exercise]
    if not plans:
        what = f"the block has no exercise {place.exercise!r} in a session {place.session!r}"
        raise Invalid(what, "name a session and one of its exercises by their keys")
    return plans[0]
