"""How bands or chains are attached for an exercise, as the coach intends it.

A block is written for many gyms, so a rig says what share is wanted where; which bands hang from
which anchor is worked out for each kit. `things` pins named pieces of one kit instead.
"""

from dataclasses import dataclass
from enum import StrEnum

from undercroft.domain.program.wish import Point


class Part(StrEnum):
    BANDS = "bands"
    CHAINS = "chains"


class Route(StrEnum):
    SINGLE = "single"
    DOUBLED = "doubled"
    INVERTED_V = "inverted-v"
    CHOKED = "choked"


class ShareBase(StrEnum):
    LOAD = "load"
    MAXIMUM = "maximum"


@dataclass(frozen=True, slots=True)
class Rig:
    """`share_percent` of `base`, counted at `point` of the lift, from bands or chains."""

    part: Part
    share_percent: float | None = None
    base: ShareBase = ShareBase.LOAD
    point: Point = Point.LOCKOUT
    route: Route | None = None
    assists: bool = False
    per_side: int = 1
    things: tuple[str, ...] = ()
