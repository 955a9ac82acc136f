"""Up to which number a device has no gap on the server."""

from collections.abc import Sequence

from undercroft.store import entries
from undercroft.store.devices import DeviceRow

LOOK_AHEAD = 2000


def without_gap(device: DeviceRow, numbers: Sequence[int], newest: int) -> int:
    """The highest such number once these are stored, with the athlete's lock held.

    `newest`: the highest number that was here before them. Looks into the database only for what
    had come before and had a gap below it.
    """
    through, new = device.stored_through, frozenset(numbers)
    if through + 1 not in new:
        return through
    while through + 1 in new:
        through += 1
    if newest <= through:
        return through
    while above := entries.numbers_above(device.athlete_id, device.id, through, LOOK_AHEAD):
        for n in above:
            if n > through + 1:
                return through
            through = n
    return through
