"""The running estimate of a maximum: a Kalman filter over one athlete and one lift.

In the logarithm of the maximum there are three states. Level is real strength, slow, as seen at
five repetitions. Form is today's deviation, shared by all sets of a session and drawn anew in each.
Tilt is the athlete's own repetition curve on this lift: trained squatters do from 6 to 26
repetitions at 70 % (Zourdos et al. 2021, seen), and the same person does so again and again, so it
must not be treated as noise. Time runs in days from any fixed day.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import exp, log, sqrt

import numpy as np
from numpy.typing import NDArray

from undercroft.domain.errors import positive
from undercroft.domain.strength.evidence import Evidence, SetDone, TestedMax, Weight, read, weigh
from undercroft.domain.strength.reserve import FEWEST, HANDBOOK, RepCurve, lean
from undercroft.domain.strength.settings import DEFAULT, StrengthSettings
from undercroft.domain.strength.velocity import VelocityMaximum

LEVEL, FORM, TILT = 0, 1, 2
Vector = NDArray[np.float64]
Row = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class TrackerState:
    """Mean and covariance of (level, form, tilt), in natural logarithms of kilograms.

    `basis` says where the estimate began: "test", "guess", "set" or "other lift".
    """

    mean: Row
    covariance: tuple[Row, Row, Row]
    at_days: float
    basis: str

    @property
    def level(self) -> float:
        return self.mean[LEVEL]

    @property
    def form(self) -> float:
        return self.mean[FORM]

    @property
    def tilt(self) -> float:
        return self.mean[TILT]


@dataclass(frozen=True, slots=True)
class Step:
    """What one piece of evidence did. `wild`: beyond the gate, taken as if at the gate."""

    difference: float
    wild: bool
    gain: Row
    state: TrackerState


@dataclass(frozen=True, slots=True)
class EstimatedMax:
    """The maximum in kilograms with its 90 % band, and its relative standard deviation."""

    kg: float
    low_kg: float
    high_kg: float
    sd: float


def pack(mean: Vector, covariance: Vector, like: TrackerState) -> TrackerState:
    """The state with a new mean (3) and covariance (3 x 3, made symmetric)."""
    a, b, c = ((x, y, z) for x, y, z in ((covariance + covariance.T) / 2).tolist())
    level, form, tilt = mean.tolist()
    return TrackerState((level, form, tilt), (a, b, c), like.at_days, like.basis)


def unpack(state: TrackerState) -> tuple[Vector, Vector]:
    """Mean (3) and covariance (3 x 3) as arrays."""
    return np.array(state.mean), np.array(state.covariance)


def _start(
    level: float, variance: float, off: Row, settings: StrengthSettings, days: float, basis: str
) -> TrackerState:
    """A state known only through level + off . (form, tilt) = reading, with that variance."""
    form, tilt = settings.form_sd**2, settings.tilt_sd**2
    total = variance + off[FORM] ** 2 * form + off[TILT] ** 2 * tilt
    to_form, to_tilt = -off[FORM] * form, -off[TILT] * tilt
    return TrackerState(
        (level, 0.0, 0.0),
        ((total, to_form, to_tilt), (to_form, form, 0.0), (to_tilt, 0.0, tilt)),
        days,
        basis,
    )


_BASES = {TestedMax: "test", SetDone: "set", VelocityMaximum: "velocity"}


def start_from(
    evidence: Evidence,
    at_days: float,
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
) -> TrackerState:
    """The state after a first test or set, with nothing known before."""
    reading, weight = read(evidence, curve), weigh(evidence, curve, settings)
    basis = _BASES[type(evidence)]
    return _start(reading.y, weight.variance, (1, 1, reading.lean), settings, at_days, basis)


def start_from_guess(
    maximum_kg: float,
    doubt: float,
    at_days: float,
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
) -> TrackerState:
    """A coach's guess of the maximum; `doubt` is its relative standard deviation (0.1 is 10 %)."""
    positive("guess of the maximum in kg", maximum_kg)
    positive("doubt of the guess", doubt, "above 0, such as 0.1 for 10 %")
    off = (1.0, 0.0, lean(FEWEST, curve))
    return _start(log(maximum_kg), doubt**2, off, settings, at_days, "guess")


def start_from_other_lift(
    other: TrackerState,
    ratio: float,
    doubt: float,
    at_days: float,
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
) -> TrackerState:
    """Lean on another lift's maximum times a ratio from the coach, with added relative doubt."""
    known = estimate(other, settings, curve)
    both = sqrt(known.sd**2 + doubt**2)
    guess = start_from_guess(known.kg * ratio, both, at_days, settings, curve)
    return replace(guess, basis="other lift")


def advance(
    state: TrackerState, at_days: float, settings: StrengthSettings = DEFAULT
) -> TrackerState:
    """The state at the start of a session: level drifts, its doubt grows, form is drawn anew.

    A gap widens the doubt by its whole length, but drifts no more than a short one.
    """
    weeks = max(0.0, at_days - state.at_days) / 7
    mean, covariance = unpack(state)
    mean[LEVEL] += settings.drift * min(weeks, settings.trained_gap_weeks)
    mean[FORM] = 0.0
    covariance[FORM, :] = covariance[:, FORM] = 0.0
    covariance[FORM, FORM] = settings.form_sd**2
    covariance[LEVEL, LEVEL] += settings.growth_sd**2 * weeks
    return replace(pack(mean, covariance, state), at_days=max(at_days, state.at_days))


def gain_and_doubt(covariance: Vector, weight: Weight) -> tuple[Vector, Vector]:
    """Gain (3) and the covariance after evidence of this weight; no data enter."""
    row = np.array((1.0, 1.0, weight.lean))
    shared = covariance @ row
    gain = shared / (row @ shared + weight.variance)
    return gain, covariance - np.outer(gain, shared)


def take(
    state: TrackerState,
    evidence: Evidence,
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
) -> Step:
    """Take in one piece of evidence within the session that the state was advanced to."""
    mean, covariance = unpack(state)
    reading = read(evidence, curve)
    expected = state.level + state.form + state.tilt * reading.lean
    difference = reading.y - expected
    held = min(max(difference, -settings.gate), settings.gate)
    gain, after = gain_and_doubt(covariance, weigh(evidence, curve, settings))
    a, b, c = (float(x) for x in gain)
    return Step(
        difference,
        abs(difference) > settings.gate,
        (a, b, c),
        pack(mean + gain * held, after, state),
    )


def take_session(
    state: TrackerState | None,
    at_days: float,
    evidence: Iterable[Evidence],
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
) -> tuple[Step, ...]:
    """All evidence of one session, in the order of the plan.

    With nothing known before (`state` None) the first evidence is where the tracker starts.
    """
    steps: list[Step] = []
    now = None if state is None else advance(state, at_days, settings)
    for one in evidence:
        if now is None:
            first = start_from(one, at_days, settings, curve)
            steps.append(Step(0.0, False, (1.0, 0.0, 0.0), first))
        else:
            steps.append(take(now, one, settings, curve))
        now = steps[-1].state
    return tuple(steps)


def estimate(
    state: TrackerState, settings: StrengthSettings = DEFAULT, curve: RepCurve = HANDBOOK
) -> EstimatedMax:
    """The maximum without today's form: exp(level - tilt ln phi(5)), with its 90 % band."""
    mean, covariance = unpack(state)
    row = np.array((1.0, 0.0, lean(FEWEST, curve)))
    middle, sd = float(row @ mean), sqrt(max(0.0, float(row @ covariance @ row)))
    reach = settings.band_z * sd
    return EstimatedMax(exp(middle), exp(middle - reach), exp(middle + reach), sd)
