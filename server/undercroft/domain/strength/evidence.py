"""What a set or a test says about the maximum, and with how much doubt.

A load w for n = reps + reserve reads, in natural logarithms,

    y = ln w - ln phi(n) = level + form + tilt * (ln phi(n) - ln phi(5)) + error

The variance of the error is taken at the planned n and reserve, never at the reported ones: a good
day is reported with more in reserve and would otherwise count less than a bad one.
"""

from dataclasses import dataclass
from math import log

from undercroft.domain.errors import positive
from undercroft.domain.strength.reserve import (
    FEWEST,
    HANDBOOK,
    MOST,
    RepCurve,
    lean,
    log_share,
    steepness,
)
from undercroft.domain.strength.settings import DEFAULT, StrengthSettings, at
from undercroft.domain.strength.velocity import VelocityMaximum


@dataclass(frozen=True, slots=True)
class TestedMax:
    """A one-repetition maximum that was tested."""

    __test__ = False

    load_kg: float


@dataclass(frozen=True, slots=True)
class PlannedTest:
    """A test of the maximum that the plan holds."""


@dataclass(frozen=True, slots=True)
class PlannedSet:
    """Repetitions and reserve as the coach wrote them."""

    reps: float
    rir: float


@dataclass(frozen=True, slots=True)
class SetDone:
    """A set as reported, and as it was planned; a set that nobody planned is its own plan."""

    load_kg: float
    reps: float
    rir: float
    planned: PlannedSet


Evidence = TestedMax | SetDone | VelocityMaximum
"""What the tracker can take in."""

Planned = PlannedTest | PlannedSet
"""What will become evidence when it is done."""


@dataclass(frozen=True, slots=True)
class Weight:
    """How evidence is taken: `lean` is what tilt is multiplied by, `variance` that of the error."""

    lean: float
    variance: float


@dataclass(frozen=True, slots=True)
class Reading:
    """y as defined above, and what tilt is multiplied by at the reported n."""

    y: float
    lean: float


def evidence_n(load_kg: float, reps: float, rir: float | None, to_failure: bool) -> float | None:
    """n = reps + reserve where an outcome says something about the maximum, else None.

    It needs a load, repetitions, a reserve (or failure), and n from 1 to 15. Whether the method
    gives evidence at all is the prescription's to say: occlusion and speed sets do not.
    """
    reserve = 0.0 if to_failure else rir
    if reserve is None or not (load_kg > 0 and reps > 0 and reserve >= 0):
        return None
    n = reps + reserve
    return n if FEWEST <= n <= MOST else None


def set_variance(planned: PlannedSet, curve: RepCurve, settings: StrengthSettings) -> float:
    """Variance of ln w for a set of this plan: the curve's doubt and the reserve's, squared."""
    n = planned_n(planned)
    reserve_sd = at(settings.reserve_sd, planned.rir)
    if planned.reps > settings.long_set_reps:
        reserve_sd *= settings.long_set_factor
    return at(settings.curve_sd, n) ** 2 + (reserve_sd * steepness(n, curve)) ** 2


def planned_n(planned: PlannedSet) -> float:
    """n of a plan, held to the range in which evidence can fall."""
    return min(max(planned.reps + planned.rir, FEWEST), MOST)


def weigh(
    evidence: Evidence | Planned,
    curve: RepCurve = HANDBOOK,
    settings: StrengthSettings = DEFAULT,
) -> Weight:
    """Weight of evidence: for a set it follows from the plan, for a velocity from the lift."""
    if isinstance(evidence, (TestedMax, PlannedTest)):
        return Weight(lean(FEWEST, curve), settings.test_sd**2)
    if isinstance(evidence, VelocityMaximum):
        return Weight(lean(FEWEST, curve), evidence.sd**2)
    planned = evidence.planned if isinstance(evidence, SetDone) else evidence
    return Weight(lean(planned_n(planned), curve), set_variance(planned, curve, settings))


def read(evidence: Evidence, curve: RepCurve = HANDBOOK) -> Reading:
    """What the evidence reads. DomainError for a load not above 0 or n outside 1 to 15."""
    if isinstance(evidence, VelocityMaximum):
        return Reading(log(positive("maximum in kg", evidence.kg)), lean(FEWEST, curve))
    load_kg = positive("load in kg", evidence.load_kg)
    n = FEWEST if isinstance(evidence, TestedMax) else evidence.reps + evidence.rir
    return Reading(log(load_kg) - log_share(n, curve), lean(n, curve))
