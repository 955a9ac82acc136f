"""Verify that what was worked out from the ledger is what the ledger says now."""

from collections.abc import Iterator, Sequence
from math import isclose

from undercroft.documents.doses import write_doses
from undercroft.documents.told import ToldSession, read_told
from undercroft.domain.athlete import Athlete
from undercroft.domain.occlusion import doses_of
from undercroft.domain.sheet import DoneSession, lift_standing, settings_for
from undercroft.domain.strength import VelocityMaximum
from undercroft.domain.told import Told, told_by
from undercroft.services import ledger, occlusion_record, tracking
from undercroft.services.catalogues import catalogue_for
from undercroft.services.closing import Closed, closed_by
from undercroft.services.people import athlete_document
from undercroft.store import facts, trackers
from undercroft.store.models import Athlete as AthleteRow

HAIR = 1e-9
"""States are worked out in the same order of the same numbers, so they may miss by no more."""


def told_wrongly(athlete_id: str) -> Iterator[str]:
    """What trackers and facts of sessions keep, against the fold of the ledger."""
    closed = closed_by(athlete_id, ledger.entries_of(athlete_id))
    for one in closed:
        yield from _evidence(athlete_id, one)
    yield from _doses(athlete_id, closed)
    yield from _states(athlete_id, athlete_document(AthleteRow.get_by_id(athlete_id)))


def _evidence(athlete_id: str, closed: Closed) -> Iterator[str]:
    """Readings of velocity rest on the line of that day and are not told anew."""
    kept = {
        row.lift: _without_velocities(read_told(row.body).told)
        for row in trackers.rows_at(athlete_id, closed.order)
    }
    told = told_by(closed.plan, closed.record, catalogue_for(athlete_id))
    for lift in sorted({*kept, *told}):
        if kept.get(lift, ()) != told.get(lift, ()):
            yield f"session {closed.plan.key} tells something else of {lift} than is kept"


def _without_velocities(told: Sequence[Told]) -> tuple[Told, ...]:
    return tuple(one for one in told if not isinstance(one.evidence, VelocityMaximum))


def _doses(athlete_id: str, closed: Sequence[Closed]) -> Iterator[str]:
    on_ledger = [doses for one in closed if (doses := doses_of(one.plan, one.record))]
    worked_out = [write_doses(doses[0].on, doses)["doses"] for doses in on_ledger]
    kept = [body["doses"] for body in facts.all_of(athlete_id, occlusion_record.KIND)]
    if sorted(map(repr, kept)) != sorted(map(repr, worked_out)):
        yield f"{len(worked_out)} sessions had a wrap or cuff on, and {len(kept)} others are kept"


def _states(athlete_id: str, athlete: Athlete) -> Iterator[str]:
    settings = settings_for(athlete)
    now = tracking.standing_now(athlete_id, athlete, {}).lifts
    for lift in trackers.lifts_of(athlete_id):
        rows = [read_told(row.body) for row in trackers.all_rows(athlete_id, lift)]
        anew = lift_standing(athlete, lift, [_done(row) for row in rows], settings)
        kept = now.get(lift)
        means = zip(anew.state.mean, kept.state.mean, strict=True) if anew and kept else ()
        if not anew or not kept or not all(isclose(a, b, abs_tol=HAIR) for a, b in means):
            yield f"the maximum of {lift} is not what its sessions tell"


def _done(row: ToldSession) -> DoneSession:
    return DoneSession(row.on, tuple(one.evidence for one in row.told))
