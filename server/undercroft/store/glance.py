"""What the squad at a glance needs of the ledger, without reading all of it."""

from collections.abc import Collection, Sequence

from undercroft.store.models import Entry
from undercroft.store.sql import marks, rows


def held_counts(athlete_ids: Sequence[str]) -> dict[str, int]:
    """By athlete, how many entries wait for a person; athletes with none are left out."""
    if not athlete_ids:
        return {}
    found = rows(
        f"SELECT athlete_id, COUNT(*) FROM entry WHERE athlete_id IN ({marks(len(athlete_ids))})"
        " AND status = 'held' AND accepted_at IS NULL GROUP BY athlete_id",
        *athlete_ids,
    )
    return dict(found)


def entries_of_revisions(
    athlete_id: str, numbers: Collection[int], kinds: Sequence[str]
) -> list[Entry]:
    """Stored entries of some kinds that were made from some revisions, in order of positions."""
    return list(
        Entry.select()
        .where(
            Entry.athlete == athlete_id,
            Entry.kind.in_(list(kinds)),
            Entry.revision.in_(list(numbers)),
            Entry.status == "stored",
        )
        .order_by(Entry.position)
    )
