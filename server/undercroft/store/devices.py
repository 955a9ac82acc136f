"""Paired phones."""

from collections import defaultdict
from collections.abc import Iterable

from undercroft.store.models import Device


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
    ).execute()


def device_by_token(token_hash: str) -> Device | None:
    """The device, revoked or not."""
    return Device.get_or_none(Device.token_hash == token_hash)


def devices_of(athlete_ids: Iterable[str]) -> dict[str, list[Device]]:
    """Devices by athlete, oldest first."""
    found: dict[str, list[Device]] = defaultdict(list)
    rows = Device.select().where(Device.athlete.in_(list(athlete_ids)))
    for row in rows.order_by(Device.created_at, Device.id):
        found[row.athlete_id].append(row)
    return found


def revoke_device(athlete_id: str, device_id: str, now: int) -> bool:
    """Whether the athlete has such a device; revoking twice keeps the first time."""
    mine = (Device.id == device_id) & (Device.athlete == athlete_id)
    Device.update(revoked_at=now).where(mine, Device.revoked_at.is_null()).execute()
    return bool(Device.select().where(mine).exists())


def device_by_id(device_id: str) -> Device:
    return Device.get_by_id(device_id)


def touch_device(device_id: str, now: int, cursor: int, stored_through: int | None) -> None:
    """Note that it was here, how far it has read, and up to which number it has no gap."""
    changes = {"last_used_at": now, "cursor": cursor}
    if stored_through is not None:
        changes["stored_through"] = stored_through
    Device.update(**changes).where(Device.id == device_id).execute()
