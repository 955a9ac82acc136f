"""Everything that stands in one gym, as measured.

Masses in kilograms, lengths in metres, forces in newtons unless a name says otherwise. Objects are
plain and frozen; a kit document that cannot be built from them is refused where it enters.
"""

from dataclasses import dataclass
from enum import StrEnum


class BarKind(StrEnum):
    STRAIGHT = "straight"
    HEX = "hex"
    OSCILLATING = "oscillating"
    CURL = "curl"


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar with two loadable sleeves (a landmine uses one of them)."""

    key: str
    name: str
    mass_kg: float
    kind: BarKind = BarKind.STRAIGHT
    sleeve_length_m: float = 0.415
    rated_load_kg: float | None = None
    collar_mass_kg: float = 0.0


@dataclass(frozen=True, slots=True)
class Plate:
    """A sort of plate and how many of it there are, both sides together."""

    mass_kg: float
    count: int
    thickness_m: float
    label: str = ""


@dataclass(frozen=True, slots=True)
class Dumbbell:
    """Fixed dumbbells of one mass; `count` is single pieces, two make a pair."""

    mass_kg: float
    count: int


@dataclass(frozen=True, slots=True)
class DumbbellHandle:
    """A loadable dumbbell handle, loaded with the kit's plates on both ends."""

    key: str
    name: str
    mass_kg: float
    count: int
    sleeve_length_m: float = 0.12
    rated_load_kg: float | None = None
    collar_mass_kg: float = 0.0


@dataclass(frozen=True, slots=True)
class Stack:
    """A pin-loaded weight stack with a cable.

    `pins_kg` are the masses that the pin can select (carrier included), `add_ons_kg` the loose
    pieces that may be put on top, `travel_ratio` is hand travel over stack travel, `sheaves` the
    pulleys that the cable passes, `sheave_efficiency` the share of force that each lets through
    (0.98 with a good bearing, 0.90-0.95 with a poor one). `only_for` are the exercises of a machine
    of its own; a stack without them is for all that no other stack is for.
    """

    key: str
    name: str
    pins_kg: tuple[float, ...]
    add_ons_kg: tuple[float, ...] = ()
    travel_ratio: float = 1.0
    sheaves: int = 2
    sheave_efficiency: float = 0.98
    efficiency_measured: bool = False
    only_for: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BandReading:
    """One reading of a hanging scale: flat length when stretched, and force."""

    length_m: float
    force_n: float


@dataclass(frozen=True, slots=True)
class Band:
    """One loop band; two of a pair are two bands, because sold pairs differ."""

    key: str
    label: str
    width_mm: float
    thickness_mm: float
    rest_length_m: float
    readings: tuple[BandReading, ...] = ()
    measured_on: str | None = None


@dataclass(frozen=True, slots=True)
class Chain:
    """A chain, weighed (`mass_per_m_kg`) or known by its nominal link diameter."""

    key: str
    label: str
    length_m: float
    mass_per_m_kg: float | None = None
    diameter_mm: float | None = None
    count: int = 2


@dataclass(frozen=True, slots=True)
class Anchor:
    """A place where a band can be fixed: height above the floor, offset from the bar's path.

    `sides` is 2 where there is one on each side, 1 where it is in the middle. `choke_m` is the
    length that a band loses there when it is looped through itself (None: not measured).
    """

    key: str
    name: str
    height_m: float
    offset_m: float = 0.0
    sides: int = 2
    choke_m: float | None = None


@dataclass(frozen=True, slots=True)
class Support:
    """Rack uprights or stands on which a bar rests, `spacing_m` between the contact points."""

    key: str
    name: str
    spacing_m: float
    safeties: bool
    rated_load_kg: float | None = None


@dataclass(frozen=True, slots=True)
class Landmine:
    """A pivot at the floor that takes one end of a bar; `socket_m` of the bar stand beyond it."""

    key: str
    name: str
    pivot_height_m: float = 0.05
    socket_m: float = 0.0


@dataclass(frozen=True, slots=True)
class Wrap:
    """An unmetered way of restricting flow, told by tightness 0-10."""

    key: str
    label: str
    width_mm: float
    count: int = 2


@dataclass(frozen=True, slots=True)
class Cuff:
    """A cuff with a gauge; width and material decide what a pressure means."""

    key: str
    label: str
    width_mm: float
    material: str
    count: int = 2


@dataclass(frozen=True, slots=True)
class Kit:
    """One gym. Keys are unique within the kit across all sorts of things."""

    key: str
    name: str
    bars: tuple[Bar, ...] = ()
    plates: tuple[Plate, ...] = ()
    dumbbells: tuple[Dumbbell, ...] = ()
    handles: tuple[DumbbellHandle, ...] = ()
    stacks: tuple[Stack, ...] = ()
    bands: tuple[Band, ...] = ()
    chains: tuple[Chain, ...] = ()
    anchors: tuple[Anchor, ...] = ()
    supports: tuple[Support, ...] = ()
    landmines: tuple[Landmine, ...] = ()
    wraps: tuple[Wrap, ...] = ()
    cuffs: tuple[Cuff, ...] = ()
    notes: str = ""
    things: tuple[str, ...] = ()
    """Other things by their common name: bench, box, pull-up bar, rings."""
