"""Paired phones."""

from collections import defaultdict
from collections.abc import Sequence
from typing import NamedTuple

from undercroft.store.models import Device
from undercroft.store.sql import marks, rows, run


def add_device(device_id: str, athlete_id: str, name: str, token_hash: str, now: int) -> None:
    Device.insert(
        id=device_id,
        athlete=athlete_id,
        name=name,
        token_hash=token_hash,
        created_at=now,
        last_used_at=now,
        stored_through=0,
        cursor=0,
        sync_window=0,
        sync_count=0,
    ).execute()


class DeviceRow(NamedTuple):
    """A device as it is read, without its token; `epoch` names the life of the database."""

    id: str
    athlete_id: str
    name: str
    created_at: int
    last_used_at: int
    revoked_at: int | None
    stored_through: int
    cursor: int
    sync_window: int
    sync_count: int
    epoch: str


_COLUMNS = ", ".join(DeviceRow._fields[:-1])
_SELECT = f"SELECT {_COLUMNS}, (SELECT value FROM meta WHERE name = 'epoch') FROM device"


def device_by_token(token_hash: str) -> DeviceRow | None:
    """The device, revoked or not."""
    found = rows(f"{_SELECT} WHERE token_hash = ?", token_hash)
    return DeviceRow(*found[0]) if found else None


def device_by_id(device_id: str) -> DeviceRow:
    (found,) = rows(f"{_SELECT} WHERE id = ?", device_id)
    return DeviceRow(*found)


def find_device(device_id: str) -> DeviceRow | None:
    """The device of whichever athlete, revoked or not."""
    found = rows(f"{_SELECT} WHERE id = ?", device_id)
    return DeviceRow(*found[0]) if found else None


def devices_of(athlete_ids: Sequence[str]) -> dict[str, list[DeviceRow]]:
    """Devices by athlete, oldest first."""
    found: dict[str, list[DeviceRow]] = defaultdict(list)
    if athlete_ids:
        asked = f"{_SELECT} WHERE athlete_id IN ({marks(len(athlete_ids))}) ORDER BY created_at, id"
        for row in rows(asked, *athlete_ids):
            device = DeviceRow(*row)
            found[device.athlete_id].append(device)
    return found


def revoke_device(athlete_id: str, device_id: str, now: int) -> bool:
    """Whether the athlete has such a device; revoking twice keeps the first time."""
    mine = (Device.id == device_id) & (Device.athlete == athlete_id)
    Device.update(revoked_at=now).where(mine, Device.revoked_at.is_null()).execute()
    return bool(Device.select().where(mine).exists())


def note_cursor(device_id: str, now: int, cursor: int) -> None:
    """Note that it was here and how far it has read."""
    run("UPDATE device SET last_used_at = ?, cursor = ? WHERE id = ?", now, cursor, device_id)


def note_through(device_id: str, through: int) -> None:
    """Note up to which number nothing is missing, though the device itself was not here."""
    run("UPDATE device SET stored_through = ? WHERE id = ?", through, device_id)


def note_stored(device: DeviceRow, now: int) -> None:
    """Like `note_cursor`, with all that a batch changes; under the athlete's lock."""
    run(
        "UPDATE device SET last_used_at = ?, cursor = ?, stored_through = ?, sync_window = ?,"
        " sync_count = ? WHERE id = ?",
        now,
        device.cursor,
        device.stored_through,
        device.sync_window,
        device.sync_count,
        device.id,
    )
