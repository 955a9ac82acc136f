"""A page of the feed: changes and entries in the order of their positions."""

import json
from dataclasses import dataclass
from heapq import merge
from typing import Any

from undercroft.documents.entries import envelope
from undercroft.services.ledger import from_row
from undercroft.store import entries, feed
from undercroft.store.models import Entry

MOST_ITEMS = 1000
MOST_BYTES = 1_000_000


@dataclass(frozen=True, slots=True)
class Page:
    """`cursor`: ask again from here; `more`: at once."""

    items: list[dict[str, Any]]
    cursor: int
    more: bool


def page(athlete_id: str, after: int, not_from: str | None = None, since: int = 0) -> Page:
    """What came after a position, at most MOST_ITEMS or about MOST_BYTES of it, at least one.

    not_from: leave out what this device sent itself. since: leave out entries received earlier.
    The end is read first: everything up to it is committed, whatever is written meanwhile.
    """
    through = feed.last_position(athlete_id)
    if after >= through:
        return Page([], through, False)
    changes = feed.changes(athlete_id, after, through, MOST_ITEMS + 1)
    rows = entries.fresh_for(athlete_id, after, through, MOST_ITEMS + 1, not_from, since)
    found = list(merge(changes, map(_item, rows), key=lambda item: item["position"]))
    kept = _fitting(found)
    if len(kept) < len(found):
        return Page(kept, kept[-1]["position"], True)
    return Page(kept, through, False)


def _item(row: Entry) -> dict[str, Any]:
    return {
        "position": row.position,
        "kind": "entry",
        "key": row.id,
        "body": envelope(from_row(row)),
    }


def _fitting(items: list[dict[str, Any]]) -> list[dict[str, Any]]:
    size = 0
    for count, item in enumerate(items[:MOST_ITEMS]):
        size += len(json.dumps(item["body"]))
        if count and size > MOST_BYTES:
            return items[:count]
    return items[:MOST_ITEMS]
