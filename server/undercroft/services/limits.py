"""How often something may be tried, counted in the database so that all processes agree."""

from dataclasses import dataclass

from undercroft.services.clock import DAY_MS, MINUTE_MS
from undercroft.services.refusals import TooOften
from undercroft.store import limits
from undercroft.store.database import writing
from undercroft.store.devices import DeviceRow


@dataclass(frozen=True, slots=True)
class Limit:
    """At most `most` times in `window_ms`, for each subject and for all of them together."""

    name: str
    window_ms: int
    most: int
    most_in_all: int


LOG_IN = Limit("log-in", 15 * MINUTE_MS, 10, 300)
"""Own choice; ASVS 5.0 6.3.1 asks for a limit, not for a number."""

PAIRING = Limit("pairing", 10 * MINUTE_MS, 20, 300)
"""Own choice: 300 guesses in ten minutes against 39 bits are hopeless even with many live codes."""

CODES = Limit("code", DAY_MS, 30, 3000)
"""Own choice, by coach, beside LOG_IN. Three codes are right at any time: by LOG_IN alone, whoever
has the password would guess one within a year more likely than not; so it is one chance in thirty.
"""

SHARING = Limit("sharing", 10 * MINUTE_MS, 20, 300)
"""Own choice, by coach: the secret of a link has 256 bits, nobody guesses it."""

SYNC_WINDOW_MS = MINUTE_MS


def spend(limit: Limit, subjects: tuple[str, ...], now: int) -> None:
    """Count one try for each subject and for all. Raises TooOften; fails closed.

    A try that is refused for one subject counts neither for the subjects after it nor for all:
    whoever has used up their own tries, an address first, cannot use up those of others.
    The count stands in a transaction of its own, so that a refused try counts as well.
    """
    window = now - now % limit.window_ms
    buckets = [(subject, limit.most) for subject in subjects] + [("*", limit.most_in_all)]
    with writing():
        over = any(limits.count(f"{limit.name}:{name}", window) > most for name, most in buckets)
    if over:
        raise TooOften(_seconds_left(limit.window_ms, now))


def spend_sync(device: DeviceRow, most: int, now: int) -> DeviceRow:
    """The device with one more request with entries counted. Raises TooOften.

    The count stands in the device's own row and is written with what the request stores.
    """
    window = now - now % SYNC_WINDOW_MS
    count = device.sync_count + 1 if device.sync_window == window else 1
    if count > most:
        raise TooOften(_seconds_left(SYNC_WINDOW_MS, now))
    return device._replace(sync_window=window, sync_count=count)


def _seconds_left(window_ms: int, now: int) -> int:
    return 1 + (window_ms - now % window_ms) // 1000
