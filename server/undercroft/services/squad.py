"""The squad at a glance: who needs the coach, and how far what was sent has come."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from undercroft.domain.ledger import SESSION_KINDS, Entry, fold
from undercroft.services import ledger
from undercroft.services.clock import DAY_MS, day_of
from undercroft.store import athletes, devices, entries, glance, revisions, sessions
from undercroft.store.devices import DeviceRow
from undercroft.store.models import Athlete, Revision

RECENT_DAYS = 14
"""How long a reported pain stays at the top: our own choice."""

QUIET_DAYS = 7
"""After so many days without a word the coach is told: our own choice."""

OPENED = "session.opened"
TOLD = (OPENED, *sorted(SESSION_KINDS))

LEVELS = ("now", "soon", "note")


@dataclass(frozen=True, slots=True)
class Attention:
    """`level` is "now", "soon" or "note"."""

    level: str
    text: str


@dataclass(frozen=True, slots=True)
class States:
    """How far what was sent has come; times in ms, None where not yet or not known.

    Sent, delivered and opened speak of the newest revision, started and finished of its run.
    """

    sent_at: int | None
    delivered_at: int | None
    opened_at: int | None
    started_at: int | None
    finished_at: int | None
    synced_at: int | None


@dataclass(frozen=True, slots=True)
class SquadLine:
    id: str
    name: str
    last_heard_at: int | None
    block: dict[str, str] | None
    revision: int | None
    states: States
    next: dict[str, Any] | None
    devices: int
    unplaced: int
    attention: list[Attention]


def squad(coach_id: str, now: int) -> list[SquadLine]:
    """The coach's athletes, those that need attention first."""
    rows = athletes.athletes_of(coach_id)
    ids = [row.id for row in rows]
    phones, sent = devices.devices_of(ids), revisions.latest_revisions(ids)
    held = glance.held_counts(ids)
    lines = [_line(row, phones[row.id], sent.get(row.id), held.get(row.id, 0), now) for row in rows]
    return sorted(lines, key=_urgency)


def _urgency(line: SquadLine) -> tuple[int, str]:
    ranks = [LEVELS.index(attention.level) for attention in line.attention]
    return min(ranks, default=len(LEVELS)), line.name


def _line(
    row: Athlete, phones: list[DeviceRow], sent: Revision | None, held: int, now: int
) -> SquadLine:
    paired = [phone for phone in phones if phone.revoked_at is None]
    heard = max((phone.last_used_at for phone in paired), default=None)
    every = _told(row.id, sent)
    told = [entry for entry in every if entry.kind != OPENED]
    ahead = _next(sent, {entry.session for entry in told if entry.session})
    return SquadLine(
        id=row.id,
        name=row.name,
        last_heard_at=heard,
        block=None if sent is None else {"id": sent.block, "name": sent.document["name"]},
        revision=None if sent is None else sent.number,
        states=_states(row.id, sent, paired, every),
        next=ahead,
        devices=len(paired),
        unplaced=held,
        attention=list(_attention(row.id, heard, held, told, ahead, now)),
    )


def _told(athlete_id: str, sent: Revision | None) -> list[Entry]:
    """What the phones told of the run's sessions, from whichever of its revisions it came."""
    if sent is None:
        return []
    runs = sessions.runs_of(athlete_id)
    numbers = [number for number, run in runs.items() if run == sent.run]
    return [ledger.from_row(row) for row in glance.entries_of_revisions(athlete_id, numbers, TOLD)]


def _states(
    athlete_id: str, sent: Revision | None, paired: list[DeviceRow], told: list[Entry]
) -> States:
    """Delivered is when a phone that has the revision was last heard."""
    if sent is None:
        return States(None, None, None, None, None, None)
    position = revisions.position_of_change(athlete_id, "revision", str(sent.number))
    having = [p.last_used_at for p in paired if position is not None and p.cursor >= position]
    received = entries.received_at(athlete_id, [entry.position for entry in told])
    opened = [e for e in told if e.kind == OPENED and e.revision == sent.number]
    begun = [e for e in told if e.kind == "session.started"]
    ended = [e for e in told if e.kind in ("session.finished", "session.stopped")]
    return States(
        sent_at=sent.sent_at,
        delivered_at=max(having, default=None),
        opened_at=min((received[e.position] for e in opened), default=None),
        started_at=min((received[e.position] for e in begun), default=None),
        finished_at=max((received[e.position] for e in ended), default=None),
        synced_at=max((phone.last_used_at for phone in paired), default=None),
    )


def _next(sent: Revision | None, begun: set[str]) -> dict[str, Any] | None:
    """The first session of the newest revision that was not begun from any of the block."""
    if sent is None:
        return None
    start = date.fromisoformat(sent.starts_on)
    for w, week in enumerate(sent.document["weeks"]):
        for session in sorted(week["sessions"], key=lambda one: int(one["day"])):
            if session["key"] not in begun:
                on = start + timedelta(weeks=w, days=int(session["day"]) - 1)
                return {
                    "on": on.isoformat(),
                    "session": session["key"],
                    "name": session["name"],
                    "week_name": week["name"],
                    "day": session["day"],
                }
    return None


def _attention(
    athlete_id: str,
    heard: int | None,
    held: int,
    told: list[Entry],
    ahead: dict[str, Any] | None,
    now: int,
) -> Iterator[Attention]:
    since = now - RECENT_DAYS * DAY_MS
    told_lately = fold(
        ledger.received_since(athlete_id, since, ("pain.reported", "session.stopped"))
    )
    for pain in told_lately.pains:
        yield Attention("now", f"Pain {pain.body['level']:g} of 10: {pain.body['where']}")
    for (_, session), record in told_lately.sessions.items():
        if record.stopped is not None:
            yield Attention("now", f"Stopped {session}: {record.stopped.body['why']}")
    if held:
        words = "1 entry" if held == 1 else f"{held} entries"
        yield Attention("soon", f"{words} could not be placed")
    if heard is None:
        yield Attention("note", "No phone is paired yet")
    elif now - heard > QUIET_DAYS * DAY_MS:
        yield Attention("soon", f"Not heard from since {day_of(heard):%A %-d %B}")
    if heard is not None and ahead and day_of(heard) > date.fromisoformat(ahead["on"]):
        yield Attention("soon", f"{ahead['name']} of {ahead['week_name']} was missed")
    if ahead is None and told:
        yield Attention("note", "Every session of the block has been begun")
