"""What a phone could not send, brought by its file: looked at first, then taken in as a sync is.

Entries keep their device and number, so that the same phone's next sync finds them here.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from undercroft.documents.entries import Trouble
from undercroft.documents.hand_over import HandOver, read_hand_over
from undercroft.services.refusals import Invalid
from undercroft.services.sync import MOST_ENTRIES
from undercroft.services.taking import REVOKED, UNKNOWN_DEVICE, already_here, take_in
from undercroft.services.without_gap import without_gap
from undercroft.store import athletes, devices
from undercroft.store.devices import DeviceRow
from undercroft.store.feed import hold


@dataclass(frozen=True, slots=True)
class HandOverSeen:
    """`phone` is None where it was never paired here; `here` are entries that came before.

    `lost` is how many entries the damaged file has no more; `first_at` and `last_at` are what the
    phone's clock said.
    """

    athlete: str
    phone: str | None
    revoked: bool
    made_at: str
    count: int
    here: int
    lost: int
    sets: int
    first_at: str | None
    last_at: str | None


@dataclass(frozen=True, slots=True)
class HandOverTaken:
    """How many of the entries now are what."""

    stored: int
    duplicate: int
    held: int
    lost: int


def look(athlete_id: str, text: str) -> HandOverSeen:
    """What is in the file and whose it is; takes nothing in. Raises FaultyDocument, Invalid."""
    handed, device = _for(athlete_id, text)
    told = [entry for entry in handed.entries if isinstance(entry, dict)]
    times = sorted(at for entry in told if isinstance(at := entry.get("at"), str))
    return HandOverSeen(
        athlete=handed.athlete.name,
        phone=None if device is None else device.name,
        revoked=device is not None and device.revoked_at is not None,
        made_at=handed.made_at,
        count=len(handed.entries),
        here=sum(already_here(athlete_id, part) for part in _parts(handed)),
        lost=handed.lost,
        sets=len({_place(entry) for entry in told if entry.get("kind") == "set.done"}),
        first_at=times[0] if times else None,
        last_at=times[-1] if times else None,
    )


def _place(entry: Mapping[str, Any]) -> tuple[str, ...]:
    """Two sessions may have sets of one key."""
    return tuple(str(entry.get(name)) for name in ("revision", "session", "set"))


def take(athlete_id: str, text: str, now: int) -> HandOverTaken:
    """Take the entries in; the same file twice is the same as once.

    Raises FaultyDocument, and Invalid for another athlete's file.
    """
    handed, device = _for(athlete_id, text)
    statuses = Counter[str]()
    for part in _parts(handed):
        statuses.update(_take_part(athlete_id, handed.device, device, part, now))
    return HandOverTaken(statuses["stored"], statuses["duplicate"], statuses["held"], handed.lost)


def _parts(handed: HandOver) -> Iterator[Sequence[Any]]:
    """As many at once as a sync brings."""
    for first in range(0, len(handed.entries), MOST_ENTRIES):
        yield handed.entries[first : first + MOST_ENTRIES]


def _take_part(
    athlete_id: str, device_id: str, known: DeviceRow | None, part: Sequence[Any], now: int
) -> list[str]:
    with hold(athlete_id) as end:
        here = None if known is None else devices.device_by_id(known.id)
        taken = take_in(athlete_id, device_id, part, now, after=end, hold=_why_held(here))
        if here is not None:
            devices.note_through(here.id, without_gap(here, taken.numbers, taken.newest))
    return [verdict["status"] for verdict in taken.verdicts]


def _why_held(device: DeviceRow | None) -> Trouble | None:
    if device is None:
        return UNKNOWN_DEVICE
    return None if device.revoked_at is None else REVOKED


def _for(athlete_id: str, text: str) -> tuple[HandOver, DeviceRow | None]:
    """The file and its phone. A phone that another server paired may still be this athlete's."""
    handed = read_hand_over(text)
    device = devices.find_device(handed.device)
    if device is not None and device.athlete_id != athlete_id:
        raise _another(handed)
    if device is None and handed.athlete.id != athlete_id and athletes.is_known(handed.athlete.id):
        raise _another(handed)
    return handed, device


def _another(handed: HandOver) -> Invalid:
    name = handed.athlete.name
    return Invalid(f"this file is from {name}'s phone", f"take it in on the page of {name}")
