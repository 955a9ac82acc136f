"""What the squad at a glance needs of many athletes at once, without reading their ledgers.

Each of these is one statement, however large the squad. A held entry has no kind as long as nobody
let it in: what is asked for by its kind is stored, and what has none is found by an index.
"""

import json
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from undercroft.store import overdue
from undercroft.store.models import Entry
from undercroft.store.sql import marks, rows


class Sent(NamedTuple):
    """The newest revision of an athlete; `notice` is what the phone was told of it, and where.

    `begun_at` is when the first revision of its run was sent.
    """

    athlete_id: str
    number: int
    block: str
    sent_at: int
    begun_at: int
    notice: Mapping[str, Any]
    position: int


_JOINED = " FROM in_squad AS a CROSS JOIN revision AS n CROSS JOIN change AS c"
"""In this order on SQLite; else it reads all ledgers once to find out that it need not."""

_NEWEST = (
    " WHERE a.coach_id = ? AND n.athlete_id = a.athlete_id"
    " AND n.number = (SELECT MAX(number) FROM revision WHERE athlete_id = a.athlete_id)"
    " AND c.athlete_id = a.athlete_id AND c.kind = 'revision' AND NOT c.superseded"
)

_SENT = (
    "SELECT a.athlete_id, n.number, n.block, n.sent_at, (SELECT sent_at FROM revision AS r"
    " WHERE r.athlete_id = a.athlete_id AND r.number = n.run), c.body, c.position"
    f"{_JOINED}{_NEWEST} AND c.key = CAST(n.number AS TEXT)"
)


def newest_sent(coach_id: str) -> dict[str, Sent]:
    """By athlete, what each trains by now; athletes to whom nothing was sent are left out."""
    found = rows(_SENT, coach_id)
    return {
        athlete: Sent(athlete, number, block, sent_at, begun_at, json.loads(body), position)
        for athlete, number, block, sent_at, begun_at, body, position in found
    }


class Told(NamedTuple):
    """What the phones told of one session; when each first, or last, came in.

    `opened_at` speaks of the newest revision, `outside_at` of work from one that was not sent.
    """

    athlete_id: str
    session: str
    opened_at: int | None
    started_at: int | None
    ended_at: int | None
    outside_at: int | None


_TOLD = (
    "SELECT e.athlete_id, e.session,"
    " MIN(CASE WHEN e.kind = 'session.opened' AND e.revision = n.number"
    " THEN e.received_at END),"
    " MIN(CASE WHEN e.kind = 'session.started' AND r.number IS NOT NULL"
    " THEN e.received_at END),"
    " MAX(CASE WHEN e.kind IN ('session.finished', 'session.stopped') AND r.number IS NOT NULL"
    " THEN e.received_at END),"
    " MAX(CASE WHEN e.kind <> 'session.opened'"
    " AND (e.revision IS NULL OR NOT EXISTS (SELECT 1 FROM revision AS own"
    " WHERE own.athlete_id = a.athlete_id AND own.number = e.revision)) THEN e.received_at END)"
    f"{_JOINED} CROSS JOIN entry AS e"
    " LEFT JOIN revision AS r"
    " ON r.athlete_id = a.athlete_id AND r.run = n.run AND r.number = e.revision"
    f"{_NEWEST} AND c.key = CAST(n.run AS TEXT)"
    " AND e.athlete_id = a.athlete_id AND e.position > c.position AND e.session IS NOT NULL"
    " AND e.kind IN ('session.opened', 'session.started', 'session.finished', 'session.stopped')"
    " GROUP BY e.athlete_id, e.session"
)


def told_of(coach_id: str) -> list[Told]:
    """Sessions opened, begun or ended, from any revision of the run that an athlete trains by.

    What came in before the run was sent cannot be of it, and stays unread.
    """
    return [Told(*row) for row in rows(_TOLD, coach_id)]


_HURT = (
    'SELECT athlete_id, position, id, kind, at, revision, session, "set", replaces, body'
    " FROM entry WHERE athlete_id IN ({marks}) AND (received_at >= ? OR kind = 'kit.changed')"
    " AND kind IN ('pain.reported', 'session.stopped', 'after.check', 'wrap.check', 'wrap.off',"
    " 'message', 'kit.changed')"
    " AND (kind <> 'kit.changed' OR NOT EXISTS (SELECT 1 FROM change AS c"
    " WHERE c.athlete_id = entry.athlete_id AND c.kind = 'kit.decided' AND c.key = entry.id"
    " AND NOT c.superseded))"
    " ORDER BY position"
)


def hurt_since(athlete_ids: Sequence[str], since: int) -> list[Entry]:
    """Stored entries of pain, of sessions stopped, of signs and wear of occlusion work, and
    messages, that came in at or after that time; and changes of the kit as long as they wait.
    """
    if not athlete_ids:
        return []
    columns = ("athlete", "position", "id", "kind", "at", "revision", "session", "set", "replaces")
    found = rows(_HURT.format(marks=marks(len(athlete_ids))), *athlete_ids, since)
    return [
        Entry(**dict(zip(columns, row, strict=False)), body=json.loads(row[-1]), device="")
        for row in found
    ]


_SCREENED = (
    "SELECT c.athlete_id, c.body FROM in_squad AS a CROSS JOIN change AS c"
    " WHERE a.coach_id = ? AND c.athlete_id = a.athlete_id"
    " AND c.kind = 'screening' AND c.key = '' AND NOT c.superseded"
)


def unread_screenings(coach_id: str) -> set[str]:
    """Athletes whose latest screening the coach has not signed."""
    found = ((athlete, json.loads(body)) for athlete, body in rows(_SCREENED, coach_id))
    return {
        athlete
        for athlete, told in found
        if told["answered_on"] is not None and not told.get("read", True)
    }


class Waiting(NamedTuple):
    """How many entries wait for a person, and whether loads are still to be worked out."""

    held: int = 0
    overdue: bool = False


_WAITING = (
    "SELECT athlete_id, COUNT(*), 0 FROM entry WHERE athlete_id IN ({marks})"
    " AND kind = '' AND status = 'held' AND accepted_at IS NULL GROUP BY athlete_id"
    " UNION ALL SELECT athlete_id, 0, 1 FROM session_fact WHERE athlete_id IN ({marks})"
    " AND kind = ? AND session_order = ?"
)


def waiting(athlete_ids: Sequence[str]) -> dict[str, Waiting]:
    """By athlete; those for whom nothing waits are left out."""
    if not athlete_ids:
        return {}
    asked = _WAITING.format(marks=marks(len(athlete_ids)))
    found: dict[str, Waiting] = {}
    for athlete, held, late in rows(asked, *athlete_ids, *athlete_ids, overdue.KIND, overdue.ORDER):
        before = found.get(athlete, Waiting())
        found[athlete] = Waiting(before.held + held, before.overdue or bool(late))
    return found
