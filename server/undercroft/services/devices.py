"""Paired phones, as the coach and the phone itself see them."""

from dataclasses import dataclass

from undercroft.services import tokens
from undercroft.services.clock import DAY_MS
from undercroft.services.refusals import Erased, LogInNeeded, NotFound
from undercroft.store import devices, erasing
from undercroft.store.database import writing
from undercroft.store.feed import athlete_lock

IDLE_MS = 400 * DAY_MS
"""A pairing ends after 400 days without use: the longest that browsers keep a cookie."""


@dataclass(frozen=True, slots=True)
class DeviceSeen:
    """`cursor`: the feed position it said it has; `stored_through`: the highest `n` without gap.

    `epoch`: the life of the database in which it was seen.
    """

    id: str
    athlete_id: str
    name: str
    created_at: int
    last_used_at: int
    revoked_at: int | None
    stored_through: int
    cursor: int
    epoch: str

    @property
    def revoked(self) -> bool:
        return self.revoked_at is not None


@dataclass(frozen=True, slots=True)
class Renewed:
    """`token` goes into the phone's cookie and nowhere else."""

    token: str
    device: str
    epoch: str


def device_by_token(token: str, now: int) -> DeviceSeen:
    """The device with this token, which may be revoked. Raises LogInNeeded, Erased."""
    row = devices.device_by_token(tokens.fingerprint(token)) if token else None
    if row is None and token and erasing.was_erased(tokens.fingerprint(token)):
        what = "your coach has erased what the server had of you"
        raise Erased(what, "what is on this phone stays here until you unpair it")
    if row is None or row.last_used_at + IDLE_MS <= now:
        raise LogInNeeded("this device is not paired", "pair it with a link or a code")
    return seen(row)


def seen(row: devices.DeviceRow) -> DeviceSeen:
    return DeviceSeen(
        row.id,
        row.athlete_id,
        row.name,
        row.created_at,
        row.last_used_at,
        row.revoked_at,
        row.stored_through,
        row.cursor,
        row.epoch,
    )


def devices_of(athlete_id: str) -> list[DeviceSeen]:
    """Oldest first, revoked ones among them."""
    return [seen(row) for row in devices.devices_of([athlete_id])[athlete_id]]


def revoke(athlete_id: str, device_id: str, now: int) -> None:
    """From now on its entries are held and it gets no feed. Raises NotFound.

    Under the athlete's lock: a batch is taken in wholly before it or wholly after it.
    """
    with athlete_lock(athlete_id):
        known = devices.revoke_device(athlete_id, device_id, now)
    if not known:
        raise NotFound("this athlete has no such device")


def pair(athlete_id: str, name: str, now: int) -> tuple[str, str]:
    """A new device of the athlete: its id, and the token that only the phone will know."""
    device_id, token = tokens.new_id(now), tokens.new_token()
    devices.add_device(device_id, athlete_id, name, tokens.fingerprint(token), now)
    return device_id, token


def renew(device: DeviceSeen, now: int) -> Renewed:
    """A second identity for a phone that finds its numbers used by a copy of itself.

    The old one stays as it is: the copy may still have entries to send.
    """
    with writing():
        device_id, token = pair(device.athlete_id, device.name, now)
    return Renewed(token, device_id, device.epoch)
