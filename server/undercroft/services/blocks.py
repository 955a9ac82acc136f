"""Blocks as the coach writes them: drafts may hold faults, what is sent may not."""

from dataclasses import dataclass
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.block_csv import write_block_csv
from undercroft.documents.block_table import read_block_csv
from undercroft.documents.canonical import plain, to_json
from undercroft.documents.catalogue import catalogue
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import parse_json, read_block
from undercroft.domain.program.block import Block
from undercroft.services import tokens
from undercroft.services.refusals import NotFound
from undercroft.store import blocks
from undercroft.store.database import writing
from undercroft.store.models import Block as Row


@dataclass(frozen=True, slots=True)
class BlockLine:
    """A block in a list."""

    id: str
    name: str
    updated_at: int
    weeks: int
    sessions: int


@dataclass(frozen=True, slots=True)
class Saved:
    """A draft as it was kept, and what is still wrong with it."""

    id: str
    updated_at: int
    faults: tuple[Fault, ...]


def blocks_of(coach_id: str) -> list[BlockLine]:
    """The coach's blocks, last changed first."""
    return [_line(row) for row in blocks.blocks_of(coach_id)]


def block_row(coach_id: str, block_id: str) -> Row:
    """The block as it stands. Raises NotFound."""
    row = blocks.block_of(coach_id, block_id)
    if row is None:
        raise NotFound("there is no such block")
    return row


def sound_block(coach_id: str, block_id: str) -> Block:
    """The block without faults. Raises NotFound, FaultyDocument."""
    return read_block(block_row(coach_id, block_id).document, catalogue())


def add(coach_id: str, document: Any, now: int) -> Saved:
    """Begin a block."""
    block_id = tokens.new_id(now)
    with writing():
        blocks.add_block(block_id, coach_id, _name(document), document, now)
    return Saved(block_id, now, faults_in(document))


def save(coach_id: str, block_id: str, document: Any, now: int) -> Saved:
    """Keep a newer draft. Raises NotFound."""
    block_row(coach_id, block_id)
    with writing():
        blocks.change_block(block_id, _name(document), document, now)
    return Saved(block_id, now, faults_in(document))


def faults_in(document: Any) -> tuple[Fault, ...]:
    """What is wrong with a draft, if anything."""
    try:
        read_block(document, catalogue())
    except FaultyDocument as fault:
        return fault.faults
    return ()


def read_text(text: str, form: str) -> dict[str, Any]:
    """The document in a JSON or CSV text. Raises FaultyDocument."""
    if form == "csv":
        block = read_block_csv(text, catalogue())
    else:
        block = read_block(parse_json(text), catalogue())
    document: dict[str, Any] = plain(BlockShape().dump(block))
    return document


def export(coach_id: str, block_id: str, form: str) -> str:
    """The block as JSON or CSV text. Raises NotFound, FaultyDocument."""
    block = sound_block(coach_id, block_id)
    return write_block_csv(block) if form == "csv" else to_json(BlockShape().dump(block))


def _line(row: Row) -> BlockLine:
    weeks = row.document.get("weeks") if isinstance(row.document, dict) else None
    listed = [week for week in weeks or () if isinstance(week, dict)]
    sessions = sum(len(week.get("sessions") or ()) for week in listed)
    return BlockLine(row.id, row.name, row.updated_at, len(listed), sessions)


def _name(document: Any) -> str:
    name = document.get("name") if isinstance(document, dict) else None
    return name[:120] if isinstance(name, str) and name else "Unnamed block"
