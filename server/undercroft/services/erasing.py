"""Erase an athlete: everything of theirs goes, everything of others stays whole."""

from undercroft.documents.faults import Fault
from undercroft.services.devices import IDLE_MS
from undercroft.services.refusals import Invalid
from undercroft.store import erasing, offers
from undercroft.store.feed import athlete_lock


def erase(athlete_id: str, typed: str, now: int) -> None:
    """Once the name was typed as it stands. Raises Invalid.

    The athlete's phones are told when they next ask, and keep what they hold.
    """
    with erasing.leaving_no_trace(), athlete_lock(athlete_id) as row:
        if typed.strip() != row.name.strip():
            what, right = "this is not the athlete's name", f"type {row.name}"
            raise Invalid(what, right, (Fault("the name", "name", what, right),))
        erasing.remember_phones(athlete_id, now, now - IDLE_MS)
        erasing.erase(athlete_id)
        offers.forget_empty()
