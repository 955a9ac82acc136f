"""Loads beside the text: a draft worked out for one athlete as they would get it now."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from undercroft.documents.catalogue import catalogue
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import read_block
from undercroft.services import planning
from undercroft.services.clock import day_of
from undercroft.store import athletes


@dataclass(frozen=True, slots=True)
class Preview:
    """Sheets of the sessions that can be worked out, and what stands in the way of others."""

    faults: tuple[Fault, ...]
    sheets: list[dict[str, Any]]


def preview(athlete_id: str, document: Any, now: int) -> Preview:
    """Nothing is kept. A draft with faults has no sheets yet."""
    try:
        block = read_block(document, catalogue())
    except FaultyDocument as fault:
        return Preview(fault.faults, [])
    row = athletes.athlete_with_coach(athlete_id)
    today = day_of(now)
    done = planning.worked_out(row, block, today - timedelta(days=today.weekday()))
    found = tuple(Fault(f.where, f.path, f.what, f.right) for f in done.findings)
    return Preview(found, [planning.on_wire(sheet) for sheet in done.sheets])
