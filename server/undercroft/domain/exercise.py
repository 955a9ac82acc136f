"""What the catalogue knows of an exercise."""

from dataclasses import dataclass
from enum import StrEnum


class Implement(StrEnum):
    """What is lifted. The kit decides which piece of that kind it is."""

    STRAIGHT_BAR = "straight-bar"
    HEX_BAR = "hex-bar"
    CURL_BAR = "curl-bar"
    OSCILLATING_BAR = "oscillating-bar"
    LANDMINE = "landmine"
    DUMBBELLS = "dumbbells"
    DUMBBELL = "dumbbell"
    STACK = "stack"
    BODY = "body"
    BAND = "band"


MUSCLES = (
    "quads", "hamstrings", "glutes", "adductors", "abductors", "hip-flexors", "calves", "shins",
    "trunk", "back-extensors", "lats", "mid-back", "upper-back", "chest", "upper-chest",
    "front-shoulder", "side-shoulder", "rear-shoulder", "rotator-cuff", "biceps", "triceps",
    "forearms", "grip",
)  # fmt: skip
"""The names under which hard sets are counted."""


@dataclass(frozen=True, slots=True)
class Exercise:
    """`start_share` and `range_share` are shares of stature; None where nobody measured.

    `needs_safeties`: a failed repetition comes to rest on the lifter. `hands_sink`: they go down
    while the load is lifted, as in a pulldown.
    """

    key: str
    name: str
    implement: Implement
    prime: tuple[str, ...]
    helpers: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    start_share: float | None = None
    range_share: float | None = None
    one_sided: bool = False
    needs_safeties: bool = False
    hands_sink: bool = False
    cues: tuple[str, ...] = ()
    alternatives: tuple[str, ...] = ()


Catalogue = dict[str, Exercise]
