"""The tracker against statsmodels, one dense least-squares system, and reference figures."""

from dataclasses import replace
from math import exp, log, sqrt

import numpy as np
import pytest
from statsmodels.tsa.statespace.structural import UnobservedComponents
from tests.domain.strength.histories import (
    LEVEL_ALONE,
    OPEN,
    as_rows,
    history,
    level_state,
    levels,
    plain_start,
)
from tests.domain.strength.oracles import dense_posterior, statsmodels_run

from undercroft.domain.strength import TestedMax, advance, take, take_session
from undercroft.domain.strength.tracker import unpack


def test_local_level_gives_the_reference_series():
    # Derived with statsmodels and filterpy, which agree: N(135, 100), Q = 1, R = 25.
    found = levels([140, 142.5, 137.5, 145, 143, 146, 144])
    expected = [139.0, 140.5978, 139.57, 141.0417, 141.5063, 142.4817, 142.7922]
    assert [state.level for state in found] == pytest.approx(expected, abs=5e-4)
    assert found[-1].covariance[0][0] == pytest.approx(5.1123, abs=5e-4)


def test_local_level_equals_statsmodels_within_1e_9():
    values = [float(y) for y in np.random.default_rng(3).normal(140, 4, 40)]
    model = UnobservedComponents(values, "llevel")
    model.ssm.initialize_known(np.array([135.0]), np.array([[100.0]]))
    model.update(np.array([25.0, 1.0]))
    expected = model.ssm.filter()
    found = levels(values)
    assert [s.level for s in found] == pytest.approx(expected.filtered_state[0], abs=1e-9)
    variances = [s.covariance[0][0] for s in found]
    assert variances == pytest.approx(expected.filtered_state_cov[0, 0], abs=1e-9)


def test_local_level_settles_at_its_steady_state():
    # Derived: P = (Q + sqrt(Q^2 + 4QR))/2 = 5.5249, gain 0.1810, filtered 4.5249.
    state = levels([140.0] * 60)[-1]
    ahead = advance(state, 7 * 60, LEVEL_ALONE)
    step = take(ahead, TestedMax(exp(140)), LEVEL_ALONE)
    assert ahead.covariance[0][0] == pytest.approx(5.5249, abs=5e-4)
    assert step.gain[0] == pytest.approx(0.1810, abs=5e-4)
    assert step.state.covariance[0][0] == pytest.approx(4.5249, abs=5e-4)


def test_two_readings_fuse_by_their_precision():
    # Derived: 140 (SD 2.9) and 147 (SD 8.6) give 140.715, SD 2.748.
    settings = replace(LEVEL_ALONE, test_sd=8.6)
    step = take(level_state(140, 2.9**2), TestedMax(exp(147)), settings)
    assert step.state.level == pytest.approx(140.715, abs=1e-3)
    assert sqrt(step.state.covariance[0][0]) == pytest.approx(2.748, abs=1e-3)


@pytest.mark.parametrize("seed", range(5))
def test_three_states_equal_statsmodels_within_1e_9(seed):
    sessions = history(seed)
    start = advance(plain_start(), sessions[0][0], OPEN)
    mean, covariance = unpack(start)
    expected_mean, expected_covariance, _ = statsmodels_run(
        mean, covariance, as_rows(sessions), OPEN
    )
    state, steps = plain_start(), []
    for days, sets in sessions:
        steps += take_session(state, days, sets, OPEN)
        state = steps[-1].state
    for step, mean, covariance in zip(steps, expected_mean, expected_covariance, strict=True):
        assert step.state.mean == pytest.approx(mean, abs=1e-9)
        assert np.array(step.state.covariance) == pytest.approx(covariance, abs=1e-9)


@pytest.mark.parametrize("seed", range(5))
def test_three_states_equal_one_dense_system_within_1e_9(seed):
    sessions = history(seed)
    state = plain_start()
    for days, sets in sessions:
        state = take_session(state, days, sets, OPEN)[-1].state
    mean, covariance = dense_posterior((log(100), 0.08**2), as_rows(sessions), OPEN)
    last = [len(sessions) - 1, 2 * len(sessions) - 1, 2 * len(sessions)]
    assert state.mean == pytest.approx(mean[last], abs=1e-9)
    assert np.array(state.covariance) == pytest.approx(covariance[np.ix_(last, last)], abs=1e-9)
