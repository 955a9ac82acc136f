"""Screening at the desk: ask for it, sign it, record clearances and pressures, withdraw them."""

from dataclasses import dataclass
from datetime import date
from typing import Any, Never

from undercroft.documents.canonical import plain
from undercroft.documents.faults import Fault
from undercroft.domain.occlusion import Aim, Clearance, Measured, OcclusionRecord, Signature
from undercroft.services import planning
from undercroft.services.clock import day_of
from undercroft.services.occlusion_record import SHAPES, record_of
from undercroft.services.people import athlete_document
from undercroft.services.refusals import Invalid, NotFound
from undercroft.services.screening_feed import publish_questions, publish_standing
from undercroft.store import screening
from undercroft.store.feed import athlete_lock
from undercroft.store.models import Athlete

NOTHING_MOVED = frozenset[str]()


@dataclass(frozen=True, slots=True)
class Coach:
    """Who records, by id and name."""

    id: str
    name: str


@dataclass(frozen=True, slots=True)
class Signed:
    """The coach has read the screening of that id; `note` says what was weighed."""

    of: str
    note: str
    aim: Aim


def ask(athlete_id: str, now: int) -> None:
    """Let the athlete's phones ask the questions."""
    with athlete_lock(athlete_id):
        screening.ask(athlete_id, now)
        publish_questions(athlete_id)
        _publish(athlete_id)


def sign(athlete_id: str, signed: Signed, coach: Coach, now: int) -> None:
    """The coach's signature under the latest screening. Raises Invalid for any other."""
    with athlete_lock(athlete_id) as row:
        latest = _record(row).screening.latest
        if latest is None or latest.id != signed.of:
            raise Invalid("this is not the latest screening", "read the latest one, then sign it")
        made = Signature(signed.of, coach.name, day_of(now), signed.note, signed.aim)
        _add(row, "signature", made, coach, now)


def clear(athlete_id: str, clearance: Clearance, coach: Coach, now: int) -> None:
    """A licensed clinician's word. Raises Invalid where it is the coach's own."""
    if clearance.by.strip().casefold() == coach.name.strip().casefold():
        _refuse("by", "a coach cannot clear the own athlete", "name the licensed clinician")
    _not_ahead(clearance.on, now)
    with athlete_lock(athlete_id) as row:
        _add(row, "clearance", clearance, coach, now)


def measure(athlete_id: str, measured: Measured, coach: Coach, now: int) -> None:
    """A limb occlusion pressure that somebody trained has measured. Raises Invalid."""
    _not_ahead(measured.on, now)
    with athlete_lock(athlete_id) as row:
        _add(row, "pressure", measured, coach, now)


def withdraw(athlete_id: str, number: int, now: int) -> None:
    """Let a record count no more; what rests on it closes. Raises NotFound."""
    with athlete_lock(athlete_id):
        if not screening.withdraw(athlete_id, number, now):
            raise NotFound()
        refresh(athlete_id)


def refresh(athlete_id: str) -> None:
    """Bring locks, sheets and phones up to date; call with the athlete's lock held."""
    row = Athlete.get_by_id(athlete_id)
    planning.refresh(row, NOTHING_MOVED)
    _publish(athlete_id)


def _add(row: Athlete, kind: str, made: Any, coach: Coach, now: int) -> None:
    body = plain(SHAPES[kind]().dump(made))
    screening.add(row.id, kind, body, now, coach.id)
    refresh(row.id)


def _publish(athlete_id: str) -> None:
    row = Athlete.get_by_id(athlete_id)
    publish_standing(row, _record(row))


def _record(row: Athlete) -> OcclusionRecord:
    return record_of(row.id, athlete_document(row))


def _not_ahead(on: date, now: int) -> None:
    if on > day_of(now):
        _refuse("on", f"{on} has not come yet", "the day on which it was done")


def _refuse(field: str, what: str, right: str) -> Never:
    raise Invalid(what, right, (Fault(field, field, what, right),))
