"""Loads beside the text: a draft worked out for one athlete as they would get it now."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from undercroft.documents.catalogue import catalogue
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import read_block
from undercroft.domain.program.block import Block
from undercroft.services import looking_over, planning
from undercroft.services.clock import day_of
from undercroft.services.looking_over import Found
from undercroft.store import athletes, revisions


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
    start, begun = _place(athlete_id, block, day_of(now))
    looked = looking_over.look_over(row, block, start, leave_out=sorted(begun))
    sheets = [planning.on_wire(sheet) for sheet in looked.done.sheets]
    return Preview((), looking_over.shown(looked.findings), [*begun.values(), *sheets])


def _place(athlete_id: str, block: Block, today: date) -> tuple[date, dict[str, Any]]:
    """The Monday on which the draft begins, and by session the sheets of those begun.

    A draft of the block that the athlete trains by goes on where that one began, and what was
    begun keeps its loads, as when it is sent again. Any other begins with the week of today.
    """
    now = planning.current(athlete_id)
    if now is None or now.block.key != block.key:
        return today - timedelta(days=today.weekday()), {}
    keys = [session.key for week in block.weeks for session in week.sessions]
    begun = planning.begun_of(athlete_id, now.numbers, keys)
    kept = sorted(revisions.sheets_of_many(athlete_id, now.numbers), key=lambda s: int(s.revision))
    sheets = {sheet.session: sheet.document for sheet in kept if sheet.session in begun}
    return now.starts_on, sheets
