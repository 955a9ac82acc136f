"""Everything that a phone needs to begin, or to begin again after the database was restored."""

from typing import Any

from undercroft.services import feed
from undercroft.services.clock import DAY_MS, iso
from undercroft.services.devices import DeviceSeen
from undercroft.store.athletes import athlete_with_coach
from undercroft.store.feed import last_position

HISTORY_MS = 120 * DAY_MS
"""How far back entries go: enough to look back on, small enough for a phone (own choice)."""


def take(device: DeviceSeen, after: int, now: int) -> dict[str, Any]:
    """One page: changes that count, and the entries of the last 120 days with the device's own.

    Ask again with `after` = `cursor` while there is `more`; then sync from `cursor`.
    """
    athlete = athlete_with_coach(device.athlete_id)
    end = last_position(device.athlete_id)
    page = feed.page(device.athlete_id, after, end, since=max(now - HISTORY_MS, 0))
    return {
        "epoch": device.epoch,
        "device": device.id,
        "athlete": {"id": athlete.id, "name": athlete.name},
        "coach": athlete.coach.name,
        "stored_through": device.stored_through,
        "feed": page.items,
        "cursor": page.cursor,
        "more": page.more,
        "server_time": iso(now),
    }
