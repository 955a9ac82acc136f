"""A load wish: what the coach wants, before anybody knows which plates stand in the gym."""

from dataclasses import dataclass
from enum import StrEnum


class Point(StrEnum):
    """Where in the lift a load is meant: on the bar alone, or at a point of the force curve."""

    BAR = "bar"
    START = "start"
    MEAN = "mean"
    LOCKOUT = "lockout"


class WhenUnknown(StrEnum):
    """What to do when the athlete has no maximum for the lift."""

    REFUSE = "refuse"
    FIND = "find"


@dataclass(frozen=True, slots=True)
class OfMaximum:
    """A percentage of a one-repetition maximum.

    `of` names the lift whose maximum is meant (None: the exercise's own); `ratio` multiplies that
    maximum when a lift is prescribed from another one.
    """

    percent: float
    of: str | None = None
    ratio: float = 1.0
    point: Point = Point.BAR
    when_unknown: WhenUnknown = WhenUnknown.REFUSE


@dataclass(frozen=True, slots=True)
class Fixed:
    """A mass in kilograms, on the implement or, for a lever or cable, in the hand."""

    kg: float
    in_hand: bool = False


@dataclass(frozen=True, slots=True)
class ByReserve:
    """The load with which the set ends `rir` repetitions short of failure."""

    rir: float
    when_unknown: WhenUnknown = WhenUnknown.FIND


@dataclass(frozen=True, slots=True)
class AsLastTime:
    """What was done for this exercise last time, plus `add_kg`; `start_kg` where there is none."""

    add_kg: float = 0.0
    start_kg: float | None = None


@dataclass(frozen=True, slots=True)
class OfTopSet:
    """A percentage of what was done in the exercise's top set today."""

    percent: float


@dataclass(frozen=True, slots=True)
class BodyMass:
    """The athlete's own body, with a belt plate (`add_kg` > 0) or assistance (`add_kg` < 0)."""

    add_kg: float = 0.0


@dataclass(frozen=True, slots=True)
class Unloaded:
    """Nothing to load: the implement or the body as it is."""


LoadWish = OfMaximum | Fixed | ByReserve | AsLastTime | OfTopSet | BodyMass | Unloaded
