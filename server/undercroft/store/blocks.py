"""Blocks as their coach writes them."""

from typing import Any

from undercroft.store.models import Block
from undercroft.store.sql import rows


def blocks_of(coach_id: str) -> list[Block]:
    """Last changed first."""
    return list(
        Block.select().where(Block.coach == coach_id).order_by(Block.updated_at.desc(), Block.id)
    )


def ids_of(coach_id: str) -> set[str]:
    return {id_ for (id_,) in rows("SELECT id FROM block WHERE coach_id = ?", coach_id)}


def block_of(coach_id: str, block_id: str) -> Block | None:
    """The block, if it is this coach's."""
    return Block.get_or_none(Block.id == block_id, Block.coach == coach_id)


def add_block(block_id: str, coach_id: str, name: str, document: Any, now: int) -> None:
    Block.insert(
        id=block_id, coach=coach_id, name=name, document=document, updated_at=now
    ).execute()


def change_block(block_id: str, name: str, document: Any, now: int) -> None:
    Block.update(name=name, document=document, updated_at=now).where(Block.id == block_id).execute()
