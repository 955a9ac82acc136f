"""Work out again what an athlete's new entries have changed."""

from collections.abc import Sequence

from undercroft.domain.ledger import Entry


def replan(athlete_id: str, entries: Sequence[Entry]) -> None:
    """Bring tracker states and the sheets of sessions not yet started up to date.

    Called once per batch with the entries newly stored, inside the transaction that stored them
    and with the athlete's lock held; what it changes goes out by `store.feed.publish`.
    """
