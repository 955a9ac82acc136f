"""Keep what was done even where working out what follows from it fails, and work it out later."""

import logging
import traceback
from collections.abc import Sequence

from undercroft.domain.ledger import Entry
from undercroft.services import ledger, replan
from undercroft.services.clock import MINUTE_MS
from undercroft.store import overdue
from undercroft.store.database import TransactionLost, writing
from undercroft.store.feed import hold

AGAIN_MS = 10 * MINUTE_MS
"""A fault that stays costs a second of work at each try: not oftener than so. Our own choice."""

log = logging.getLogger("undercroft.replan")


def replan_safely(athlete_id: str, entries: Sequence[Entry], now: int) -> bool:
    """Replan inside a savepoint: a fault in it is undone and noted as overdue, the entries stay.

    Whether it may have put anything into the feed. The log says where it failed, and not with what
    in hand: that is health data.
    """
    try:
        if not replan.may_move(athlete_id, entries):
            return False
        with writing():
            replan.replan(athlete_id, entries)
    except TransactionLost:
        raise
    except Exception as fault:
        place = traceback.extract_tb(fault.__traceback__)[-1]
        log.error("fault %s at %s:%s", type(fault).__name__, place.filename, place.lineno)
        overdue.mark(athlete_id, min(entry.position for entry in entries), now)
    return True


def catch_up(athlete_id: str, now: int) -> None:
    """Work out what a fault has left, once ten minutes have passed since the last try."""
    if not _is_due(athlete_id, now):
        return
    with hold(athlete_id):
        late = _is_due(athlete_id, now)
        if late:
            overdue.clear(athlete_id)
            replan_safely(athlete_id, ledger.entries_from(athlete_id, late.since), now)


def _is_due(athlete_id: str, now: int) -> overdue.Overdue | None:
    late = overdue.of(athlete_id)
    return late if late is not None and late.tried_at + AGAIN_MS <= now else None
