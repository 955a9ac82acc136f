"""Which sessions are closed, so that what they tell may count.

A session is closed once it was finished, stopped, or overtaken: another one has been begun since,
by the order in which beginnings reached the server. Where no beginning is known, because it is held
for the coach, nothing is under way, and each set counts at once. Its plan is that of the revision
from which it was done, whatever the coach has sent meanwhile.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date

from undercroft.documents.reading import read_block
from undercroft.domain.ledger import SESSION_KINDS, WORK_KINDS, Entry, SessionRecord, fold
from undercroft.domain.program.block import SessionPlan
from undercroft.services import ledger
from undercroft.services.catalogues import catalogue_for
from undercroft.store import entries as lines
from undercroft.store import revisions
from undercroft.store.entries import Begun
from undercroft.store.facts import Place


@dataclass(frozen=True, slots=True)
class Closed:
    """A closed session: its plan, what became of it, and its place among all sessions.

    `run` is the number of the first revision of its block's run: with the session's key a name.
    """

    plan: SessionPlan
    record: SessionRecord
    run: int
    order: str
    on: date

    @property
    def place(self) -> Place:
        """Its place, and what other places that it had before are known by."""
        return Place(self.order, f"/{self.run:06d}/", f"/{self.plan.key}")


def may_close(athlete_id: str, entries: Sequence[Entry]) -> bool:
    """A set in the middle of a session, the commonest case, is told apart without much reading."""
    work = [entry for entry in entries if entry.kind in WORK_KINDS]
    touched = {e.session for e in work if e.session is not None}
    if not touched or any(e.kind in SESSION_KINDS for e in work):
        return bool(touched)
    last = lines.last_begun(athlete_id)
    if last is None or touched != {last.session}:
        return True
    if not last.ended and {e.revision for e in work} == {last.revision}:
        return False
    # Sessions of an earlier run may have the same key, and their ends are none of this one.
    numbers = revisions.numbers_of_run(athlete_id, last.revision)
    return any(e.revision not in numbers for e in work) or lines.any_ended(
        athlete_id, last.session, numbers
    )


def closed_by(athlete_id: str, entries: Sequence[Entry]) -> list[Closed]:
    """Closed sessions of which the batch says something new, the overtaken one among them."""
    if not may_close(athlete_id, entries):
        return []
    work = [entry for entry in entries if entry.kind in WORK_KINDS]
    found: dict[tuple[int, str], Closed] = {}
    for revision, session in _spoken_of(athlete_id, work):
        closed = _closed(athlete_id, revision, session)
        if closed is not None:
            found[closed.run, session] = closed
    # What a velocity tells rests on the days before it, whichever session's key sorts first.
    return sorted(found.values(), key=lambda one: one.order)


def _spoken_of(athlete_id: str, entries: Sequence[Entry]) -> Iterator[tuple[int, str]]:
    """Revision and session of what the batch touches, and of what was under way before it."""
    named = {(e.revision, e.session) for e in entries}
    yield from sorted((number, key) for number, key in named if number is not None and key)
    before = lines.last_begun(athlete_id, before=min(e.position for e in entries))
    if before is not None:
        yield before.revision, before.session


def _closed(athlete_id: str, revision: int, session: str) -> Closed | None:
    numbers = revisions.numbers_of_run(athlete_id, revision)
    if not numbers:
        return None
    own = ledger.entries_of(athlete_id, session, revisions=numbers)
    work = [e for e in own if e.kind in WORK_KINDS]
    if not work:
        return None
    record = fold(replace(e, revision=None) for e in own).sessions[None, session]
    last = lines.last_begun(athlete_id)
    if not _is_over(record, session, numbers, last):
        return None
    return _placed(athlete_id, session, numbers[0], _done_from(work), record)


def _is_over(
    record: SessionRecord, session: str, numbers: Sequence[int], last: Begun | None
) -> bool:
    under_way = last is not None and last.session == session and last.revision in numbers
    return record.finished is not None or record.stopped is not None or not under_way


def _done_from(work: Sequence[Entry]) -> int:
    """The revision that the session was begun from, or else that of its first entry."""
    first = min(work, key=lambda e: (e.kind != "session.started", e.position))
    return first.revision or 0


def _placed(
    athlete_id: str, session: str, run: int, number: int, record: SessionRecord
) -> Closed | None:
    """With its plan, and its order: the day it was planned for, which no phone's clock moves."""
    row = revisions.revision(athlete_id, number)
    day = revisions.day_of_sheet(athlete_id, number, session)
    if row is None or day is None:
        return None
    for w, week in enumerate(read_block(row.document, catalogue_for(athlete_id)).weeks):
        for s, plan in enumerate(week.sessions):
            if plan.key == session:
                order = f"{day}/{run:06d}/{w:02d}/{s:02d}/{session}"
                return Closed(plan, record, run, order, date.fromisoformat(day))
    return None
