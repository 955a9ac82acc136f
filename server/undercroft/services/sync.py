"""One exchange between a phone and the server: entries up, the feed down."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from undercroft.services import feed, limits
from undercroft.services.clock import HOUR_MS, iso
from undercroft.services.devices import DeviceSeen
from undercroft.services.refusals import NotAllowed, TooLarge
from undercroft.services.replanning import catch_up
from undercroft.services.taking import REVOKED, take_in
from undercroft.services.without_gap import without_gap
from undercroft.store import devices
from undercroft.store.feed import hold, last_position

MOST_ENTRIES = 500
TOUCH_MS = HOUR_MS
"""How coarse "last used" may be where nothing else is written."""


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
    knows_us = asked.epoch == device.epoch
    stored = _store(device, asked, knows_us, now, most_per_minute)
    return {
        "epoch": device.epoch,
        "verdicts": stored.verdicts,
        "stored_through": stored.through,
        **_feed(device, asked, knows_us, stored),
        "server_time": iso(now),
    }


@dataclass(frozen=True, slots=True)
class Stored:
    """Verdicts, the number up to which the device has no gap here, its new entries' positions.

    `end`: the feed's last position once they were stored.
    """

    verdicts: list[dict[str, Any]]
    through: int
    own: range
    end: int


def _feed(device: DeviceSeen, asked: Asked, knows_us: bool, stored: Stored) -> dict[str, Any]:
    if device.revoked:
        return {"feed": [], "cursor": asked.cursor, "more": False, "revoked": True}
    if not knows_us:
        return {"feed": [], "cursor": 0, "more": False}
    page = feed.page(
        device.athlete_id, asked.cursor, stored.end, not_from=device.id, own=stored.own
    )
    return {"feed": page.items, "cursor": page.cursor, "more": page.more}


def _store(
    device: DeviceSeen, asked: Asked, knows_us: bool, now: int, most_per_minute: int
) -> Stored:
    if not asked.entries:
        catch_up(device.athlete_id, now)
        end = last_position(device.athlete_id)
        cursor = _cursor(asked, knows_us, device.cursor, end)
        if cursor != device.cursor or device.last_used_at + TOUCH_MS <= now:
            devices.note_cursor(device.id, now, cursor)
        return Stored([], device.stored_through, range(0), end)
    with hold(device.athlete_id) as end:
        here = limits.spend_sync(devices.device_by_id(device.id), most_per_minute, now)
        cursor = _cursor(asked, knows_us, here.cursor, end)
        revoked = REVOKED if here.revoked_at is not None else None
        taken = take_in(here.athlete_id, here.id, asked.entries, now, after=end, hold=revoked)
        through = without_gap(here, taken.numbers, taken.newest)
        devices.note_stored(here._replace(cursor=cursor, stored_through=through), now)
    return Stored(taken.verdicts, through, taken.positions, taken.end)


def _cursor(asked: Asked, knows_us: bool, before: int, end: int) -> int:
    """How far the device says it has read, as far as that can be."""
    return min(asked.cursor, end) if knows_us else before
