"""The person, as far as the arithmetic and the checks need to know."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class Experience(StrEnum):
    NOVICE = "novice"
    TRAINED = "trained"


class MaximumKind(StrEnum):
    """How a maximum is known: by a single that was tested, or as somebody's guess."""

    TESTED = "tested"
    GUESSED = "guessed"


@dataclass(frozen=True, slots=True)
class Maximum:
    """A one-repetition maximum of a lift. `doubt_percent` is one standard deviation."""

    lift: str
    kg: float
    kind: MaximumKind
    on: date
    doubt_percent: float | None = None


@dataclass(frozen=True, slots=True)
class Range:
    """Two tape readings: height of the hands at the start of a lift, and how far they travel."""

    exercise: str
    start_height_m: float
    range_m: float


@dataclass(frozen=True, slots=True)
class Lean:
    """A lift without evidence of its own that leans on another: maximum = ratio × the other's."""

    lift: str
    on_lift: str
    ratio: float


@dataclass(frozen=True, slots=True)
class Injury:
    where: str
    note: str = ""
    avoid: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Athlete:
    """Masses in kg, lengths in m; `thigh_cm` is the girth of a thigh at its thickest.

    Screening is kept apart, because it is a lock and no form.
    """

    key: str
    name: str
    experience: Experience | None = None
    born: date | None = None
    stature_m: float | None = None
    body_mass_kg: float | None = None
    thigh_cm: float | None = None
    pounds: bool = False
    session_minutes: int | None = None
    trains_alone: bool = True
    maxima: tuple[Maximum, ...] = ()
    ranges: tuple[Range, ...] = ()
    leans: tuple[Lean, ...] = ()
    injuries: tuple[Injury, ...] = ()
    notes: str = ""
