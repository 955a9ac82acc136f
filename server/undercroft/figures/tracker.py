"""The tracker with form, tilt and drift taken out: a filter of the level alone.

The references are in plain units (level 135, observations of 140 and so on); the tracker works in
logarithms, so a hundredth of each value is taken as a logarithm.
"""

from dataclasses import replace
from functools import partial
from math import exp

from undercroft.domain.strength import DEFAULT, StrengthSettings, TestedMax, TrackerState
from undercroft.domain.strength.evidence import Weight
from undercroft.domain.strength.tracker import advance, gain_and_doubt, take, unpack
from undercroft.figures.row import Mark, Row

SUBJECT = "tracker"
PER_UNIT = 100.0
SEEN = (140.0, 142.5, 137.5, 145.0, 143.0, 146.0, 144.0)
LEVELS = (139.0, 140.5978, 139.57, 141.0417, 141.5063, 142.4817, 142.7922)
BOTH = "statsmodels local level and filterpy"


def _level_only(growth_sd: float, test_sd: float) -> StrengthSettings:
    """Settings in plain units, a week from one test to the next."""
    return replace(
        DEFAULT,
        growth_sd=growth_sd / PER_UNIT,
        test_sd=test_sd / PER_UNIT,
        form_sd=0.0,
        tilt_sd=0.0,
        drift=0.0,
    )


def _known(level: float, variance: float) -> TrackerState:
    row = (variance / PER_UNIT**2, 0.0, 0.0)
    none = (0.0, 0.0, 0.0)
    return TrackerState((level / PER_UNIT, 0.0, 0.0), (row, none, none), 0.0, "test")


def _filtered(count: int) -> TrackerState:
    """After so many observations: prior 135 with variance 100, growth 1 a step, error 25."""
    settings = _level_only(1.0, 5.0)
    state = _known(135.0, 100.0)
    for week, value in enumerate(SEEN[:count]):
        state = advance(state, 7.0 * week, settings)
        state = take(state, TestedMax(exp(value / PER_UNIT)), settings).state
    return state


def _level(count: int) -> float:
    return PER_UNIT * _filtered(count).level


def _variance(state: TrackerState) -> float:
    return float(unpack(state)[1][0, 0]) * PER_UNIT**2


def _steady(place: int) -> float:
    """Variance before, gain or variance after, once they no longer change."""
    settings = _level_only(1.0, 5.0)
    state, gain = _known(0.0, 100.0), 0.0
    before = state
    for week in range(1, 200):
        before = advance(state, 7.0 * week, settings)
        gain = float(gain_and_doubt(unpack(before)[1], Weight(0.0, settings.test_sd**2))[0][0])
        state = take(before, TestedMax(1.0), settings).state
    return (_variance(before), gain, _variance(state))[place]


def _fused() -> TrackerState:
    """140 with a deviation of 2.9 and 147 with one of 8.6."""
    return take(_known(140.0, 2.9**2), TestedMax(exp(1.47)), _level_only(0.0, 8.6)).state


ROWS = (
    *(
        Row(SUBJECT, f"level after {count} of 7", "prior 135 ± 10, growth 1, error 25", expected,
            partial(_level, count), 0.0005, BOTH, Mark.DERIVED)
        for count, expected in enumerate(LEVELS, start=1)
    ),
    Row(SUBJECT, "its variance after 7", "prior 135 ± 10, growth 1, error 25", 5.1123,
        lambda: _variance(_filtered(7)), 0.0005, BOTH, Mark.DERIVED),
    *(
        Row(SUBJECT, f"steady state, {word}", "growth 1, error 25", expected,
            partial(_steady, place), 0.0005, "the filter's own equation", Mark.DERIVED)
        for place, word, expected in (
            (0, "variance before", 5.5249), (1, "gain", 0.1810), (2, "variance after", 4.5249),
        )
    ),
    Row(SUBJECT, "140 ± 2.9 and 147 ± 8.6 together", "by precision", 140.715,
        lambda: PER_UNIT * _fused().level, 0.001, "inverse variances", Mark.DERIVED),
    Row(SUBJECT, "deviation of the two together", "by precision", 2.748,
        lambda: _variance(_fused()) ** 0.5, 0.001, "inverse variances", Mark.DERIVED),
)  # fmt: skip
