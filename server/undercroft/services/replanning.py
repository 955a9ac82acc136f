"""Keep what was done even where working out what follows from it fails."""

import logging
import traceback
from collections.abc import Sequence

from undercroft.domain.ledger import Entry
from undercroft.services import replan
from undercroft.store.database import TransactionLost, writing

log = logging.getLogger("undercroft.replan")


def replan_safely(athlete_id: str, entries: Sequence[Entry]) -> None:
    """Replan inside a savepoint: a fault in it is logged and undone, and the entries stay.

    Most batches move nothing and do without the savepoint.
    The log says where it failed, not with what in hand: that is health data.
    """
    try:
        if not replan.may_move(athlete_id, entries):
            return
        with writing():
            replan.replan(athlete_id, entries)
    except TransactionLost:
        raise
    except Exception as fault:
        place = traceback.extract_tb(fault.__traceback__)[-1]
        log.error("fault %s at %s:%s", type(fault).__name__, place.filename, place.lineno)
