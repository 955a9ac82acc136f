"""One athlete as the desk sees and edits them."""

from dataclasses import dataclass
from typing import Any

from undercroft.documents.athlete import AthleteShape
from undercroft.documents.canonical import plain
from undercroft.documents.kit import KitShape
from undercroft.documents.made import made
from undercroft.documents.reading import read_athlete, read_kit
from undercroft.domain.athlete import Athlete
from undercroft.services import devices, planning, rights, screening_page, tracking
from undercroft.services.catalogues import catalogue_for
from undercroft.services.devices import DeviceSeen
from undercroft.services.people import athlete_document, feed_body
from undercroft.services.planning import Ahead
from undercroft.services.replanning import catch_up
from undercroft.services.rights import OWN
from undercroft.services.tracker_feed import MaximumSeen, maxima_of, publish_trackers
from undercroft.services.tracking import Reworked
from undercroft.store import athletes, blocks, offers, revisions
from undercroft.store.feed import athlete_lock, publish
from undercroft.store.models import Revision
from undercroft.store.offers import HandedOver

THE_KIT = ""
"""Key of the kit in the feed: an athlete has one, so that one of another key takes its place."""


@dataclass(frozen=True, slots=True)
class AthletePage:
    """`document` is what the coach edits; `kit` is None until one was written down.

    `right`: what the coach who asks may do, own, read or write; `owner`: whose athlete it is, and
    `handed_over` since when, if it was another's: phones from before were paired by that one.
    """

    id: str
    name: str
    right: str
    owner: str
    document: dict[str, Any]
    kit: dict[str, Any] | None
    block: dict[str, Any] | None
    revision: int | None
    maxima: list[MaximumSeen]
    devices: list[DeviceSeen]
    handed_over: HandedOver | None
    screening: dict[str, str]


def page(coach_id: str, athlete_id: str, now: int) -> AthletePage:
    """Everything on the athlete's page, for a coach who may read it.

    What a fault left undone is done first.
    """
    catch_up(athlete_id, now)
    row = athletes.athlete_with_coach(athlete_id)
    athlete = athlete_document(row)
    sent = revisions.latest_revision(athlete_id)
    return AthletePage(
        id=row.id,
        name=row.name,
        right=str(rights.right_to(coach_id, athlete_id)),
        owner=row.coach.name,
        document=plain(made(AthleteShape).dump(athlete)),
        kit=row.kit,
        block=None if sent is None else _block(coach_id, sent),
        revision=None if sent is None else sent.number,
        maxima=maxima_of(athlete_id, athlete),
        devices=devices.devices_of(athlete_id),
        handed_over=offers.handed_over(athlete_id),
        screening=screening_page.in_short(athlete_id, now),
    )


def _block(coach_id: str, sent: Revision) -> dict[str, Any]:
    """`mine`: the coach who asks has it among their blocks."""
    mine = sent.block in blocks.ids_of(coach_id)
    return {"id": sent.block, "name": sent.document["name"], "mine": mine}


def save_document(athlete_id: str, data: Any) -> dict[str, Any]:
    """Keep an athlete's document and work out what follows. Raises FaultyDocument."""
    athlete = read_athlete(data, catalogue_for(athlete_id))
    document: dict[str, Any] = plain(made(AthleteShape).dump(athlete))
    ready = _with_document(athlete_id, athlete, document)
    with athlete_lock(athlete_id) as now:
        if now.position != ready.position:
            ready = _with_document(athlete_id, athlete, document)
        athletes.keep_document(athlete_id, athlete.name, document)
        row = athletes.athlete_with_coach(athlete_id)
        publish(athlete_id, "athlete", athlete_id, feed_body(row, row.coach.name))
        tracking.keep(athlete_id, ready.trackers)
        planning.put_out_changed(athlete_id, ready.ahead)
        publish_trackers(athlete_id, athlete)
    return document


def save_document_by(coach_id: str, athlete_id: str, data: Any) -> dict[str, Any]:
    """`save_document` by a coach; what may open occlusion work is for the own coach alone.

    Raises FaultyDocument, NotAllowed.
    """
    before = athlete_document(athletes.athlete_with_coach(athlete_id))
    after = read_athlete(data, catalogue_for(athlete_id))
    if (before.born, before.trains_alone) != (after.born, after.trains_alone):
        rights.require(coach_id, athlete_id, OWN)
    return save_document(athlete_id, data)


def save_kit(athlete_id: str, data: Any) -> dict[str, Any]:
    """Keep a kit and work out what follows. Raises FaultyDocument."""
    kit = read_kit(data)
    document: dict[str, Any] = plain(made(KitShape).dump(kit))
    ready = _with_kit(athlete_id, document)
    with athlete_lock(athlete_id) as now:
        if now.position != ready.position:
            ready = _with_kit(athlete_id, document)
        athletes.keep_kit(athlete_id, document)
        publish(athlete_id, "kit", THE_KIT, document)
        planning.put_out_changed(athlete_id, ready.ahead)
    return document


@dataclass(frozen=True, slots=True, eq=False)
class _Ready:
    """What follows from a change, worked out before the lock under which nobody else can write.

    It holds as long as the athlete stands at `position`; who is overtaken works it out again.
    """

    position: int
    trackers: Reworked
    ahead: Ahead


def _with_document(athlete_id: str, athlete: Athlete, document: dict[str, Any]) -> _Ready:
    row = athletes.athlete_with_coach(athlete_id)
    row.document = document
    done = tracking.reworked(athlete_id, athlete)
    told = {lift: rows[-1][1] for lift, rows in done.items() if rows}
    return _Ready(row.position, done, planning.ahead_of(row, told=told))


def _with_kit(athlete_id: str, document: dict[str, Any]) -> _Ready:
    row = athletes.athlete_with_coach(athlete_id)
    row.kit = document
    return _Ready(row.position, {}, planning.ahead_of(row))
