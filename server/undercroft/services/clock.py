"""The one clock."""

import time
from collections.abc import Callable
from datetime import UTC, date, datetime
from functools import lru_cache

Clock = Callable[[], int]

SECOND_MS = 1000
MINUTE_MS = 60 * SECOND_MS
HOUR_MS = 60 * MINUTE_MS
DAY_MS = 24 * HOUR_MS


def now_ms() -> int:
    """Whole milliseconds since 1970, UTC."""
    return time.time_ns() // 1_000_000


def iso(ms: int) -> str:
    """As ISO 8601 in UTC, 2026-02-03T17:04:11.250Z."""
    return f"{_to_the_second(ms // 1000)}.{ms % 1000:03d}Z"


@lru_cache(maxsize=64)
def _to_the_second(seconds: int) -> str:
    return datetime.fromtimestamp(seconds, UTC).isoformat()[:19]


def day_of(ms: int) -> date:
    """The calendar day in UTC."""
    return datetime.fromtimestamp(ms // 1000, UTC).date()


def start_of(day: date) -> int:
    """The first millisecond of a calendar day in UTC."""
    return int(datetime(day.year, day.month, day.day, tzinfo=UTC).timestamp()) * SECOND_MS
