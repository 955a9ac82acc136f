"""Work out again what an athlete's new entries have changed.

What a session tells counts once it is closed (`closing.py`). Until then the phone walks its own
notch tables, and nothing here would be news to it.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from undercroft.domain.athlete import Athlete
from undercroft.domain.ledger import Entry, fold
from undercroft.domain.strength import TestedMax
from undercroft.domain.told import Told, first_loads, told_by
from undercroft.services import ledger, occlusion_record, planning, tracking, velocities
from undercroft.services.catalogues import catalogue_for
from undercroft.services.clock import day_of
from undercroft.services.closing import Closed, closed_by, may_close
from undercroft.services.occlusion_record import TOLD_BY
from undercroft.services.people import athlete_document
from undercroft.services.screening_feed import publish_standing
from undercroft.services.tracker_feed import publish_trackers
from undercroft.services.tracking import Heard
from undercroft.store import entries as lines
from undercroft.store import last_done
from undercroft.store.feed import athlete_lock

TESTED = "max.tested"
AHEAD = 12
"""Sessions whose sheets are worked out again at once: three weeks of four. A sheet says up to which
position the ledger is in it, and the phone walks the rest, so that the others may wait."""


def may_move(athlete_id: str, entries: Sequence[Entry]) -> bool:
    """Can these entries move anything? A set in mid-session cannot, and asking costs little."""
    telling = any(e.kind == TESTED or e.kind in TOLD_BY for e in entries)
    return telling or may_close(athlete_id, entries)


def replan(athlete_id: str, entries: Sequence[Entry]) -> None:
    """Bring tracker states and the sheets of sessions not yet started up to date.

    Called once per batch with the entries newly stored, inside the transaction that stored them
    and with the athlete's lock held; what it changes goes out by `store.feed.publish`.
    """
    closed = closed_by(athlete_id, entries)
    kinds = {entry.kind for entry in entries}
    tested, screened = TESTED in kinds, bool(kinds.intersection(TOLD_BY))
    if not closed and not tested and not screened:
        return
    with athlete_lock(athlete_id) as row:
        athlete = athlete_document(row)
        moved: set[str] = set()
        latest = _received(athlete_id, entries)
        for one in closed:
            moved |= _hear(athlete_id, athlete, one)
            occlusion_record.hear(athlete_id, one, latest)
        if tested:
            moved |= _hear_tests(athlete_id, athlete)
        planning.refresh(row, moved, most=AHEAD)
        publish_trackers(athlete_id, athlete, moved)
        if screened:
            publish_standing(row, occlusion_record.record_of(athlete_id, athlete))


def _received(athlete_id: str, entries: Sequence[Entry]) -> date:
    """The day on which the batch came in."""
    position = entries[-1].position
    return day_of(lines.received_at(athlete_id, [position])[position])


def _hear(athlete_id: str, athlete: Athlete, closed: Closed) -> set[str]:
    moved = tracking.forget_elsewhere(
        athlete_id, athlete, closed.place.part, closed.place.end, closed.order
    )
    told = _with(
        told_by(closed.plan, closed.record, catalogue_for(athlete_id)),
        velocities.hear(athlete_id, closed),
    )
    moved |= tracking.hear(athlete_id, athlete, Heard(closed.order, closed.on, told))
    last_done.forget_elsewhere(athlete_id, closed.place.part, closed.place.end, closed.order)
    done = first_loads(closed.plan, closed.record)
    last_done.keep_loads(athlete_id, closed.order, done)
    return moved


def _with(
    told: Mapping[str, tuple[Told, ...]], more: Mapping[str, tuple[Told, ...]]
) -> dict[str, tuple[Told, ...]]:
    both = {lift: (*told.get(lift, ()), *more.get(lift, ())) for lift in {*told, *more}}
    return {lift: pieces for lift, pieces in both.items() if pieces}


def _hear_tests(athlete_id: str, athlete: Athlete) -> set[str]:
    """Tests of a maximum: those that were not corrected since."""
    all_tests = ledger.entries_of(athlete_id, kinds=(TESTED,))
    counted = list(_tests(athlete_id, fold(all_tests).max_tests))
    moved: set[str] = set()
    for heard in counted:
        moved |= tracking.hear(athlete_id, athlete, heard)
    kept = {heard.order for heard in counted}
    for test in all_tests:
        moved |= tracking.forget_elsewhere(athlete_id, athlete, "/max/", f"/{test.id}", *kept)
    return moved


def _tests(athlete_id: str, tests: Sequence[Entry]) -> Iterator[Heard]:
    """Each stands for itself, on the phone's day but not after the day on which it came in."""
    received = lines.received_at(athlete_id, [test.position for test in tests])
    for test in tests:
        latest = day_of(received[test.position]) + timedelta(days=1)
        day = min(date.fromisoformat(test.at[:10]), latest)
        kg = float(test.body["kg"])
        told = (Told(test.id, TestedMax(kg)),) if kg > 0 else ()
        yield Heard(f"{day}/max/{test.id}", day, {str(test.body["lift"]): told})
