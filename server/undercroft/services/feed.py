"""A page of the feed: changes and entries in the order of their positions."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from heapq import merge
from typing import Any

from undercroft.store import entries, feed

Line = feed.ChangeRow | entries.Fresh

MOST_ITEMS = 1000
MOST_BYTES = 1_000_000
NOTHING = range(0)


@dataclass(frozen=True, slots=True)
class Page:
    """`cursor`: ask again from here; `more`: at once."""

    items: list[dict[str, Any]]
    cursor: int
    more: bool


def page(
    athlete_id: str,
    after: int,
    through: int,
    not_from: str = "",
    since: int = 0,
    own: range = NOTHING,
) -> Page:
    """What came after a position, at most MOST_ITEMS or about MOST_BYTES of it, at least one.

    through: the end as it was read before, up to which all is committed.
    not_from: leave out what this device sent itself. since: leave out entries received earlier.
    own: positions known to hold nothing but what it sent itself.
    """
    if after >= through or (after + 1 in own and through in own):
        return Page([], through, False)
    changes = feed.changes(athlete_id, after, through, MOST_ITEMS + 1)
    rows = entries.fresh_for(athlete_id, after, through, MOST_ITEMS + 1, not_from, since)
    lines: list[list[Line]] = [[*changes], [*rows]]
    found = list(merge(*lines, key=lambda line: line.position))
    kept = _fitting(found)
    if len(kept) < len(found):
        return Page(list(map(_item, kept)), kept[-1].position, True)
    return Page(list(map(_item, kept)), through, False)


def _item(row: Line) -> dict[str, Any]:
    body = json.loads(row.body)
    if isinstance(row, feed.ChangeRow):
        return {"position": row.position, "kind": row.kind, "key": row.key, "body": body}
    envelope = {
        "id": row.id,
        "v": row.v,
        "n": row.n or 0,
        "kind": row.kind,
        "replaces": row.replaces,
        "at": row.at,
        "revision": row.revision,
        "session": row.session,
        "set": row.set,
        "body": body,
    }
    return {"position": row.position, "kind": "entry", "key": row.id, "body": envelope}


def _fitting(rows: Sequence[Line]) -> Sequence[Line]:
    size = 0
    for count, row in enumerate(rows[:MOST_ITEMS]):
        size += len(row.body)
        if count and size > MOST_BYTES:
            return rows[:count]
    return rows[:MOST_ITEMS]
