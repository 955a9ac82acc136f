"""Work out again what an athlete's new entries have changed.

What a session tells counts once it is closed: finished, stopped, or another one begun after it.
Until then the phone walks its own notch tables, and nothing here would be news to it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from undercroft.documents.catalogue import catalogue
from undercroft.domain.ledger import Entry, SessionRecord, fold
from undercroft.domain.program.block import SessionPlan
from undercroft.domain.strength import TestedMax
from undercroft.domain.told import Told, told_by
from undercroft.services import ledger, planning, tracking
from undercroft.services.people import athlete_document
from undercroft.services.tracker_feed import publish_trackers
from undercroft.store import last_done, revisions
from undercroft.store.feed import athlete_lock

CLOSING = frozenset({"session.finished", "session.stopped", "session.started"})


@dataclass(frozen=True, slots=True)
class Closed:
    """A closed session: its plan, what became of it, and its place among all sessions."""

    plan: SessionPlan
    record: SessionRecord
    order: str
    on: date


def replan(athlete_id: str, entries: Sequence[Entry]) -> None:
    """Bring tracker states and the sheets of sessions not yet started up to date.

    Called once per batch with the entries newly stored, inside the transaction that stored them
    and with the athlete's lock held; what it changes goes out by `store.feed.publish`.
    """
    tests = [e for e in entries if e.kind == "max.tested"]
    closed = list(_closed_by(athlete_id, entries)) if _may_close(athlete_id, entries) else []
    if not closed and not tests:
        return
    with athlete_lock(athlete_id) as row:
        athlete = athlete_document(row)
        moved: set[str] = set()
        for one in closed:
            told = told_by(one.plan, one.record, catalogue())
            moved |= tracking.hear(athlete_id, athlete, tracking.Heard(one.order, one.on, told))
            last_done.keep_loads(athlete_id, one.order, _first_loads(one))
        for heard in map(_tested, tests):
            moved |= tracking.hear(athlete_id, athlete, heard)
        planning.refresh(row, moved)
        publish_trackers(athlete_id, athlete, moved)


def _may_close(athlete_id: str, entries: Sequence[Entry]) -> bool:
    """A set in the middle of a session, the commonest case, is told apart without much reading."""
    touched = {e.session for e in entries if e.session is not None}
    return any(e.kind in CLOSING for e in entries) or ledger.any_ended(athlete_id, touched)


def _closed_by(athlete_id: str, entries: Sequence[Entry]) -> Iterator[Closed]:
    """Closed sessions of every block that the batch speaks of."""
    seen: set[int] = set()
    for number in sorted({e.revision for e in entries if e.session and e.revision is not None}):
        block = None if number in seen else planning.around(athlete_id, number)
        if block is not None:
            seen.update(block.numbers)
            own = [e for e in entries if e.revision in block.numbers]
            touched = {e.session for e in own if e.session is not None}
            yield from _closed(athlete_id, block, touched, own)


def _closed(
    athlete_id: str, now: planning.Current, touched: set[str], entries: Sequence[Entry]
) -> Iterable[Closed]:
    """Sessions of the block that are closed and of which the batch says something new."""
    begun = any(e.kind == "session.started" for e in entries)
    looked_at = set(now.sessions) if begun else touched & set(now.sessions)
    by_session = _entries(athlete_id, now, looked_at)
    plans = {s.key: s for week in now.block.weeks for s in week.sessions}
    last_begun = _last_begun(by_session)
    for key, own in by_session.items():
        record = fold(own).sessions[None, key]
        ended = record.finished is not None or record.stopped is not None
        overtaken = begun and last_begun is not None and key != last_begun
        if ended or overtaken:
            yield Closed(plans[key], record, *_place(athlete_id, now, key))


def _entries(
    athlete_id: str, now: planning.Current, keys: Iterable[str]
) -> Mapping[str, list[Entry]]:
    """By session its entries, whichever revision of the block they were done from."""
    found = {
        key: [
            replace(e, revision=None)
            for e in ledger.entries_of(athlete_id, key)
            if e.revision in now.numbers
        ]
        for key in keys
    }
    return {key: own for key, own in found.items() if own}


def _last_begun(by_session: Mapping[str, list[Entry]]) -> str | None:
    """The session that was begun last, in the order in which beginnings reached the server."""
    begun = {
        key: min(e.position for e in own if e.kind == "session.started")
        for key, own in by_session.items()
        if any(e.kind == "session.started" for e in own)
    }
    return max(begun, key=lambda key: begun[key]) if begun else None


def _place(athlete_id: str, now: planning.Current, key: str) -> tuple[str, date]:
    """Order and day of a session: the day it was planned for, which no phone's clock moves."""
    kept = revisions.sheets_of_many(athlete_id, now.numbers)
    days = [s.document["on"] for s in sorted(kept, key=lambda s: s.revision) if s.session == key]
    day = days[0] if days else now.starts_on.isoformat()
    return f"{day}/{now.numbers[0]:06d}/{key}", date.fromisoformat(day)


def _first_loads(closed: Closed) -> dict[str, float]:
    loads: dict[str, float] = {}
    for exercise in closed.plan.exercises:
        for one in exercise.sets:
            record = closed.record.sets.get(one.key)
            load: Any = record.body.get("load_kg") if record and record.kind == "done" else None
            if load:
                loads.setdefault(exercise.exercise, float(load))
    return loads


def _tested(entry: Entry) -> tracking.Heard:
    """A tested maximum stands for itself, on the day that the phone said."""
    day, lift = entry.at[:10], str(entry.body["lift"])
    told = (Told(entry.id, TestedMax(float(entry.body["kg"]))),) if entry.body["kg"] else ()
    return tracking.Heard(f"{day}/max/{entry.id}", date.fromisoformat(day), {lift: told})
