"""The ramp of warm-up sets to the first work set. Shares and repetitions: common practice."""

from collections.abc import Sequence
from dataclasses import dataclass

from undercroft.domain.errors import LoadError, positive, whole
from undercroft.domain.loads import Fit, LoadTable, nearest

LIGHT_WORK = 0.60
"""Below this share of the maximum a full ramp would be longer than the work."""


@dataclass(frozen=True, slots=True)
class RampStep:
    """So many repetitions at a share of the work load (0.40 for 40 %)."""

    reps: int
    share: float


RAMP = (
    RampStep(8, 0.40),
    RampStep(5, 0.55),
    RampStep(3, 0.70),
    RampStep(2, 0.80),
    RampStep(1, 0.90),
)
SHORT_RAMP = RAMP[:2]


@dataclass(frozen=True, slots=True)
class WarmUpSet:
    """A warm-up set: the step, the load wished for, and the nearest that can be made."""

    step: RampStep
    target_kg: float
    fit: Fit


def warm_up(
    work_kg: float,
    table: LoadTable,
    share_of_maximum: float | None = None,
    ramp: Sequence[RampStep] | None = None,
) -> tuple[WarmUpSet, ...]:
    """Warm-up sets to a first work set of `work_kg`, on the loads of a table.

    Left out: steps lighter than the lightest load (the empty bar), steps that come out at the load
    of an earlier one or not lighter than the work set. Without the coach's own `ramp` it is
    the five default steps, and only the first two where `share_of_maximum` is known and below
    0.60. A coach's own ramp is never shortened. Raises LoadError for steps that cannot be.
    """
    positive("work load in kg", work_kg)
    steps = _default_ramp(share_of_maximum) if ramp is None else _checked(ramp)
    work = nearest(table, work_kg).load.kg
    lightest = table.loads[0].kg
    taken: set[float] = set()
    sets = []
    for step in steps:
        target = work_kg * step.share
        fit = nearest(table, target)
        if lightest <= target and fit.load.kg < work and fit.load.kg not in taken:
            taken.add(fit.load.kg)
            sets.append(WarmUpSet(step, target, fit))
    return tuple(sets)


def _default_ramp(share_of_maximum: float | None) -> Sequence[RampStep]:
    if share_of_maximum is None:
        return RAMP
    return SHORT_RAMP if positive("share of the maximum", share_of_maximum) < LIGHT_WORK else RAMP


def _checked(ramp: Sequence[RampStep]) -> Sequence[RampStep]:
    for number, step in enumerate(ramp, start=1):
        whole(f"warm-up step {number}: repetitions", step.reps, least=1)
        if not 0 < step.share < 1:
            field = f"warm-up step {number}: share of the work load"
            raise LoadError(field, step.share, "above 0 and below 1, such as 0.55")
    return ramp
