"""One exchange between a phone and the server: entries up, the feed down."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from undercroft.services import feed, limits
from undercroft.services.clock import HOUR_MS, iso
from undercroft.services.devices import DeviceSeen, seen
from undercroft.services.refusals import NotAllowed, TooLarge
from undercroft.services.taking import take_in
from undercroft.store import devices
from undercroft.store import entries as lines
from undercroft.store.feed import hold, last_position
from undercroft.store.migrate import epoch

MOST_ENTRIES = 500
TOUCH_MS = HOUR_MS
"""How coarse "last used" may be where nothing else is written."""

LOOK_AHEAD = 2000


@dataclass(frozen=True, slots=True)
class Asked:
    """What a phone sends: who it is, which life of the database it knows, how far it has read."""

    device: str
    epoch: str | None
    cursor: int
    entries: Sequence[Any]


def exchange(device: DeviceSeen, asked: Asked, now: int, most_per_minute: int) -> dict[str, Any]:
    """Store the entries and answer with verdicts and what is new in the feed.

    A phone that knows another epoch, or a position that does not exist yet, gets no feed and a
    `cursor` below its own: it has to take a snapshot.
    Raises NotAllowed for another device's outbox, TooLarge, TooOften.
    """
    if asked.device != device.id:
        raise NotAllowed("these entries are another device's", "pair again; keep the entries")
    if len(asked.entries) > MOST_ENTRIES:
        raise TooLarge(f"{len(asked.entries)} entries", f"send at most {MOST_ENTRIES} at once")
    life = epoch()
    knows_us = asked.epoch == life
    verdicts, through = _store(device, asked, knows_us, now, most_per_minute)
    answer = {"epoch": life, "verdicts": verdicts, "stored_through": through}
    return {**answer, **_feed(device, asked, knows_us), "server_time": iso(now)}


def _feed(device: DeviceSeen, asked: Asked, knows_us: bool) -> dict[str, Any]:
    if device.revoked:
        return {"feed": [], "cursor": asked.cursor, "more": False, "revoked": True}
    if not knows_us:
        return {"feed": [], "cursor": 0, "more": False}
    page = feed.page(device.athlete_id, asked.cursor, not_from=device.id)
    return {"feed": page.items, "cursor": page.cursor, "more": page.more}


def _store(
    device: DeviceSeen, asked: Asked, knows_us: bool, now: int, most_per_minute: int
) -> tuple[list[dict[str, Any]], int]:
    """Verdicts, and the number up to which the device's entries have no gap here."""
    if not asked.entries:
        cursor = _cursor(device, asked, knows_us)
        if cursor != device.cursor or device.last_used_at + TOUCH_MS <= now:
            devices.note_cursor(device.id, now, cursor)
        return [], device.stored_through
    with hold(device.athlete_id):
        limits.spend_sync(device.id, most_per_minute, now)
        here = seen(devices.device_by_id(device.id))
        cursor = _cursor(here, asked, knows_us)
        taken = take_in(here.athlete_id, here.id, asked.entries, now, revoked=here.revoked)
        through = _without_gap(here, taken.numbers)
        devices.note_stored(here.id, now, cursor, through)
    return taken.verdicts, through


def _cursor(device: DeviceSeen, asked: Asked, knows_us: bool) -> int:
    """How far the device says it has read, as far as that can be."""
    if not knows_us or asked.cursor == device.cursor:
        return device.cursor
    return min(asked.cursor, last_position(device.athlete_id))


def _without_gap(device: DeviceSeen, numbers: Sequence[int]) -> int:
    """Looks into the database only for what had come before and had a gap below it."""
    through, new = device.stored_through, frozenset(numbers)
    if through + 1 not in new:
        return through
    while through + 1 in new:
        through += 1
    while above := lines.numbers_above(device.athlete_id, device.id, through, LOOK_AHEAD):
        for n in above:
            if n > through + 1:
                return through
            through = n
    return through
