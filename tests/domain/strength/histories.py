"""Histories and starting states for the tests of the tracker and its smoothed line."""

from dataclasses import replace
from math import exp, log
from random import Random

from undercroft.domain.strength import (
    DEFAULT,
    PlannedSet,
    SetDone,
    TestedMax,
    TrackerState,
    take_session,
)
from undercroft.domain.strength.evidence import read, weigh

OPEN = replace(DEFAULT, gate=1e9)
"""Default settings without the gate, which is not linear."""

LEVEL_ALONE = replace(OPEN, form_sd=0.0, tilt_sd=0.0, growth_sd=1.0, drift=0.0, test_sd=5.0)
"""A local level with Q = 1 a week and R = 25, in which ln(load) plays the part of y."""

SETS = [PlannedSet(3, 1), PlannedSet(5, 2), PlannedSet(8, 1), PlannedSet(10, 3), PlannedSet(12, 0)]


def level_state(level: float, variance: float) -> TrackerState:
    nought = (0.0, 0.0, 0.0)
    return TrackerState((level, 0.0, 0.0), ((variance, 0.0, 0.0), nought, nought), 0.0, "guess")


def levels(values: list[float]) -> list[TrackerState]:
    """Weekly tests that read these values, from N(135, 100) before the first."""
    state, found = level_state(135, 100), []
    for week, y in enumerate(values):
        (step,) = take_session(state, 7 * week, [TestedMax(exp(y))], LEVEL_ALONE)
        state = step.state
        found.append(state)
    return found


def history(seed: int, count: int = 9) -> list[tuple[float, list[SetDone]]]:
    """Sessions 2 to 20 days apart, each with one to five sets."""
    rng, days, sessions = Random(seed), 0.0, []
    for _ in range(count):
        days += rng.randint(2, 20)
        sets = [
            SetDone(
                100 * exp(rng.gauss(-0.2, 0.05)), rng.randint(1, 10), rng.choice((0, 1, 2.5)), one
            )
            for one in rng.choices(SETS, k=rng.randint(1, 5))
        ]
        sessions.append(
            (days, [replace(one, reps=one.planned.reps, rir=one.planned.rir) for one in sets])
        )
    return sessions


def as_rows(sessions):
    """The same history as (days, [(y, lean, variance)]) for the oracles."""
    return [
        (days, [(read(one).y, read(one).lean, weigh(one, settings=OPEN).variance) for one in sets])
        for days, sets in sessions
    ]


def plain_start() -> TrackerState:
    """Level ln 100 with 8 %, form and tilt not yet known, none tied to another."""
    covariance = ((0.08**2, 0.0, 0.0), (0.0, OPEN.form_sd**2, 0.0), (0.0, 0.0, OPEN.tilt_sd**2))
    return TrackerState((log(100), 0.0, 0.0), covariance, 0.0, "guess")
