"""The desk's blocks: writing, loads beside the text, unfolding, sending."""

from typing import Any

from flask import Response

from undercroft.api import desk_shapes as shapes
from undercroft.api import rig_shapes
from undercroft.api.contract import COACH, Section, asks, by, gives, refuses, sends, takes
from undercroft.api.unfold_shapes import UnfoldAnswer, UnfoldAsked
from undercroft.services import (
    blocks,
    finding_rigs,
    preview,
    rights,
    sending,
    starting,
    unfolding,
)
from undercroft.services.accounts import CoachSeen
from undercroft.services.refusals import Invalid, NotAllowed, NotFound
from undercroft.services.rights import READ

section = Section("blocks", "/api/v1/desk")

MEDIA = {"json": "application/json", "csv": "text/csv; charset=utf-8"}


@section.get("/blocks")
@by(COACH)
@gives(shapes.BlocksAnswer)
def list_blocks(coach: CoachSeen) -> dict[str, Any]:
    """The coach's blocks, last changed first."""
    return {"blocks": blocks.blocks_of(coach.id)}


@section.post("/blocks")
@by(COACH)
@takes(shapes.Draft, shapes.MOST_BLOCK_BYTES)
@gives(shapes.SavedAnswer, 201)
def add_block(coach: CoachSeen, body: dict[str, Any], now: int) -> blocks.Saved:
    """Begin a block; a draft may still hold faults, which are told."""
    return blocks.add(coach.id, body["document"], now)


@section.get("/blocks/<block_id>")
@by(COACH)
@gives(shapes.BlockAnswer)
def show_block(coach: CoachSeen, block_id: str) -> blocks.BlockSeen:
    """A block as it stands."""
    return blocks.block_of(coach.id, block_id)


@section.post("/blocks/<block_id>")
@by(COACH)
@takes(shapes.Draft, shapes.MOST_BLOCK_BYTES)
@gives(shapes.SavedAnswer)
def save_block(coach: CoachSeen, block_id: str, body: dict[str, Any], now: int) -> blocks.Saved:
    """Keep a newer draft of a block; its faults are told."""
    return blocks.save(coach.id, block_id, body["document"], now)


@section.post("/blocks/read")
@by(COACH)
@takes(shapes.BlockText, shapes.MOST_BLOCK_BYTES)
@gives(shapes.BlockDocument, plain=True)
def read_block(coach: CoachSeen, body: dict[str, str]) -> dict[str, Any]:
    """Read a block from JSON or CSV text; nothing is kept."""
    return {"document": blocks.read_text(coach.id, body["text"], body["format"])}


@section.get("/blocks/<block_id>/export")
@by(COACH)
@asks(shapes.ExportAsked)
@sends("application/json", "text/csv")
@refuses(Invalid)
def export_block(coach: CoachSeen, block_id: str, query: dict[str, str]) -> Response:
    """A block as a JSON or CSV file."""
    form = query["format"]
    text = blocks.export(coach.id, block_id, form)
    headers = {"Content-Disposition": f'attachment; filename="block.{form}"'}
    return Response(text, content_type=MEDIA[form], headers=headers)


@section.post("/loads")
@by(COACH)
@takes(shapes.LoadsAsked, shapes.MOST_BLOCK_BYTES)
@gives(shapes.LoadsAnswer, plain=True)
@refuses(NotFound)
def show_loads(coach: CoachSeen, body: dict[str, Any], now: int) -> dict[str, Any]:
    """Work a draft out for one athlete as they would get it now; nothing is kept."""
    rights.require(coach.id, body["athlete"], READ)
    block_id = _block_named(coach, body)
    found = preview.preview(coach.id, body["athlete"], body["document"], now, block_id)
    return {
        "faults": shapes.FaultAnswer(many=True).dump(found.faults),
        "findings": shapes.FindingAnswer(many=True).dump(found.findings),
        "sheets": found.sheets,
        "changes": found.changes,
        "own": shapes.OwnLineAnswer(many=True).dump(found.own),
    }


@section.post("/rigs")
@by(COACH)
@takes(rig_shapes.RigsAsked, shapes.MOST_BLOCK_BYTES)
@gives(rig_shapes.FoundRigsAnswer)
@refuses(NotFound)
def find_rigs(coach: CoachSeen, body: dict[str, Any], now: int) -> finding_rigs.FoundRigs:
    """Find bands or chains for a share of an exercise's load; nothing is kept.

    The rigs that the athlete's kit can make, best first, or why it can make none.
    """
    rights.require(coach.id, body["athlete"], READ)
    place = finding_rigs.Place(body["session"], body["exercise"])
    return finding_rigs.find_rigs(
        coach.id, body["athlete"], body["document"], place, body["rig"], now
    )


@section.post("/unfold")
@by(COACH)
@takes(UnfoldAsked, shapes.MOST_BLOCK_BYTES)
@gives(UnfoldAnswer)
@refuses(NotFound, Invalid)
def unfold_week(coach: CoachSeen, body: dict[str, Any], now: int) -> unfolding.Unfolded:
    """Unfold a week of a draft by its rules, with the loads for one athlete; nothing is kept."""
    athlete = body.get("athlete")
    if athlete is not None:
        rights.require(coach.id, athlete, READ)
    whose = unfolding.Whose(athlete, _block_named(coach, body))
    return unfolding.unfold_week(coach.id, body["document"], unfolding.wanted(body), whose, now)


@section.post("/blocks/<block_id>/send")
@by(COACH)
@takes(shapes.SendAsked)
@gives(shapes.SendAnswer)
@refuses(Invalid, NotAllowed)
def send_block(coach: CoachSeen, block_id: str, body: dict[str, Any], now: int) -> dict[str, Any]:
    """Send a block to athletes; one who cannot get it keeps none from it.

    A stop can be set aside by naming it with a reason, save those that nobody can overrule.
    """
    starting.require_start(body.get("starts_on"), now)
    wanted = sending.wanted(coach.name, body, now)
    return shapes.sent_and_refused(sending.send(coach.id, block_id, wanted, now))


def _block_named(coach: CoachSeen, body: dict[str, Any]) -> str | None:
    """The coach's block whose id a draft is sent with, if with any. Raises NotFound."""
    block_id = body.get("block")
    return None if block_id is None else blocks.block_of(coach.id, block_id).id
