"""The smoothed line for plots: each session's state seen with all that came after it.

A Rauch-Tung-Striebel pass over sessions. Within a session nothing moves but knowledge, so its sets
share one smoothed state; between sessions form is drawn anew and carries nothing back.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from undercroft.domain.strength.evidence import Evidence
from undercroft.domain.strength.reserve import HANDBOOK, RepCurve
from undercroft.domain.strength.settings import DEFAULT, StrengthSettings
from undercroft.domain.strength.tracker import (
    LEVEL,
    TILT,
    TrackerState,
    Vector,
    advance,
    pack,
    take_session,
    unpack,
)

_LASTING = [LEVEL, TILT]

SINGULAR = 1e-12
"""Share of the product of variances under which a determinant is taken for nothing: derived from
the sixteen digits of a float."""


@dataclass(frozen=True, slots=True)
class TrackedSession:
    """One session as filtered: the state before its first evidence and after its last."""

    before: TrackerState
    after: TrackerState


def track(
    start: TrackerState | None,
    sessions: Iterable[tuple[float, Sequence[Evidence]]],
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
) -> tuple[TrackedSession, ...]:
    """Filter sessions, each (at_days, evidence in plan order), in the order of their start.

    Sessions without evidence are left out.
    """
    tracked: list[TrackedSession] = []
    now = start
    for at_days, evidence in sessions:
        if steps := take_session(now, at_days, evidence, settings, curve):
            before = steps[0].state if now is None else advance(now, at_days, settings)
            now = steps[-1].state
            tracked.append(TrackedSession(before, now))
    return tuple(tracked)


def smooth(tracked: Sequence[TrackedSession]) -> tuple[TrackerState, ...]:
    """The smoothed state of each session; the last equals the filter's own."""
    if not tracked:
        return ()
    states = [tracked[-1].after]
    for this, following in zip(tracked[-2::-1], tracked[:0:-1], strict=True):
        states.append(_back(this.after, following.before, states[-1]))
    return tuple(reversed(states))


def _back(after: TrackerState, predicted: TrackerState, later: TrackerState) -> TrackerState:
    mean, covariance = unpack(after)
    mean_ahead, covariance_ahead = (part[_LASTING] for part in unpack(predicted))
    mean_later, covariance_later = (part[_LASTING] for part in unpack(later))
    ahead, behind = covariance_ahead[:, _LASTING], covariance_later[:, _LASTING]
    back = covariance[:, _LASTING] @ _inverse(ahead)
    return pack(
        mean + back @ (mean_later - mean_ahead),
        covariance + back @ (behind - ahead) @ back.T,
        after,
    )


def _inverse(ahead: Vector) -> Vector:
    """Of a symmetric 2 x 2 matrix; the pseudo-inverse where one of the two is known for certain.

    Written out, because the general one takes a quarter of the time of a whole trend.
    """
    (a, b), (_, d) = ahead.tolist()
    determinant = a * d - b * b
    if determinant <= SINGULAR * a * d:
        return np.asarray(np.linalg.pinv(ahead, hermitian=True), dtype=np.float64)
    return np.array(((d / determinant, -b / determinant), (-b / determinant, a / determinant)))
