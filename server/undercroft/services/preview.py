"""Loads beside the text: a draft worked out for one athlete as they would get it now."""

from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from typing import Any

from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import read_block
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block
from undercroft.domain.program.changes import changes
from undercroft.domain.program.finding import Finding
from undercroft.domain.program.own import Layer, Told, path_beneath, told
from undercroft.services import lending, looking_over, own_changes, planning
from undercroft.services.catalogues import catalogue_of
from undercroft.services.clock import day_of
from undercroft.services.looking_over import Found, Looked
from undercroft.services.planning import Current
from undercroft.store import athletes, revisions


@dataclass(frozen=True, slots=True)
class Preview:
    """Faults of the text; where it has none, what the checks find, and the sheets.

    `changes` says what is otherwise than in what the athlete has now; `own` what is otherwise than
    in the text, because it is this athlete's own.
    """

    faults: tuple[Fault, ...]
    findings: list[Found] = field(default_factory=list)
    sheets: list[dict[str, Any]] = field(default_factory=list)
    changes: list[str] = field(default_factory=list)
    own: tuple[Told, ...] = ()


@dataclass(frozen=True, slots=True)
class Beside:
    """A block for one athlete: sheets as kept of sessions begun, all others worked out now.

    `now` is what the athlete trains by, which may be another block. `found`: what forbids to send
    it, and what the checks find.
    """

    now: Current | None
    begun: dict[str, Any]
    looked: Looked
    found: tuple[Finding, ...]


def preview(
    coach_id: str, athlete_id: str, document: Any, now: int, block_id: str | None = None
) -> Preview:
    """Nothing is kept. A draft with faults has no sheets yet.

    With a block's id the athlete's own changes to that block count. What is found has its place in
    the text all the same.
    """
    known = catalogue_of(coach_id)
    layer = own_changes.kept_of(athlete_id, block_id).layer if block_id else Layer()
    try:
        block = read_block(document, known)
        own = own_changes.own_block(block, layer, known)
    except FaultyDocument as fault:
        return Preview(fault.faults)
    found = beside(coach_id, athlete_id, own, now)
    sheets = [planning.on_wire(sheet) for sheet in found.looked.done.sheets]
    return Preview(
        (),
        in_the_text(looking_over.shown(found.found), own, block),
        [*found.begun.values(), *sheets],
        _differences(found.now, own, known),
        told(layer, block, known),
    )


def in_the_text(found: list[Found], own: Block, block: Block) -> list[Found]:
    """What was found in the athlete's own block, at its places in the block as it is written."""
    if own is block:
        return found
    return [replace(one, path=path_beneath(one.path, own, block)) for one in found]


def _differences(now: Current | None, block: Block, known: Catalogue) -> list[str]:
    """Against what the athlete trains by; nothing where that is nothing yet."""
    if now is not None and now.block.key != block.key:
        return [f"{block.name} takes the place of {now.block.name}"]
    return list(changes(None if now is None else now.block, block, known))


def beside(coach_id: str, athlete_id: str, block: Block, now: int) -> Beside:
    """The block as the athlete would get it now from that coach."""
    row = athletes.athlete_with_coach(athlete_id)
    current = planning.current(athlete_id)
    same = _of_same(current, block)
    begun = _begun(athlete_id, block, same)
    start = first_monday(same, day_of(now))
    loan = lending.of_block(coach_id, row.coach_id, block)
    known = lending.catalogue_after(loan)
    looked = looking_over.look_over(row, block, start, known, leave_out=sorted(begun))
    refused = looking_over.as_stops(lending.faults(loan))
    return Beside(current, begun, looked, (*refused, *looked.findings))


def under_way(athlete_id: str, block: Block) -> Current | None:
    """What the athlete trains by, where the draft is of the same block."""
    return _of_same(planning.current(athlete_id), block)


def _of_same(now: Current | None, block: Block) -> Current | None:
    return now if now is not None and now.block.key == block.key else None


def first_monday(now: Current | None, today: date) -> date:
    """The Monday on which a draft begins: of a block under way where that one began.

    Any other begins with the week of today.
    """
    return today - timedelta(days=today.weekday()) if now is None else now.starts_on


def _begun(athlete_id: str, block: Block, now: Current | None) -> dict[str, Any]:
    """By session the sheets of those begun: they keep their loads, as when it is sent again."""
    if now is None:
        return {}
    keys = [session.key for week in block.weeks for session in week.sessions]
    begun = planning.begun_of(athlete_id, now.numbers, keys)
    kept = sorted(revisions.sheets_of_many(athlete_id, now.numbers), key=lambda s: int(s.revision))
    return {sheet.session: sheet.document for sheet in kept if sheet.session in begun}
