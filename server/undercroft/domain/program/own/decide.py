"""What the coach decides of own changes: back to the block, or keep them as they are now."""

from collections.abc import Collection
from dataclasses import replace

from undercroft.domain.program.block import Block
from undercroft.domain.program.own.change import Layer, OwnChange, Place
from undercroft.domain.program.own.stand import Stand, sessions_by_key, standing_of


def dropped(layer: Layer, places: Collection[Place]) -> Layer:
    """Without the changes at these places: there the block's lines count again."""
    return Layer(tuple(one for one in layer.changes if one.place not in places))


def kept_as_own(layer: Layer, block: Block, places: Collection[Place]) -> Layer:
    """At these places what the athlete does stays, now as a change to what the block says now."""
    return Layer(tuple(_kept(one, block) if one.place in places else one for one in layer.changes))


def _kept(change: OwnChange, block: Block) -> OwnChange:
    standing = standing_of(change, sessions_by_key(block))
    if standing.stand is not Stand.CLASH:
        return change
    return replace(change, beneath=standing.written, own=standing.part)
