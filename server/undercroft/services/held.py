"""Entries that the server kept but could not place, shown to the coach."""

from dataclasses import dataclass, replace
from typing import Any

from undercroft.documents.entries import Trouble, content_of, envelope, read_entry
from undercroft.documents.faults import Fault
from undercroft.domain.ledger import Entry
from undercroft.services import tokens
from undercroft.services.refusals import Invalid, NotFound
from undercroft.services.replanning import replan_safely
from undercroft.store import entries
from undercroft.store.entries import STORED, Row
from undercroft.store.feed import athlete_lock, publish, take_positions
from undercroft.store.models import Entry as EntryRow

NOBODY = "desk"
"""In place of a device, for entries that were given a new id here."""


@dataclass(frozen=True, slots=True)
class HeldSeen:
    """`sent` is the entry as it came, `problem` why it waits."""

    position: int
    device: str
    received_at: int
    problem: dict[str, str]
    sent: Any


def held_of(athlete_id: str) -> list[HeldSeen]:
    """Oldest first."""
    return [
        HeldSeen(row.position, row.device, row.received_at, row.problem, row.sent)
        for row in entries.held(athlete_id)
    ]


def accept(athlete_id: str, position: int, now: int) -> str:
    """Let a held entry count, and return the id under which it does.

    Raises NotFound, and Invalid where the entry itself cannot be read.
    """
    with athlete_lock(athlete_id):
        row = entries.held_one(athlete_id, position)
        if row is None:
            raise NotFound("no entry is held under this number")
        entry = read_entry(row.sent, row.device, position)
        if isinstance(entry, Trouble):
            raise Invalid(
                "this entry cannot be read, so it cannot count",
                "record by hand what it says",
                (Fault(entry.where, entry.where, entry.what, entry.right),),
            )
        counted = _beside(row, entry, now) if row.twin else _in_place(row, entry, now)
        replan_safely(athlete_id, [counted], now)
    return counted.id


def _in_place(row: EntryRow, entry: Entry, now: int) -> Entry:
    changes = {
        "status": STORED,
        "v": entry.v,
        "kind": entry.kind,
        "at": entry.at,
        "revision": entry.revision,
        "session": entry.session,
        "set": entry.set,
        "replaces": entry.replaces,
        "body": entry.body,
    }
    entries.mark_accepted(row.athlete_id, row.position, now, changes)
    publish(row.athlete_id, "entry", entry.id, envelope(entry))
    return entry


def _beside(row: EntryRow, entry: Entry, now: int) -> Entry:
    """Its id belongs to another entry, so it counts under a new one; the held line stays."""
    entries.mark_accepted(row.athlete_id, row.position, now, {})
    (position,) = take_positions(row.athlete_id, 1)
    fresh = replace(entry, id=tokens.new_id(now), device=NOBODY, position=position, n=0)
    content = content_of(envelope(fresh))
    entries.add_rows(
        [
            Row(
                row.athlete_id, position, fresh.id, 0, NOBODY, None, fresh.v, fresh.kind,
                fresh.at, now, fresh.revision, fresh.session, fresh.set, fresh.replaces,
                content.text, content.digest, STORED, None, None,
            )
        ]
    )  # fmt: skip
    return fresh
