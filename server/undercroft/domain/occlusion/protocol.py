"""The protocols, the repetitions to be expected of them, and the time that they take."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from undercroft.domain.occlusion.basis import Basis, Mark
from undercroft.domain.occlusion.issue import Issue, note, stop, warn
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.work import HAIR, Work, WorkSet


@dataclass(frozen=True, slots=True)
class Protocol:
    """`sets` with their aims; rests in seconds with the wraps on; loads in % of the maximum."""

    key: str
    name: str
    sets: tuple[WorkSet, ...]
    rest_s: tuple[int, int]
    load_percent: tuple[float, float]
    basis: Basis


FIXED_SEVENTY_FIVE = Protocol(
    "fixed-seventy-five",
    "fixed seventy-five",
    (WorkSet(30), WorkSet(15), WorkSet(15), WorkSet(15)),
    (30, 60),
    (20.0, 40.0),
    Basis(Mark.P_FROM_MEMORY, "30-15-15-15; the scheme also seen in Hughes 2018"),
)
TO_FAILURE = Protocol(
    "to-failure",
    "to failure",
    (WorkSet(None, True),) * 4,
    (30, 60),
    (20.0, 40.0),
    Basis(Mark.P_FROM_MEMORY, "2-4 sets to failure"),
)
THIRTY_THEN_FAILURE = Protocol(
    "thirty-then-failure",
    "thirty, then failure",
    (WorkSet(30), WorkSet(20, True), WorkSet(20, True)),
    (30, 45),
    (25.0, 35.0),
    Basis(
        Mark.COMMON_PRACTICE,
        "about 30 %; three sets do, the second ends at 12-13 of the 20 aimed at",
    ),
)
PROTOCOLS = (FIXED_SEVENTY_FIVE, TO_FAILURE, THIRTY_THEN_FAILURE)


@dataclass(frozen=True, slots=True)
class Expected:
    """Mean repetitions to failure in a set, with the 95 % interval of the studies' means."""

    mean: float
    low: float
    high: float


EXPECTED = (
    Expected(36.0, 30.5, 41.4),
    Expected(14.7, 12.2, 17.1),
    Expected(11.5, 9.2, 13.8),
    Expected(10.4, 8.1, 12.7),
)
"""Rolnick et al. 2025, Sports Med Open 11:84, 25 studies, loads up to 50 % (seen)."""

EXPECTED_TOTAL = Expected(73.1, 61.1, 85.2)
"""Pooled by itself there, so that the sets' means add to 72.6 and not to this (seen)."""


def expected_in(place: int) -> Expected:
    """What a set to failure brings, by its place from 0 on; past the fourth as in the fourth."""
    return EXPECTED[min(place, len(EXPECTED) - 1)]


def planned_reps(sets: Sequence[WorkSet]) -> tuple[int, ...]:
    """Repetitions to reckon with: the aim, or for a set to failure a good athlete's if more."""
    return tuple(
        max(one.reps or 0, ceil(expected_in(place).high)) if one.to_failure else one.reps or 0
        for place, one in enumerate(sets)
    )


def predicted_wear_s(work: Work, handling_s: float = LIMITS.handling_s) -> float:
    """Time in seconds that a wrap stays on: repetitions, rests between sets, on and off."""
    reps = sum(planned_reps(work.sets))
    rests = max(len(work.sets) - 1, 0) * work.rest_to_s
    return reps * work.rep_s + rests + handling_s


def wear_issues(wear_s: float, most_minutes: float | None = None) -> Iterator[Issue]:
    """Time on one limb, planned or done; `most_minutes` is a clinician's limit."""
    most_s: float = LIMITS.wear_stop_s
    if most_minutes is not None:
        most_s = min(most_s, most_minutes * 60)
    what = f"{_clock(wear_s)} min with the wrap on"
    if wear_s > most_s:
        right = f"off after {_clock(most_s)} min at the very most"
        yield stop("wear", what, right)
    elif wear_s > LIMITS.wear_warn_s:
        yield warn("wear", what, "5-10 min for an exercise: fewer sets, or shorter rests")


def break_issues(break_s: float | None) -> Iterator[Issue]:
    """Time off between two exercises of a limb; None: the wraps stay on across them."""
    right = f"wraps off for at least {LIMITS.break_s // 60} min between exercises"
    if break_s is None:
        yield stop("break", "wraps kept on across exercises", right)
    elif break_s < LIMITS.break_s:
        yield stop("break", f"wraps off for {_clock(break_s)} min between exercises", right)


def load_issues(percent: float | None, most: float = LIMITS.most_load_percent) -> Iterator[Issue]:
    """The load as a share of the one-repetition maximum; `most` is a clinician's, if tighter."""
    most = min(most, LIMITS.most_load_percent)
    if percent is None:
        right = "a maximum, tested or guessed; until then a load that goes 30 times with ease"
        yield warn("load", "nobody knows which share of the maximum this load is", right)
    elif percent > most + HAIR:
        yield stop("load", f"{percent:g} % of the maximum", f"at most {most:g} %")
    elif percent < LIMITS.least_load_percent - HAIR:
        right = f"{LIMITS.least_load_percent:g}-{most:g} % once the first exposures are over"
        yield note("load", f"{percent:g} % of the maximum", right)


def shape_issues(work: Work) -> Iterator[Issue]:
    """Number of sets and rests beyond those of the protocols."""
    if not 1 <= len(work.sets) <= LIMITS.most_sets:
        what = f"{len(work.sets)} sets with the wrap on"
        yield stop("sets", what, f"2 to {LIMITS.most_sets} sets")
    if work.rest_from_s < LIMITS.rest_least_s or work.rest_to_s > LIMITS.rest_most_s:
        what = f"rests of {work.rest_from_s}-{work.rest_to_s} s with the wrap on"
        yield warn("rest", what, f"{LIMITS.rest_least_s}-{LIMITS.rest_most_s} s")
    total = sum(one.reps or 0 for one in work.sets)
    most = LIMITS.first_set_most
    if total > most:
        yield warn("reps", f"{total} repetitions with the wrap on", f"at most {most}")


def load_range_kg(maximum_kg: float) -> tuple[float, float]:
    """The lightest and the heaviest load for a one-repetition maximum in kg."""
    return (
        maximum_kg * LIMITS.least_load_percent / 100,
        maximum_kg * LIMITS.most_load_percent / 100,
    )


def _clock(seconds: float) -> str:
    return f"{int(seconds) // 60}:{int(seconds) % 60:02}"
