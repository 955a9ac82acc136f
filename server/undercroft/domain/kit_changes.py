"""What an athlete found different in the gym, applied to the kit as it is written down.

Masses in kilograms, lengths in metres. A piece is named by its list and by its key, or by its mass
where it has none; other things (benches, boxes) by their name.
"""

from dataclasses import dataclass, replace
from typing import Any

from undercroft.domain.errors import DomainError
from undercroft.domain.kit import BandReading, Kit
from undercroft.domain.mechanics import STANDARD_GRAVITY

COUNTED = ("plates", "dumbbells")
"""Lists whose pieces have a mass and a count, and no key."""

MOST_STRETCH = 2.5
"""The longest reading in rest lengths (a textbook limit for bands; from memory)."""

FEWEST_READINGS = 2


@dataclass(frozen=True, slots=True)
class Piece:
    """`name` is a key, or the mass in `COUNTED` lists, or the words of a thing."""

    list: str
    name: str | float


@dataclass(frozen=True, slots=True)
class Gone:
    """`count` of them where the list counts, else the one."""

    piece: Piece
    count: int = 1


@dataclass(frozen=True, slots=True)
class Back:
    """`row` is the piece as it was written down before it went."""

    piece: Piece
    count: int = 1
    row: Any = None


@dataclass(frozen=True, slots=True)
class BarWeighed:
    """By a scale that somebody stands on with the bar and without; 0 without where it hangs."""

    key: str
    with_kg: float
    without_kg: float = 0.0

    @property
    def mass_kg(self) -> float:
        return round(self.with_kg - self.without_kg, 3)


@dataclass(frozen=True, slots=True)
class HangingReading:
    """The flat length to which a band was stretched, and what the hanging scale showed."""

    length_m: float
    kg: float


@dataclass(frozen=True, slots=True)
class BandMeasured:
    """Taken upwards, after five stretches; the first length is at rest."""

    key: str
    rest_length_m: float
    readings: tuple[HangingReading, ...]


KitChange = Gone | Back | BarWeighed | BandMeasured


def changed(kit: Kit, change: KitChange, on: str) -> Kit:
    """The kit with the change in it; `on` is the day of a measurement, 2026-02-03.

    Raises DomainError where the kit has no such piece, or a measurement cannot be.
    """
    match change:
        case Gone(piece, count):
            return _counted(kit, piece, -count) if piece.list in COUNTED else _without(kit, piece)
        case Back(piece, count):
            return _counted(kit, piece, count) if piece.list in COUNTED else _with(kit, change)
        case BarWeighed():
            return _weighed(kit, change)
        case BandMeasured():
            return _measured(kit, change, on)


def before(kit: Kit, change: KitChange) -> Any:
    """The piece as it is written down now; None where it is not."""
    piece = change.piece if isinstance(change, Gone | Back) else None
    if isinstance(change, BarWeighed):
        piece = Piece("bars", change.key)
    if isinstance(change, BandMeasured):
        piece = Piece("bands", change.key)
    return None if piece is None else _find(kit, piece)


def _name(list_: str, row: Any) -> Any:
    if list_ == "things":
        return row
    return row.mass_kg if list_ in COUNTED else row.key


def _find(kit: Kit, piece: Piece) -> Any:
    rows = getattr(kit, piece.list)
    return next((row for row in rows if _name(piece.list, row) == piece.name), None)


def _needed(kit: Kit, piece: Piece) -> Any:
    found = _find(kit, piece)
    if found is None:
        raise DomainError(
            piece.list, f"the kit has no {piece.name}", "change the kit by hand, or set this aside"
        )
    return found


def _swapped(kit: Kit, list_: str, old: Any, new: tuple[Any, ...]) -> Kit:
    rows = getattr(kit, list_)
    kept = tuple(one for row in rows for one in (new if row is old else (row,)))
    return _having(kit, list_, kept)


def _having(kit: Kit, list_: str, rows: tuple[Any, ...]) -> Kit:
    lists: dict[str, Any] = {list_: rows}
    return replace(kit, **lists)


def _counted(kit: Kit, piece: Piece, more: int) -> Kit:
    row = _needed(kit, piece)
    count = row.count + more
    if count < 0:
        what = f"{-more} are said to be gone, and the kit has {row.count}"
        raise DomainError(piece.list, what, "count what is there, and change the kit by hand")
    return _swapped(kit, piece.list, row, (replace(row, count=count),))


def _without(kit: Kit, piece: Piece) -> Kit:
    return _swapped(kit, piece.list, _needed(kit, piece), ())


def _with(kit: Kit, back: Back) -> Kit:
    if _find(kit, back.piece) is not None:
        raise DomainError(back.piece.list, f"{back.piece.name} is in the kit", "set this aside")
    if back.row is None or _name(back.piece.list, back.row) != back.piece.name:
        what = f"what {back.piece.name} was like is not said"
        raise DomainError(back.piece.list, what, "write it into the kit by hand")
    return _having(kit, back.piece.list, (*getattr(kit, back.piece.list), back.row))


def _weighed(kit: Kit, change: BarWeighed) -> Kit:
    bar = _needed(kit, Piece("bars", change.key))
    if change.mass_kg <= 0:
        what = f"{change.with_kg:g} kg with the bar is no more than {change.without_kg:g} without"
        raise DomainError("bars", what, "weigh it again")
    return _swapped(kit, "bars", bar, (replace(bar, mass_kg=change.mass_kg),))


def _measured(kit: Kit, change: BandMeasured, on: str) -> Kit:
    band = _needed(kit, Piece("bands", change.key))
    if len(change.readings) < FEWEST_READINGS:
        raise DomainError("bands", "only one reading", "take two at least, four are better")
    longest = max(one.length_m for one in change.readings)
    if longest > change.rest_length_m * MOST_STRETCH:
        what = f"{longest:g} m is more than {MOST_STRETCH:g} times its length at rest"
        raise DomainError("bands", what, "measure again, and no further than that")
    ordered = sorted(change.readings, key=lambda one: one.length_m)
    readings = tuple(BandReading(r.length_m, round(r.kg * STANDARD_GRAVITY, 2)) for r in ordered)
    new = replace(band, rest_length_m=change.rest_length_m, readings=readings, measured_on=on)
    return _swapped(kit, "bands", band, (new,))
