"""Thresholds that a coach has moved, each with a record of who, when, why and from what."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from undercroft.domain.errors import DomainError
from undercroft.domain.program.checks.registry import movable
from undercroft.domain.program.checks.thresholds import DEFAULT, TABLE, Thresholds


@dataclass(frozen=True, slots=True)
class Move:
    """One threshold moved. Records are kept and never changed; the last one counts."""

    threshold: str
    before: float
    after: float
    by: str
    on: date
    why: str


def move(
    thresholds: Thresholds, name: str, value: float, by: str, on: date, why: str
) -> tuple[Thresholds, Move]:
    """The thresholds with one moved, and the record of it.

    DomainError for an unknown threshold, one that a `stop` rests on, a value that makes no sense,
    or no reason.
    """
    row = TABLE.get(name)
    if row is None:
        raise DomainError("threshold", f"there is no {name!r}", f"there are {', '.join(TABLE)}")
    if not movable(name):
        raise DomainError(name, "a stop rests on it", "only thresholds of warn and note move")
    if not row.least <= value <= row.most:
        right = f"should be from {row.least:g} to {row.most:g} {row.unit}"
        raise DomainError(name, f"is {value:g}", right)
    if not why.strip():
        raise DomainError(name, "is moved without a word", "say why, for those who come after")
    record = Move(name, getattr(thresholds, name), value, by, on, why.strip())
    return _moved(thresholds, record), record


def with_moves(moves: Iterable[Move]) -> Thresholds:
    """The thresholds after these records, oldest first; those that no longer hold are left out."""
    thresholds = DEFAULT
    for one in moves:
        row = TABLE.get(one.threshold)
        if row is not None and movable(one.threshold) and row.least <= one.after <= row.most:
            thresholds = _moved(thresholds, one)
    return thresholds


def _moved(thresholds: Thresholds, one: Move) -> Thresholds:
    return replace(thresholds, **{one.threshold: one.after})
