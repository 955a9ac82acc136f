"""What a coach decided of proposed changes of the kit: the feed is where it stands."""

from undercroft.store.feed import publish
from undercroft.store.sql import rows

DECIDED = "kit.decided"
"""A change of the feed, by the id of the entry that proposed."""


def decided(athlete_id: str) -> set[str]:
    """Ids of the entries that were decided."""
    found = rows(
        "SELECT key FROM change WHERE athlete_id = ? AND kind = ? AND NOT superseded",
        athlete_id,
        DECIDED,
    )
    return {key for (key,) in found}


def decide(athlete_id: str, entry_id: str, *, accepted: bool) -> None:
    """Note it for the phones too; call with the athlete's lock held."""
    publish(athlete_id, DECIDED, entry_id, {"accepted": accepted})
