"""Loads beside the text: a draft worked out for one athlete as they would get it now."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from undercroft.documents.catalogue import catalogue
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import read_block
from undercroft.services import looking_over, planning
from undercroft.services.clock import day_of
from undercroft.services.looking_over import Found
from undercroft.store import athletes


@dataclass(frozen=True, slots=True)
class Preview:
    """Faults of the text; where it has none, what the checks find, and the sheets."""

    faults: tuple[Fault, ...]
    findings: list[Found]
    sheets: list[dict[str, Any]]


def preview(athlete_id: str, document: Any, now: int) -> Preview:
    """Nothing is kept. A draft with faults has no sheets yet."""
    try:
        block = read_block(document, catalogue())
    except FaultyDocument as fault:
        return Preview(fault.faults, [], [])
    row = athletes.athlete_with_coach(athlete_id)
    today = day_of(now)
    looked = looking_over.look_over(row, block, today - timedelta(days=today.weekday()))
    sheets = [planning.on_wire(sheet) for sheet in looked.done.sheets]
    return Preview((), looking_over.shown(looked.findings), sheets)
