"""The tightness of a wrap without a gauge: 0 nothing, 7 moderate without pain, 10 pain.

It is never turned into a pressure. The same person's 7 drifts by 20-25 % between days, and is
tightest on the first day (Bell et al. 2020, conference abstract; both seen).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion.issue import Issue, stop
from undercroft.domain.occlusion.ladder import rung
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.site import is_arm
from undercroft.domain.program.methods import Limb

ANCHORS = (
    (0, "nothing"),
    (7, "moderate pressure, no pain"),
    (10, "pressure that hurts"),
)


@dataclass(frozen=True, slots=True)
class Rated:
    """Mean pressures in mmHg: what people called 7 and 10, and what shut the artery."""

    seven: float
    ten: float
    occlusion: float


BELL_2018: Mapping[str, Rated] = MappingProxyType(
    {"arm": Rated(132, 202, 162), "leg": Rated(120, 178, 171)}
)
"""Bell et al. 2018, Physiol Meas, n = 120 (seen). Why 10 is never allowed: it shuts the artery."""


class WrapAdvice(StrEnum):
    """What to do after the question whether the limb is numb."""

    GO_ON = "go-on"
    OFF_THEN_LOOSER = "off-then-looser"
    OFF_FOR_TODAY = "off-for-today"


ADVICE: Mapping[WrapAdvice, str] = MappingProxyType(
    {
        WrapAdvice.GO_ON: "Go on. Numb at any time later means off.",
        WrapAdvice.OFF_THEN_LOOSER: "Off now. If it clears within a minute, once more and looser."
        " If not, not again today.",
        WrapAdvice.OFF_FOR_TODAY: "All wraps off. Not again today.",
    }
)


def most_tightness(limb: Limb, exposure: int) -> int:
    """The tightest allowed at that exposure, 1 being the first; legs end at 7, arms at 6."""
    own = LIMITS.most_tightness_arm if is_arm(limb) else LIMITS.most_tightness_leg
    return min(own, rung(exposure).most_tightness)


def check_tightness(value: float) -> float:
    """Give a tightness back, or raise LoadError where it is not one of the scale."""
    if not 0 <= value <= 10:
        raise LoadError("tightness", value, "0 (nothing) to 10 (pain)")
    return value


def tightness_issues(
    value: float | None, limb: Limb, exposure: int, clinician: int = LIMITS.most_tightness_leg
) -> Iterator[Issue]:
    """A planned or felt tightness against the limit of that limb at that exposure."""
    most = min(clinician, most_tightness(limb, exposure))
    if value is None:
        yield stop("tightness", "no tightness is given", f"at most {most} of 10 here")
    elif check_tightness(value) > most:
        yield stop("tightness", f"tightness {value:g} of 10", f"at most {most} of 10 here")


def after_numbness(numb: bool, seconds_on: float, tried_again: bool = False) -> WrapAdvice:
    """What to do when the screen asked for numbness, `seconds_on` after the wrap went on.

    Numb early is too tight (common practice): off, and one looser try where it clears at once.
    Numb later, or a second time, ends it for the day.
    """
    if not numb:
        return WrapAdvice.GO_ON
    early = seconds_on <= LIMITS.numb_early_s and not tried_again
    return WrapAdvice.OFF_THEN_LOOSER if early else WrapAdvice.OFF_FOR_TODAY
