"""What one athlete does otherwise than a block says: read, written, and laid over the block."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any

from undercroft.documents.block import BlockShape
from undercroft.documents.canonical import plain
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.made import made
from undercroft.documents.own import read_layer, write_layer
from undercroft.documents.reading import read_block
from undercroft.domain.exercise import Catalogue
from undercroft.domain.program.block import Block
from undercroft.domain.program.own import (
    Layer,
    Misfit,
    Place,
    Told,
    between,
    dropped,
    kept_as_own,
    laid_over,
    told,
)
from undercroft.services import blocks
from undercroft.services.catalogues import catalogue_of
from undercroft.services.clock import day_of
from undercroft.services.refusals import Conflict
from undercroft.store import own_layers
from undercroft.store.feed import athlete_lock


class Take(StrEnum):
    """What counts where the coach decides: the athlete's own, or the block's line."""

    OWN = "own"
    BLOCK = "block"


@dataclass(frozen=True, slots=True)
class Kept:
    """A layer as it is kept; `number` grows with each writing, 0 where nothing was written yet."""

    number: int
    layer: Layer
    changed_at: int | None = None


@dataclass(frozen=True, slots=True)
class OwnSeen:
    """The block as the athlete does it, and what in it is otherwise.

    `as_of` names the state of the block and of the changes that this was made from.
    """

    as_of: str
    changed_at: int | None
    document: Any
    changes: tuple[Told, ...]


@dataclass(frozen=True, slots=True)
class OwnSaved:
    """What is kept now. With faults nothing was changed."""

    as_of: str
    changed_at: int | None
    faults: tuple[Fault, ...]
    changes: tuple[Told, ...]


def kept_of(athlete_id: str, block_id: str) -> Kept:
    """The athlete's own changes to a block."""
    row = own_layers.layer_of(athlete_id, block_id)
    if row is None:
        return Kept(0, Layer())
    return Kept(row.number, read_layer(row.document), row.changed_at)


def keep(
    athlete_id: str, block_id: str, before: Kept, layer: Layer, now: int, coach_id: str
) -> None:
    """Write a layer that was made from `before`; call with the athlete's lock held.

    Raises Conflict where another was written meanwhile.
    """
    row = own_layers.layer_of(athlete_id, block_id)
    if (row.number if row else 0) != before.number:
        raise Conflict("these own changes were changed meanwhile", "look at them again")
    if layer != before.layer:
        number, document = before.number + 1, write_layer(layer)
        own_layers.keep_layer(athlete_id, block_id, number, document, now, coach_id)


def own_block(block: Block, layer: Layer, known: Catalogue) -> Block:
    """The block as the athlete does it. Raises FaultyDocument where the two do not go together."""
    if not layer.changes:
        return block
    own = laid_over(block, layer)
    try:
        return read_block(plain(made(BlockShape).dump(own)), known)
    except FaultyDocument as fault:
        raise FaultyDocument(tuple(map(_of_the_athlete, fault.faults))) from None


def block_for(athlete_id: str, block_id: str | None, block: Block, known: Catalogue) -> Block:
    """The block of that id as the athlete does it; without an id as it is written.

    Raises FaultyDocument.
    """
    return own_block(block, kept_of(athlete_id, block_id).layer, known) if block_id else block


def seen(coach_id: str, block_id: str, athlete_id: str) -> OwnSeen:
    """The block with the athlete's own changes. Raises NotFound, FaultyDocument."""
    state = _state(coach_id, block_id, athlete_id)
    document = plain(made(BlockShape).dump(laid_over(state.block, state.kept.layer)))
    return OwnSeen(state.as_of, state.kept.changed_at, document, _told(coach_id, state))


def save(
    coach_id: str, block_id: str, athlete_id: str, document: Any, as_of: str, now: int
) -> OwnSaved:
    """Keep what makes this document of the block. Raises NotFound, Conflict, FaultyDocument."""
    with athlete_lock(athlete_id):
        state = _state(coach_id, block_id, athlete_id)
        if state.as_of != as_of:
            what = "the block or these own changes were changed meanwhile"
            raise Conflict(what, "open them again and change what is there now")
        try:
            own = read_block(document, catalogue_of(coach_id))
        except FaultyDocument as fault:
            return _saved(coach_id, state, fault.faults)
        layer, misfits = between(state.block, own, state.kept.layer, day_of(now))
        if misfits:
            return _saved(coach_id, state, tuple(map(_fault, misfits)))
        keep(athlete_id, block_id, state.kept, layer, now, coach_id)
        return _saved(coach_id, _state(coach_id, block_id, athlete_id))


def decide(
    coach_id: str, block_id: str, athlete_id: str, places: Sequence[Place], take: Take, now: int
) -> OwnSeen:
    """Back to the block at these places, or the athlete's own kept as a change to what it says now.

    Raises NotFound, FaultyDocument.
    """
    with athlete_lock(athlete_id):
        state = _state(coach_id, block_id, athlete_id)
        before = state.kept
        if take is Take.BLOCK:
            layer = dropped(before.layer, {*places})
        else:
            layer = kept_as_own(before.layer, state.block, {*places})
        keep(athlete_id, block_id, before, layer, now, coach_id)
    return seen(coach_id, block_id, athlete_id)


@dataclass(frozen=True, slots=True)
class _State:
    """A block and the own changes to it, as they are kept now."""

    block: Block
    saved_at: int
    kept: Kept

    @property
    def as_of(self) -> str:
        return f"{self.saved_at}-{self.kept.number}"


def _state(coach_id: str, block_id: str, athlete_id: str) -> _State:
    row = blocks.block_of(coach_id, block_id)
    block = read_block(row.document, catalogue_of(coach_id))
    return _State(block, row.updated_at, kept_of(athlete_id, block_id))


def _saved(coach_id: str, state: _State, faults: tuple[Fault, ...] = ()) -> OwnSaved:
    return OwnSaved(state.as_of, state.kept.changed_at, faults, _told(coach_id, state))


def _told(coach_id: str, state: _State) -> tuple[Told, ...]:
    return told(state.kept.layer, state.block, catalogue_of(coach_id))


def _fault(misfit: Misfit) -> Fault:
    return Fault(misfit.where, misfit.path, misfit.what, misfit.right)


def _of_the_athlete(fault: Fault) -> Fault:
    return replace(fault, where=f"with the athlete’s own changes, {fault.where}")
