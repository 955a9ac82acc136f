"""Counts of what was tried in a window of time, the same for all server processes."""

from peewee import PeeweeException

from undercroft.store.database import writing
from undercroft.store.models import RateLimit

KEEP_MS = 24 * 3600 * 1000


def count(bucket: str, window: int) -> int:
    """Count one more and return how many there are in this window."""
    raised = (
        RateLimit.insert(bucket=bucket, window=window, count=1)
        .on_conflict(
            conflict_target=[RateLimit.bucket, RateLimit.window],
            update={RateLimit.count: RateLimit.count + 1},
        )
        .returning(RateLimit.count)
    )
    number = int(next(iter(raised.execute())).count)
    if number == 1:
        RateLimit.delete().where(RateLimit.window < window - KEEP_MS).execute()
    return number


def count_if_possible(bucket: str, window: int) -> int:
    """Like `count` within a transaction, but 0 where the counting itself fails."""
    try:
        with writing():
            return count(bucket, window)
    except PeeweeException:
        return 0
