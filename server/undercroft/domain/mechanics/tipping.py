"""When a bar on two supports turns over the one because the other side was bared.

A bar of mass m lies on supports s apart, side loads with their centres d from the middle. The far
support is left when M (d - s/2) on this side reaches m s/2 + M' (d' + s/2) on the other; margin is
what would tip it over what hangs there, and none is needed where d is within the supports. Worked
out from moments. Loads that swing on bands or straps count at the outermost point that they can
reach where they tip the bar, and at the innermost where they hold it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from undercroft.domain.errors import LoadError, not_negative, positive
from undercroft.domain.kit import Bar, Plate
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.methods import Side


@dataclass(frozen=True, slots=True)
class Resting:
    """A bar on two supports; `shift_m` is how far it may slide along them, either way."""

    bar_kg: float
    spacing_m: float
    shift_m: float = 0.0

    def __post_init__(self) -> None:
        positive("mass of the bar in kg", self.bar_kg)
        positive("distance between the supports in m", self.spacing_m)
        if not_negative("play of the bar in m", self.shift_m) >= self.spacing_m / 2:
            wants = f"below {self.spacing_m / 2:g}, or the bar falls off by itself"
            raise LoadError("play of the bar in m", self.shift_m, wants)

    @property
    def half_m(self) -> float:
        return self.spacing_m / 2


@dataclass(frozen=True, slots=True)
class SideLoad:
    """What one side carries: its mass, and its centre's distance from the middle of the bar.

    `outer_m` counts where it tips the bar, `inner_m` where it holds it.
    """

    mass_kg: float
    inner_m: float
    outer_m: float

    def __post_init__(self) -> None:
        not_negative("load of a side in kg", self.mass_kg)
        not_negative("distance of a load from the middle in m", self.inner_m)
        if not self.inner_m <= self.outer_m < inf:
            wants = f"{self.inner_m:g} or more, its innermost place"
            raise LoadError("outermost place of a load in m", self.outer_m, wants)


BARE = SideLoad(0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Brink:
    """How near a side is to tipping the bar."""

    side: Side
    load_kg: float
    limit_kg: float

    @property
    def margin(self) -> float:
        """Limit over load; infinite where nothing hangs or nothing can tip."""
        return self.limit_kg / self.load_kg if self.load_kg else inf


def fixed(mass_kg: float, centre_m: float) -> SideLoad:
    """A load that stays where it is."""
    return SideLoad(mass_kg, centre_m, centre_m)


def together(loads: Sequence[SideLoad]) -> SideLoad:
    """Several loads on one side as one, by their common centres."""
    mass = sum(load.mass_kg for load in loads)
    if mass == 0:
        return BARE
    inner = sum(load.mass_kg * load.inner_m for load in loads) / mass
    outer = sum(load.mass_kg * load.outer_m for load in loads) / mass
    return SideLoad(mass, inner, max(inner, outer))


def sleeve_end_m(bar: Bar) -> float:
    """Where the middle of a plate is that is about to leave the sleeve: 1.08 m on a 2.2 m bar."""
    length = positive(f"{bar.key}: sleeve length in m", bar.sleeve_length_m)
    return DEFAULT.plate_face_m + max(0.0, length - DEFAULT.drawn_off_inset_m)


def seated(stack: Sequence[Plate]) -> list[SideLoad]:
    """Plates on a sleeve, innermost first, each where it lies."""
    at, loads = DEFAULT.plate_face_m, []
    for plate in stack:
        loads.append(fixed(plate.mass_kg, at + plate.thickness_m / 2))
        at += plate.thickness_m
    return loads


def hung(bar: Bar, stack: Sequence[Plate]) -> list[SideLoad]:
    """Plates that hang from bands or straps anywhere on the sleeve."""
    end = sleeve_end_m(bar)
    return [SideLoad(plate.mass_kg, DEFAULT.plate_face_m, end) for plate in stack]


def support_forces_kg(resting: Resting, left: SideLoad, right: SideLoad) -> tuple[float, float]:
    """Least force in kg on the left and on the right support; below zero the bar turns over."""
    return _far_force(resting, left, right), _far_force(resting, right, left)


def limit_kg(resting: Resting, centre_m: float, other: SideLoad = BARE) -> float:
    """The load at a distance from the middle that just tips the bar; infinite within the supports.

    With the other side bare it is m s / (2 d - s).
    """
    arm = not_negative("distance of a load from the middle in m", centre_m) + resting.shift_m
    if arm <= resting.half_m:
        return inf
    return _holding(resting, other) / (arm - resting.half_m)


def brink(resting: Resting, left: SideLoad, right: SideLoad) -> Brink:
    """The side over which the bar would turn first, its load, and what would tip it."""
    return min(
        Brink(Side.LEFT, left.mass_kg, limit_kg(resting, left.outer_m, right)),
        Brink(Side.RIGHT, right.mass_kg, limit_kg(resting, right.outer_m, left)),
        key=lambda side: side.margin,
    )


def margin(resting: Resting, left: SideLoad, right: SideLoad) -> float:
    """What would tip the bar over what hangs there, on the side where that is least."""
    return brink(resting, left, right).margin


def _holding(resting: Resting, other: SideLoad) -> float:
    """Moment in kg m that keeps the bar from turning over the nearer support."""
    own = resting.bar_kg * (resting.half_m - resting.shift_m)
    return own + other.mass_kg * (other.inner_m + resting.half_m - resting.shift_m)


def _far_force(resting: Resting, far: SideLoad, near: SideLoad) -> float:
    tipping = near.mass_kg * (near.outer_m + resting.shift_m - resting.half_m)
    return (_holding(resting, far) - tipping) / resting.spacing_m
