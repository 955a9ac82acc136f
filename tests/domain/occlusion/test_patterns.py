"""Patterns of sets to begin with keep to the ladder and to the limits."""

import pytest

from undercroft.domain.occlusion import (
    FULL_DOSE,
    LIMITS,
    PATTERNS,
    Pattern,
    Work,
    WorkSet,
    work_issues,
)
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Limb, Restriction

EXPOSURES = {"first": (1,), "second": (2,), "third": (3, 4)}


def work(pattern: Pattern) -> Work:
    """The pattern with a wrap on one thigh, as tight as it says."""
    return Work(
        limb=Limb.THIGH,
        restriction=Restriction.WRAP,
        sets=tuple(WorkSet(one.reps, one.to_failure, None) for one in pattern.sets),
        rest_from_s=pattern.rest_s[0],
        rest_to_s=pattern.rest_s[1],
        load_percent=pattern.load_percent,
        tightness=pattern.most_tightness or LIMITS.most_tightness_leg,
        both_at_once=pattern.both_at_once,
    )


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda one: one.key)
def test_a_pattern_meets_no_stop_at_the_exposure_that_it_is_for(pattern: Pattern) -> None:
    for exposure in EXPOSURES.get(pattern.key, (FULL_DOSE,)):
        found = list(work_issues(work(pattern), exposure, measured=False))
        assert [one for one in found if one.severity is Severity.STOP] == []


def test_the_first_exposure_is_two_sets_of_fifteen_at_twenty_per_cent_limb_by_limb() -> None:
    first = PATTERNS[0]
    assert [one.reps for one in first.sets] == [15, 15]
    assert (first.load_percent, first.most_tightness, first.both_at_once) == (20.0, 5, False)


def test_sets_to_failure_aim_at_the_means_of_the_studies() -> None:
    """Rolnick et al. 2025: 36.0, 14.7, 11.5, 10.4 (seen)."""
    (failing,) = [one for one in PATTERNS if one.key == "to-failure"]
    assert [one.reps for one in failing.sets] == [36, 15, 12, 10]
    assert all(one.to_failure for one in failing.sets)


def test_the_fixed_protocol_stays_fixed() -> None:
    (fixed,) = [one for one in PATTERNS if one.key == "fixed-seventy-five"]
    assert [one.reps for one in fixed.sets] == [30, 15, 15, 15]
    assert not any(one.to_failure for one in fixed.sets)
