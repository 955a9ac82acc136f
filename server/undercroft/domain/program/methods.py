"""The methods that a coach can prescribe, and what each needs to know beyond its sets."""

from dataclasses import dataclass
from enum import StrEnum


class Method(StrEnum):
    STRAIGHT = "straight"
    TOP_AND_BACK_OFF = "top-and-back-off"
    SPEED = "speed"
    HOLD = "hold"
    TEMPO = "tempo"
    OCCLUSION = "occlusion"
    UNSTABLE_BAR = "unstable-bar"
    ONE_SIDED = "one-sided"
    CLUSTER = "cluster"
    MAXIMUM_TEST = "maximum-test"
    TIMED = "timed"
    WARM_UP = "warm-up"


class Side(StrEnum):
    LEFT = "left"
    RIGHT = "right"


class Limb(StrEnum):
    """Where a wrap or cuff may sit: at the top of a limb, never on a joint, trunk or neck."""

    UPPER_ARM = "upper-arm"
    THIGH = "thigh"
    CALF = "calf"


class Restriction(StrEnum):
    WRAP = "wrap"
    CUFF = "cuff"


class KneeDown(StrEnum):
    """The knee on the floor, told by the working side."""

    SAME = "same"
    OPPOSITE = "opposite"


@dataclass(frozen=True, slots=True)
class SpeedRule:
    """When to stop a speed exercise: loss of mean velocity from the best set, in percent."""

    stop_at_loss_percent: float = 10.0
    stop_at_quality: int = 2


@dataclass(frozen=True, slots=True)
class HoldRule:
    """Where the hold is (0 start, 1 end of the lift); whether seconds count per rep or per set."""

    position: float
    per_rep: bool = False


@dataclass(frozen=True, slots=True)
class TempoRule:
    """Seconds of lowering, pause, lifting, pause: the trade's four figures."""

    lowering_s: int
    pause_low_s: int
    lifting_s: int
    pause_high_s: int


@dataclass(frozen=True, slots=True)
class OcclusionRule:
    """What restricts flow, where, and in which order the limbs are worked."""

    limb: Limb
    restriction: Restriction
    both_at_once: bool = True
    tightness: int | None = None
    pressure_percent: float | None = None


@dataclass(frozen=True, slots=True)
class UnstableRule:
    """Whether the load hangs from the bar or sits on its sleeves."""

    hanging: bool


@dataclass(frozen=True, slots=True)
class OneSidedRule:
    """Which side goes first, and which knee is down where one is."""

    first: Side
    knee_down: KneeDown | None = None


@dataclass(frozen=True, slots=True)
class ClusterRule:
    """The short rest between the blocks of repetitions of a set, in seconds."""

    block_rest_s: int


@dataclass(frozen=True, slots=True)
class TestRule:
    """A maximum test: single attempts, or a repetition maximum at `reps`."""

    reps: int = 1
    attempts: int = 4


Details = (
    SpeedRule
    | HoldRule
    | TempoRule
    | OcclusionRule
    | UnstableRule
    | OneSidedRule
    | ClusterRule
    | TestRule
)

DETAILS_OF: dict[Method, type[Details]] = {
    Method.SPEED: SpeedRule,
    Method.HOLD: HoldRule,
    Method.TEMPO: TempoRule,
    Method.OCCLUSION: OcclusionRule,
    Method.UNSTABLE_BAR: UnstableRule,
    Method.ONE_SIDED: OneSidedRule,
    Method.CLUSTER: ClusterRule,
    Method.MAXIMUM_TEST: TestRule,
}
"""Methods that are not listed need nothing beyond their sets."""

EVIDENCE_METHODS = frozenset({Method.STRAIGHT, Method.TOP_AND_BACK_OFF, Method.MAXIMUM_TEST})
"""Methods whose sets tell something about a maximum (speed and occlusion sets do not)."""
