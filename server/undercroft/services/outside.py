"""Work outside the plan: entries that name a revision, a session or a set that was never sent.

The server takes an entry whatever it names, so that nothing is lost; where no sheet has a place for
it, it is told here, beside the results. It says nothing of a maximum, for no plan says of which.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from undercroft.domain.ledger import WORK_KINDS, SessionRecord, SetRecord, fold
from undercroft.services import ledger
from undercroft.services.sessions_shown import Shown
from undercroft.store import sessions
from undercroft.store.sessions import BegunSession, KeptSheet

MOST_OUTSIDE = 60
"""So many sessions that are in no plan, the newest: as many as of those that are in one."""


@dataclass(frozen=True, slots=True, eq=False)
class Outside:
    """A session, or sets of one, with no place on a sheet; `why` says what is not known here.

    `sets` by key. `record` None: the session is in the plan, and only these sets are not.
    """

    revision: int | None
    session: str
    why: str
    sets: Mapping[str, SetRecord]
    record: SessionRecord | None


def outside(athlete_id: str, shown: Sequence[Shown]) -> list[Outside]:
    """Sessions that are on no sheet, newest first, then sets that are not on their session's."""
    return [*_sessions(athlete_id), *(found for one in shown for found in _sets(one))]


def _sessions(athlete_id: str) -> Iterator[Outside]:
    runs = sessions.runs_of(athlete_id)
    sent = {(runs[one.revision], one.session) for one in sessions.sessions_sent(athlete_id)}
    lost = [
        told
        for told in sessions.sessions_begun(athlete_id, WORK_KINDS)
        if (_run(runs, told.revision), told.session) not in sent
    ]
    lost = sorted(lost, key=lambda told: told.first, reverse=True)[:MOST_OUTSIDE]
    records = _records(athlete_id, lost)
    for told in lost:
        record = records[told.revision, told.session]
        why = _why(told.revision, told.session, runs)
        yield Outside(told.revision, told.session, why, record.sets, record)


def _run(runs: Mapping[int, int], revision: int | None) -> int | None:
    return None if revision is None else runs.get(revision)


def _why(revision: int | None, session: str, sent: Collection[int]) -> str:
    if revision is None:
        return "the phone named no revision"
    if revision not in sent:
        return f"revision {revision} was not sent to this athlete"
    return f"revision {revision} has no session {session}"


def _records(
    athlete_id: str, told: Sequence[BegunSession]
) -> Mapping[tuple[int | None, str], SessionRecord]:
    wanted = {(one.revision, one.session) for one in told}
    rows = sessions.entries_for(athlete_id, wanted) if wanted else []
    return fold(ledger.from_row(row) for row in rows).sessions


def _sets(shown: Shown) -> Iterator[Outside]:
    """What was recorded in a session of the plan for a set that its sheet has no line for."""
    if shown.record is None:
        return
    known = set(_keys(shown.sheet))
    exercises = {exercise["key"] for exercise in shown.sheet.document["exercises"]}
    sets = {
        key: one
        for key, one in shown.record.sets.items()
        if key not in known and one.added_to not in exercises
    }
    if sets:
        why = f"revision {shown.sheet.revision} has no such sets in this session"
        yield Outside(shown.sheet.revision, shown.sheet.session, why, sets, None)


def _keys(sheet: KeptSheet) -> Iterator[str]:
    for exercise in sheet.document["exercises"]:
        for one in exercise["sets"]:
            yield one["key"]
