"""Counts of what was tried in a window of time, the same for all server processes."""

from undercroft.store.sql import rows, run

KEEP_MS = 24 * 3600 * 1000


def count(bucket: str, window: int) -> int:
    """Count one more and return how many there are in this window."""
    ((number,),) = rows(
        'INSERT INTO rate_limit (bucket, "window", count) VALUES (?, ?, 1)'
        ' ON CONFLICT (bucket, "window") DO UPDATE SET count = rate_limit.count + 1'
        " RETURNING count",
        bucket,
        window,
    )
    if number == 1:
        run('DELETE FROM rate_limit WHERE "window" < ?', window - KEEP_MS)
    return int(number)
