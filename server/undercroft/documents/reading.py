"""Read a document whole: either the typed object, or every fault at once."""

import json
from collections.abc import Iterable
from typing import Any

from marshmallow import ValidationError

from undercroft.documents.athlete import AthleteShape
from undercroft.documents.block import BlockShape
from undercroft.documents.faults import Fault, FaultyDocument, faults_of
from undercroft.documents.kit import KitShape
from undercroft.documents.made import made
from undercroft.documents.occlusion_record import OcclusionRecordShape
from undercroft.documents.references import athlete_faults, block_faults
from undercroft.documents.shape import Shape
from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Catalogue
from undercroft.domain.kit import Kit
from undercroft.domain.occlusion import OcclusionRecord
from undercroft.domain.program.block import Block


def read_block(data: Any, catalogue: Catalogue) -> Block:
    """A block from plain data. Raises FaultyDocument."""
    block: Block = read_as(BlockShape, data, block_faults(data, catalogue))
    return block


def read_kit(data: Any) -> Kit:
    """A kit from plain data. Raises FaultyDocument."""
    kit: Kit = read_as(KitShape, data)
    return kit


def read_athlete(data: Any, catalogue: Catalogue) -> Athlete:
    """An athlete from plain data. Raises FaultyDocument."""
    athlete: Athlete = read_as(AthleteShape, data, athlete_faults(data, catalogue))
    return athlete


def read_occlusion_record(data: Any) -> OcclusionRecord:
    """What is on record of occlusion work, from plain data. Raises FaultyDocument."""
    record: OcclusionRecord = read_as(OcclusionRecordShape, data)
    return record


def parse_json(text: str) -> Any:
    """Plain data from JSON text; NaN and repeated names are refused. Raises FaultyDocument."""
    try:
        return json.loads(text, parse_constant=_no_constant, object_pairs_hook=_once)
    except (json.JSONDecodeError, RecursionError) as fault:
        line = f"line {fault.lineno}" if isinstance(fault, json.JSONDecodeError) else "the document"
        raise FaultyDocument(
            (Fault(line, "", f"is no JSON ({fault})", "correct the text there"),)
        ) from None


def _no_constant(name: str) -> Any:
    raise FaultyDocument((Fault("the document", "", f"holds {name}", "write a finite number"),))


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    names = [name for name, _ in pairs]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        fault = Fault(f"field {twice}", twice, "is given twice in one object", "keep one of them")
        raise FaultyDocument((fault,))
    return dict(pairs)


def read_as(shape: type[Shape], data: Any, others: Iterable[Fault] = ()) -> Any:
    """The object of that shape, unless the shape or others find a fault. Raises FaultyDocument."""
    value, found = None, tuple[Fault, ...]()
    try:
        value = made(shape).load(data)
    except ValidationError as fault:
        found = faults_of(fault.messages, data)
    faults = (*found, *others)
    if faults:
        raise FaultyDocument(faults)
    return value
