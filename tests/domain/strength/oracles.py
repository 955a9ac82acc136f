"""The tracker's model written down again, without the tracker: one dense Gaussian, and statsmodels.

A history is a list of sessions; a session is (days, sets); a set is (y, lean, variance).
"""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from statsmodels.tsa.statespace.kalman_smoother import KalmanSmoother

from undercroft.domain.strength import StrengthSettings

Array = NDArray[np.float64]
Session = tuple[float, Sequence[tuple[float, float, float]]]


def dense_posterior(
    level: tuple[float, float],
    sessions: Sequence[Session],
    settings: StrengthSettings,
) -> tuple[Array, Array]:
    """Mean and covariance of (levels, forms, tilt) given everything, by least squares.

    `level` is mean and variance of the level on day 0. Prior knowledge, steps of the level and
    sets are all rows of one system of equations; nothing is recursive.
    """
    count = len(sessions)
    rows: list[Array] = []
    right: list[float] = []
    weights: list[float] = []

    def row(entries: dict[int, float], value: float, variance: float) -> None:
        one = np.zeros(2 * count + 1)
        for place, factor in entries.items():
            one[place] = factor
        rows.append(one)
        right.append(value)
        weights.append(1 / variance)

    row({2 * count: 1.0}, 0.0, settings.tilt_sd**2)
    before = 0.0
    for index, (days, sets) in enumerate(sessions):
        weeks = (days - before) / 7
        drift = settings.drift * min(weeks, settings.trained_gap_weeks)
        grown = settings.growth_sd**2 * weeks
        if index:
            row({index: 1.0, index - 1: -1.0}, drift, grown)
        else:
            row({0: 1.0}, level[0] + drift, level[1] + grown)
        row({count + index: 1.0}, 0.0, settings.form_sd**2)
        for y, leaning, variance in sets:
            row({index: 1.0, count + index: 1.0, 2 * count: leaning}, y, variance)
        before = days
    design, weight = np.array(rows), np.array(weights)
    covariance = np.linalg.inv(design.T @ (weight[:, None] * design))
    return covariance @ design.T @ (weight * np.array(right)), covariance


def statsmodels_run(
    mean: Array, covariance: Array, sessions: Sequence[Session], settings: StrengthSettings
) -> tuple[Array, Array, Array]:
    """Filtered states, filtered covariances and smoothed states after every set (rows)."""
    flat = [(index, one) for index, (_, sets) in enumerate(sessions) for one in sets]
    model = KalmanSmoother(k_endog=1, k_states=3, k_posdef=3, nobs=len(flat))
    model.bind(np.array([[one[0] for _, one in flat]]))
    model["selection"] = np.eye(3)
    model["design"] = np.array([[[1.0, 1.0, one[1]]] for _, one in flat]).transpose(1, 2, 0)
    model["obs_cov"] = np.array([[[one[2] for _, one in flat]]])
    moves = [_move(sessions, this[0], after[0], settings) for this, after in pairwise(flat)]
    moves.append((np.eye(3), np.zeros(3), np.zeros((3, 3))))
    model["transition"] = np.stack([move[0] for move in moves], axis=2)
    model["state_intercept"] = np.stack([move[1] for move in moves], axis=1)
    model["state_cov"] = np.stack([move[2] for move in moves], axis=2)
    model.initialize_known(mean, covariance)
    found = model.smooth()
    filtered = np.moveaxis(found.filtered_state_cov, 2, 0)
    return found.filtered_state.T, filtered, found.smoothed_state.T


def _move(
    sessions: Sequence[Session], this: int, after: int, settings: StrengthSettings
) -> tuple[Array, Array, Array]:
    if this == after:
        return np.eye(3), np.zeros(3), np.zeros((3, 3))
    weeks = (sessions[after][0] - sessions[this][0]) / 7
    drift = settings.drift * min(weeks, settings.trained_gap_weeks)
    noise = np.diag([settings.growth_sd**2 * weeks, settings.form_sd**2, 0.0])
    return np.diag([1.0, 0.0, 1.0]), np.array([drift, 0.0, 0.0]), noise
