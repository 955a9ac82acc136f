"""Blocks as the coach writes them: drafts may hold faults, what is sent may not."""

from dataclasses import dataclass
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.block_csv import write_block_csv
from undercroft.documents.block_table import read_block_csv
from undercroft.documents.canonical import plain, to_json
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import parse_json, read_block
from undercroft.documents.rules import BAD_TEXT
from undercroft.domain.program.block import Block
from undercroft.services import tokens
from undercroft.services.catalogues import catalogue_of
from undercroft.services.refusals import NotFound
from undercroft.store import blocks
from undercroft.store.database import writing
from undercroft.store.models import Block as Row

LONGEST_NAME = 120
UNNAMED = "Unnamed block"


@dataclass(frozen=True, slots=True)
class BlockLine:
    """A block in a list."""

    id: str
    name: str
    updated_at: int
    weeks: int
    sessions: int


@dataclass(frozen=True, slots=True)
class BlockSeen:
    """A block as it stands; the document may hold faults."""

    id: str
    document: Any
    updated_at: int


@dataclass(frozen=True, slots=True)
class Saved:
    """A draft as it was kept, and what is still wrong with it."""

    id: str
    updated_at: int
    faults: tuple[Fault, ...]


def blocks_of(coach_id: str) -> list[BlockLine]:
    """The coach's blocks, last changed first."""
    return [_line(row) for row in blocks.blocks_of(coach_id)]


def block_of(coach_id: str, block_id: str) -> BlockSeen:
    """The block as it stands. Raises NotFound."""
    row = blocks.block_of(coach_id, block_id)
    if row is None:
        raise NotFound("there is no such block")
    return BlockSeen(row.id, row.document, row.updated_at)


def sound_block(coach_id: str, block_id: str) -> Block:
    """The block without faults. Raises NotFound, FaultyDocument."""
    return read_block(block_of(coach_id, block_id).document, catalogue_of(coach_id))


def add(coach_id: str, document: Any, now: int) -> Saved:
    """Begin a block."""
    block_id = tokens.new_id(now)
    with writing():
        blocks.add_block(block_id, coach_id, _name(document), document, now)
    return Saved(block_id, now, faults_in(coach_id, document))


def save(coach_id: str, block_id: str, document: Any, now: int) -> Saved:
    """Keep a newer draft. Raises NotFound."""
    block_of(coach_id, block_id)
    with writing():
        blocks.change_block(block_id, _name(document), document, now)
    return Saved(block_id, now, faults_in(coach_id, document))


def faults_in(coach_id: str, document: Any) -> tuple[Fault, ...]:
    """What is wrong with a draft, if anything."""
    try:
        read_block(document, catalogue_of(coach_id))
    except FaultyDocument as fault:
        return fault.faults
    return ()


def read_text(coach_id: str, text: str, form: str) -> dict[str, Any]:
    """The document in a JSON or CSV text. Raises FaultyDocument."""
    if form == "csv":
        block = read_block_csv(text, catalogue_of(coach_id))
    else:
        block = read_block(parse_json(text), catalogue_of(coach_id))
    document: dict[str, Any] = plain(BlockShape().dump(block))
    return document


def export(coach_id: str, block_id: str, form: str) -> str:
    """The block as JSON or CSV text. Raises NotFound, FaultyDocument."""
    block = sound_block(coach_id, block_id)
    return write_block_csv(block) if form == "csv" else to_json(BlockShape().dump(block))


def _line(row: Row) -> BlockLine:
    weeks = _objects(row.document, "weeks")
    sessions = sum(len(_objects(week, "sessions")) for week in weeks)
    return BlockLine(row.id, row.name, row.updated_at, len(weeks), sessions)


def _objects(draft: Any, many: str) -> list[dict[str, Any]]:
    """The objects of a list in a draft that may hold anything."""
    items = draft.get(many) if isinstance(draft, dict) else None
    return [item for item in items if isinstance(item, dict)] if isinstance(items, list) else []


def _name(document: Any) -> str:
    """The draft's name as far as every database can keep it."""
    name = document.get("name") if isinstance(document, dict) else None
    kept = BAD_TEXT.sub("", name)[:LONGEST_NAME] if isinstance(name, str) else ""
    return kept or UNNAMED
