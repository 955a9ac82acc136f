"""The way of the hands through a lift: where it starts, how far it goes, up or down.

Where the body itself is lifted, it is the way of what a band would hold: a foot, a knee, a belt.

Two tape readings of the athlete decide; without them stature times the catalogue's shares stand in,
and the path says so. s runs from 0 (start) to 1 (end).
"""

from dataclasses import dataclass

from undercroft.domain.athlete import Athlete
from undercroft.domain.errors import LoadError, not_negative, positive
from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.mechanics.rubber import Floats


@dataclass(frozen=True, slots=True)
class Path:
    """Height of the hands at the start, and how far up (or down) they go, in metres.

    `measured` is False where stature and the catalogue stand in for a tape; `body` says that the
    body is lifted and no bar.
    """

    start_m: float
    range_m: float
    rises: bool = True
    measured: bool = True
    body: bool = False

    def __post_init__(self) -> None:
        not_negative("height of the hands at the start in m", self.start_m)
        positive("range of the lift in m", self.range_m)
        if not self.rises and self.range_m > self.start_m:
            wants = f"{self.start_m:g} at most: it goes down from there to the floor"
            raise LoadError("range of the lift in m", self.range_m, wants)

    @property
    def sign(self) -> int:
        """+1 where the hands rise, so that what pulls down resists; -1 where they sink."""
        return 1 if self.rises else -1

    @property
    def end_m(self) -> float:
        return self.start_m + self.sign * self.range_m

    def height_m(self, s: Floats) -> Floats:
        """Height of the hands at s."""
        return self.start_m + self.sign * self.range_m * s

    def s_at(self, height_m: float) -> float:
        """The s at which the hands are at a height; outside 0 to 1 where they never are."""
        return (height_m - self.start_m) * self.sign / self.range_m


def path_for(athlete: Athlete, exercise: Exercise) -> Path:
    """The athlete's tape readings for the exercise, else stature times the catalogue's shares.

    Raises LoadError where neither is known.
    """
    rises, body = not exercise.hands_sink, exercise.implement is Implement.BODY
    for taped in athlete.ranges:
        if taped.exercise == exercise.key:
            return Path(taped.start_height_m, taped.range_m, rises, body=body)
    field = f"range of {exercise.name.lower()}"
    if exercise.start_share is None or exercise.range_share is None:
        raise LoadError(field, "unknown", "two tape readings of the athlete: start and end height")
    if athlete.stature_m is None:
        raise LoadError(field, "unknown", "two tape readings of the athlete, or a stature")
    stature = positive("stature in m", athlete.stature_m)
    start_m, range_m = stature * exercise.start_share, stature * exercise.range_share
    return Path(start_m, range_m, rises, measured=False, body=body)
