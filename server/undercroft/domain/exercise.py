"""What the catalogue knows of an exercise."""

from collections.abc import Iterator
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


class Muscle(StrEnum):
    """The names under which hard sets are counted."""

    QUADS = "quads"
    HAMSTRINGS = "hamstrings"
    GLUTES = "glutes"
    ADDUCTORS = "adductors"
    ABDUCTORS = "abductors"
    HIP_FLEXORS = "hip-flexors"
    CALVES = "calves"
    SHINS = "shins"
    TRUNK = "trunk"
    BACK_EXTENSORS = "back-extensors"
    LATS = "lats"
    MID_BACK = "mid-back"
    UPPER_BACK = "upper-back"
    CHEST = "chest"
    UPPER_CHEST = "upper-chest"
    FRONT_SHOULDER = "front-shoulder"
    SIDE_SHOULDER = "side-shoulder"
    REAR_SHOULDER = "rear-shoulder"
    ROTATOR_CUFF = "rotator-cuff"
    BICEPS = "biceps"
    TRICEPS = "triceps"
    FOREARMS = "forearms"
    GRIP = "grip"


@dataclass(frozen=True, slots=True)
class Exercise:
    """`start_share` and `range_share` are shares of stature; None where nobody measured.

    `needs_safeties`: a failed repetition comes to rest on the lifter. `hands_sink`: they go down
    while the load is lifted, as in a pulldown. `overhead`: it wants more room above than a standing
    person, so that a low ceiling forbids it.
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
    overhead: bool = False
    cues: tuple[str, ...] = ()
    alternatives: tuple[str, ...] = ()


Catalogue = dict[str, Exercise]


def instead_of(exercise: Exercise, catalogue: Catalogue) -> Iterator[Exercise]:
    """What trains the same, best first; some of it twice.

    What is listed for it, then what is listed for these and works one of its prime muscles.
    """
    listed = [catalogue[key] for key in exercise.alternatives]
    yield from listed
    for one in listed:
        for key in one.alternatives:
            if set(catalogue[key].prime) & set(exercise.prime):
                yield catalogue[key]
