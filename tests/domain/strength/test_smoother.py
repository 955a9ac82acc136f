"""The smoothed line against statsmodels and one dense least-squares system."""

from math import exp, log

import numpy as np
import pytest
from statsmodels.tsa.statespace.structural import UnobservedComponents
from tests.domain.strength.histories import (
    LEVEL_ALONE,
    OPEN,
    as_rows,
    history,
    level_state,
    plain_start,
)
from tests.domain.strength.oracles import dense_posterior, statsmodels_run

from undercroft.domain.strength import PlannedSet, SetDone, TestedMax, advance, smooth, track
from undercroft.domain.strength.tracker import unpack


def test_smoothed_level_equals_statsmodels_within_1e_9():
    values = [float(y) for y in np.random.default_rng(5).normal(140, 4, 40)]
    model = UnobservedComponents(values, "llevel")
    model.ssm.initialize_known(np.array([135.0]), np.array([[100.0]]))
    model.update(np.array([25.0, 1.0]))
    expected = model.ssm.smooth()
    sessions = [(7 * week, [TestedMax(exp(y))]) for week, y in enumerate(values)]
    found = smooth(track(level_state(135, 100), sessions, LEVEL_ALONE))
    assert [s.level for s in found] == pytest.approx(expected.smoothed_state[0], abs=1e-9)
    variances = [s.covariance[0][0] for s in found]
    assert variances == pytest.approx(expected.smoothed_state_cov[0, 0], abs=1e-9)


@pytest.mark.parametrize("seed", range(3))
def test_smoothed_three_states_equal_statsmodels_within_1e_9(seed):
    sessions = history(seed)
    mean, covariance = unpack(advance(plain_start(), sessions[0][0], OPEN))
    *_, expected = statsmodels_run(mean, covariance, as_rows(sessions), OPEN)
    lasts = np.cumsum([len(sets) for _, sets in sessions]) - 1
    found = smooth(track(plain_start(), sessions, OPEN))
    assert np.array([s.mean for s in found]) == pytest.approx(expected[lasts], abs=1e-9)


def test_smoothed_states_equal_one_dense_system_within_1e_9():
    sessions = history(7)
    mean, covariance = dense_posterior((log(100), 0.08**2), as_rows(sessions), OPEN)
    count = len(sessions)
    for index, state in enumerate(smooth(track(plain_start(), sessions, OPEN))):
        places = [index, count + index, 2 * count]
        assert state.mean == pytest.approx(mean[places], abs=1e-9)
        assert np.array(state.covariance) == pytest.approx(
            covariance[np.ix_(places, places)], abs=1e-9
        )


def test_the_last_smoothed_state_is_the_filters_own():
    tracked = track(plain_start(), history(1), OPEN)
    assert smooth(tracked)[-1] == tracked[-1].after


def test_hindsight_is_never_less_sure():
    tracked = track(plain_start(), history(2), OPEN)
    for then, now in zip(tracked, smooth(tracked), strict=True):
        assert now.covariance[0][0] <= then.after.covariance[0][0] + 1e-12


def test_a_line_may_begin_with_the_first_set_ever_done():
    sets = [SetDone(80, 5, 2, PlannedSet(5, 2))]
    tracked = track(None, [(0, []), (3, sets), (6, sets), (9, sets)])
    assert len(smooth(tracked)) == 3


def test_no_sessions_give_no_line():
    assert smooth(track(plain_start(), [])) == ()
