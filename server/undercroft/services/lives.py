"""What begins anew when a backup was put back."""

from undercroft.services.clock import MINUTE_MS
from undercroft.store import life
from undercroft.store.database import writing

FROM_MS = 1_767_225_600_000
"""The beginning of 2026, in UTC."""

STEP_MS = 10 * MINUTE_MS


def begin(now: int) -> str:
    """Name a new life of the database: phones take a snapshot and send again what it lacks.

    Numbers of revisions go on from the time of day, one for each ten minutes since 2026: a phone
    may still train by a revision that was sent after the backup, and what it did by that one must
    not be read by another one of the same number.
    """
    with writing():
        return life.begin(max(1, (now - FROM_MS) // STEP_MS))
