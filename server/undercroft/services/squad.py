"""The squad at a glance: who needs the coach, and how far what was sent has come."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from textwrap import shorten
from typing import Any

from undercroft.documents.kit_change import WITHDRAWN
from undercroft.domain.ledger import Entry, fold
from undercroft.services import ledger
from undercroft.services.clock import DAY_MS, day_of
from undercroft.services.occlusion_signs import signs_told, why_ended
from undercroft.store import blocks, devices, glance, rights
from undercroft.store.devices import DeviceRow
from undercroft.store.glance import Sent, Told, Waiting
from undercroft.store.rights import Member

RECENT_DAYS = 14
"""How long a reported pain stays at the top: our own choice."""

QUIET_DAYS = 7
"""After so many days without a word the coach is told: our own choice."""

WARNING = "A warning sign"
"""So begins what a phone writes by itself where a warning sign came with no session under way."""

LONGEST_SHOWN = 120

OVERDUE = "Loads ahead could not be worked out from the last sessions; it is tried again"

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
    """`right`: what the coach who asks may do, own, read or write; `owner`: whose athlete it is."""

    id: str
    name: str
    right: str
    owner: str
    last_heard_at: int | None
    block: dict[str, Any] | None
    revision: int | None
    states: States
    next: dict[str, Any] | None
    devices: int
    unplaced: int
    attention: list[Attention]


@dataclass(frozen=True, slots=True)
class _Read:
    """What was read of one athlete; `mine`: what was sent is a block of the coach who asks."""

    member: Member
    paired: list[DeviceRow]
    sent: Sent | None
    told: list[Told]
    mine: bool
    waiting: Waiting
    lately: list[Entry]
    unread: bool

    @property
    def heard(self) -> int | None:
        """When any of the phones was last here."""
        return max((phone.last_used_at for phone in self.paired), default=None)

    @property
    def begun(self) -> set[str]:
        """Sessions of the run that were begun, or ended without a word of their beginning."""
        return {one.session for one in self.told if one.started_at or one.ended_at}


def squad(coach_id: str, now: int) -> list[SquadLine]:
    """The coach's own athletes and those shared with them, those that need attention first."""
    return sorted((_line(one, now) for one in _read(coach_id, now)), key=_urgency)


def _urgency(line: SquadLine) -> tuple[int, str]:
    ranks = [LEVELS.index(attention.level) for attention in line.attention]
    return min(ranks, default=len(LEVELS)), line.name


def _read(coach_id: str, now: int) -> Iterator[_Read]:
    """Everything at once: as many statements for thirty athletes as for three."""
    members = rights.members_of(coach_id)
    ids = [member.athlete_id for member in members]
    phones, sent, waiting = (
        devices.devices_of(ids),
        glance.newest_sent(coach_id),
        glance.waiting(ids),
    )
    lately: dict[str, list[Entry]] = defaultdict(list)
    for row in glance.hurt_since(ids, now - RECENT_DAYS * DAY_MS):
        lately[row.athlete_id].append(ledger.from_row(row))
    told: dict[str, list[Told]] = defaultdict(list)
    for one in glance.told_of(coach_id):
        told[one.athlete_id].append(one)
    unread, written = glance.unread_screenings(coach_id), blocks.ids_of(coach_id)
    for member in members:
        id_ = member.athlete_id
        yield _Read(
            member=member,
            paired=[phone for phone in phones.get(id_, ()) if phone.revoked_at is None],
            sent=sent.get(id_),
            told=told[id_],
            mine=id_ in sent and sent[id_].block in written,
            waiting=waiting.get(id_, Waiting()),
            lately=lately[id_],
            unread=id_ in unread,
        )


def _line(one: _Read, now: int) -> SquadLine:
    sent, ahead = one.sent, _next(one.sent, one.begun)
    return SquadLine(
        id=one.member.athlete_id,
        name=one.member.name,
        right=one.member.level,
        owner=one.member.owner,
        last_heard_at=one.heard,
        block=_block(one),
        revision=None if sent is None else sent.number,
        states=_states(one),
        next=ahead,
        devices=len(one.paired),
        unplaced=one.waiting.held,
        attention=list(_attention(one, ahead, now)),
    )


def _block(one: _Read) -> dict[str, Any] | None:
    if one.sent is None:
        return None
    return {"id": one.sent.block, "name": one.sent.notice["block_name"], "mine": one.mine}


def _states(one: _Read) -> States:
    """Delivered is when a phone that has the revision was last heard."""
    sent = one.sent
    if sent is None:
        return States(None, None, None, None, None, None)
    having = [phone.last_used_at for phone in one.paired if phone.cursor >= sent.position]
    return States(
        sent_at=sent.sent_at,
        delivered_at=max(having, default=None),
        opened_at=min((t.opened_at for t in one.told if t.opened_at), default=None),
        started_at=min((t.started_at for t in one.told if t.started_at), default=None),
        finished_at=max((t.ended_at for t in one.told if t.ended_at), default=None),
        synced_at=one.heard,
    )


def _next(sent: Sent | None, begun: set[str]) -> dict[str, Any] | None:
    """The first session of the newest revision that was not begun from any of its run."""
    if sent is None:
        return None
    ahead = [one for one in sent.notice["sessions"] if one["session"] not in begun]
    first = min(ahead, key=lambda one: str(one["on"]), default=None)
    names = ("on", "session", "name", "week_name", "day")
    return None if first is None else {name: first[name] for name in names}


def _attention(one: _Read, ahead: dict[str, Any] | None, now: int) -> Iterator[Attention]:
    yield from _hurt(one.lately)
    if one.unread:
        yield Attention("soon", "Screening waits to be read")
    yield from _wrote(one.lately)
    yield from _proposed(one.lately)
    if one.waiting.held:
        words = "1 entry" if one.waiting.held == 1 else f"{one.waiting.held} entries"
        yield Attention("soon", f"{words} could not be placed")
    if any((told.outside_at or 0) > now - RECENT_DAYS * DAY_MS for told in one.told):
        yield Attention("soon", "Did work outside the plan")
    if one.waiting.overdue:
        yield Attention("soon", OVERDUE)
    yield from _silence(one.heard, now)
    if ahead and _missed(one, date.fromisoformat(ahead["on"])):
        yield Attention("soon", f"{ahead['name']} of {ahead['week_name']} was missed")
    if ahead is None and one.begun:
        yield Attention("note", "Every session of the block has been begun")


def _hurt(lately: list[Entry]) -> Iterator[Attention]:
    told = fold(lately)
    for pain in told.pains:
        yield Attention("now", f"Pain {pain.body['level']:g} of 10: {pain.body['where']}")
    for sign in signs_told(told):
        yield Attention("now", sign)
    for (_, session), record in told.sessions.items():
        signs = why_ended(record)
        if signs is not None:
            yield Attention("now", f"Session ended by a sign: {signs}")
        elif record.stopped is not None:
            yield Attention("now", f"Stopped {session}: {record.stopped.body['why']}")


def _wrote(lately: list[Entry]) -> Iterator[Attention]:
    """The newest message; all of them stand with the athlete's results."""
    messages = fold(lately).messages
    if not messages:
        return
    text = str(messages[-1].body["text"])
    more = f" (and {len(messages) - 1} before it)" if len(messages) > 1 else ""
    yield Attention(
        "now" if text.startswith(WARNING) else "soon",
        f"Wrote: {shorten(text, LONGEST_SHOWN, placeholder=' …')}{more}",
    )


def _proposed(lately: list[Entry]) -> Iterator[Attention]:
    told = fold(lately).kit_changes
    count = sum(one.body["change"].get("kind") != WITHDRAWN for one in told)
    if count:
        words = "a change" if count == 1 else f"{count} changes"
        yield Attention("soon", f"Proposes {words} of the kit")


def _silence(heard: int | None, now: int) -> Iterator[Attention]:
    if heard is None:
        yield Attention("note", "No phone is paired yet")
    elif now - heard > QUIET_DAYS * DAY_MS:
        yield Attention("soon", f"Not heard from since {day_of(heard):%A %-d %B}")


def _missed(one: _Read, on: date) -> bool:
    """A phone was heard after the day and not of the work, which had been sent by then."""
    if one.heard is None or one.sent is None:
        return False
    return day_of(one.sent.begun_at) <= on < day_of(one.heard)
