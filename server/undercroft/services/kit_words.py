"""A proposed change of the kit in words, beside what the kit says now."""

from typing import Any

from undercroft.domain.kit import Kit
from undercroft.domain.kit_changes import (
    COUNTED,
    Back,
    BandMeasured,
    BarWeighed,
    Gone,
    KitChange,
    Piece,
    before,
)

SORTS = {"plates": "plate", "dumbbells": "dumbbell"}


def change_in_words(change: KitChange, kit: Kit | None) -> str:
    """One sentence, with the figure that it takes the place of."""
    now = None if kit is None else before(kit, change)
    match change:
        case Gone(piece, count):
            return f"{_pieces(piece, count, now)} gone{_of(piece, now)}."
        case Back(piece, count, row):
            return f"{_pieces(piece, count, now or row)} here again{_of(piece, now)}."
        case BarWeighed():
            return _weighed(change, now)
        case BandMeasured():
            return _measured(change, now)


def _pieces(piece: Piece, count: int, row: Any) -> str:
    if piece.list in COUNTED:
        plural = "" if count == 1 else "s"
        return f"{count} {SORTS[piece.list]}{plural} of {piece.name:g} kg"
    return str(getattr(row, "name", None) or getattr(row, "label", None) or piece.name)


def _of(piece: Piece, now: Any) -> str:
    return f"; the kit has {now.count}" if piece.list in COUNTED and now is not None else ""


def _weighed(change: BarWeighed, now: Any) -> str:
    by = f"{change.with_kg:g} kg with it"
    if change.without_kg:
        by += f", {change.without_kg:g} kg without"
    instead = "" if now is None else f"; the kit says {now.mass_kg:g} kg"
    return f"Weighs {change.mass_kg:g} kg ({by}){instead}."


def _measured(change: BandMeasured, now: Any) -> str:
    told = ", ".join(f"{r.kg:g} kg at {r.length_m * 100:g} cm" for r in change.readings)
    had = 0 if now is None else len(now.readings)
    instead = "; the kit has no readings" if not had else f"; in place of {had} readings"
    return f"At rest {change.rest_length_m * 100:g} cm; {told}{instead}."
