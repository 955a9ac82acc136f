"""What is on record of an athlete's occlusion work: from the ledger, and what coaches recorded."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from undercroft.documents.doses import read_day, write_doses
from undercroft.documents.screening import ClearanceShape, MeasuredShape, SignatureShape
from undercroft.domain.athlete import Athlete
from undercroft.domain.ledger import Entry
from undercroft.domain.occlusion import (
    AfterCheck,
    Answered,
    OcclusionRecord,
    ScreeningFile,
    Stopped,
    doses_of,
)
from undercroft.services import ledger
from undercroft.services.clock import day_of
from undercroft.services.closing import Closed
from undercroft.store import entries as lines
from undercroft.store import facts, screening

TOLD_BY = ("screening.answered", "after.check", "session.stopped")
"""Kinds of entries that may lock occlusion work."""

KIND = "occlusion"
"""Of facts about sessions."""

SHAPES = {"signature": SignatureShape, "clearance": ClearanceShape, "pressure": MeasuredShape}
"""What the coach records, by kind."""


def record_of(athlete_id: str, athlete: Athlete) -> OcclusionRecord:
    """Everything on record, as it stands now."""
    kept: dict[str, list[Any]] = {kind: [] for kind in SHAPES}
    for row in screening.records(athlete_id):
        if row.withdrawn_at is None:
            kept[row.kind].append(SHAPES[row.kind]().load(row.body))
    return OcclusionRecord(
        screening=_file(athlete_id, athlete, kept),
        days=tuple(read_day(body) for body in facts.all_of(athlete_id, KIND)),
        pressures=tuple(kept["pressure"]),
    )


def _file(athlete_id: str, athlete: Athlete, kept: Mapping[str, Sequence[Any]]) -> ScreeningFile:
    told = ledger.entries_of(athlete_id, kinds=TOLD_BY)
    days = _days(athlete_id, told)
    return ScreeningFile(
        answered=tuple(_answered(told, days)),
        signatures=tuple(kept["signature"]),
        clearances=tuple(kept["clearance"]),
        stopped=tuple(_stopped(told, days)),
        after=tuple(_after(told, days)),
        trains_alone=athlete.trains_alone,
        born=athlete.born,
    )


def _days(athlete_id: str, told: Sequence[Entry]) -> dict[str, date]:
    """By entry: the phone's day, but none after the one on which it came in."""
    received = lines.received_at(athlete_id, [entry.position for entry in told])
    return {
        entry.id: min(date.fromisoformat(entry.at[:10]), day_of(received[entry.position]))
        for entry in told
    }


def _answered(told: Sequence[Entry], days: Mapping[str, date]) -> Iterator[Answered]:
    for entry in told:
        if entry.kind == "screening.answered":
            yield Answered(entry.id, days[entry.id], entry.body["answers"])


def _stopped(told: Sequence[Entry], days: Mapping[str, date]) -> Iterator[Stopped]:
    for entry in told:
        if entry.kind == "session.stopped" and entry.body.get("signs"):
            yield Stopped(days[entry.id], tuple(entry.body["signs"]))


def _after(told: Sequence[Entry], days: Mapping[str, date]) -> Iterator[AfterCheck]:
    for entry in told:
        if entry.kind == "after.check":
            yield AfterCheck(days[entry.id], entry.body["hours"], tuple(entry.body["signs"]))


def hear(athlete_id: str, closed: Closed, latest: date) -> None:
    """Keep what a closed session amounted to for each limb, and nothing where it had none.

    No phone's clock puts it after `latest`, the day on which its entries came in.
    """
    doses = doses_of(closed.plan, closed.record)
    on = min([latest, *(dose.on for dose in doses)])
    body = write_doses(on, doses) if doses else None
    facts.keep(athlete_id, KIND, closed.place, body)
