"""The phone's two questions: exchange what is new, and take everything."""

from typing import Any

from undercroft.api import sessions, shapes
from undercroft.api.context import settings
from undercroft.api.contract import ANY_DEVICE, DEVICE, Section, asks, by, gives, refuses, takes
from undercroft.services import snapshot
from undercroft.services import sync as syncing
from undercroft.services.clock import DAY_MS
from undercroft.services.devices import DeviceSeen
from undercroft.services.refusals import NotAllowed, TooOften

section = Section("sync", "/api/v1")


@section.post("/sync")
@by(ANY_DEVICE)
@takes(shapes.SyncAsked)
@gives(shapes.SyncAnswer, plain=True)
@refuses(NotAllowed, TooOften)
def sync(device: DeviceSeen, body: dict[str, Any], now: int) -> dict[str, Any]:
    """Hand over entries and get verdicts, and what is new in the feed.

    What has a verdict is on disk; sent twice is the same as once.
    """
    if device.last_used_at + DAY_MS <= now:
        sessions.remember_device_longer()
    return syncing.exchange(device, syncing.Asked(**body), now, settings().sync_per_minute)


@section.get("/snapshot")
@by(DEVICE)
@asks(shapes.SnapshotAsked)
@gives(shapes.SnapshotAnswer, plain=True)
def take_snapshot(device: DeviceSeen, query: dict[str, int], now: int) -> dict[str, Any]:
    """Get everything that a phone needs to begin, page by page."""
    return snapshot.take(device, query["after"], now)
