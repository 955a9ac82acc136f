"""Tightness of a wrap: limits by limb and exposure, and what numbness means."""

import pytest

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion import WrapAdvice, after_numbness, most_tightness
from undercroft.domain.occlusion.tightness import BELL_2018, tightness_issues
from undercroft.domain.program.methods import Limb


@pytest.mark.parametrize(
    ("limb", "limits"),
    [(Limb.THIGH, [5, 6, 6, 6, 7, 7]), (Limb.UPPER_ARM, [5, 6, 6, 6, 6, 6])],
)
def test_the_tightest_by_exposure(limb, limits):
    """Leg 7, arm 6, first exposures 5 and then 6: our own choice below Bell et al. 2020."""
    assert [most_tightness(limb, exposure) for exposure in range(1, 7)] == limits


@pytest.mark.parametrize(("limb", "seven", "ten"), [("arm", 81.5, 124.7), ("leg", 70.2, 104.1)])
def test_why_ten_is_never_allowed(limb, seven, ten):
    """Bell et al. 2018 (seen), shares derived: what people call 10 shuts the artery."""
    rated = BELL_2018[limb]
    assert 100 * rated.seven / rated.occlusion == pytest.approx(seven, abs=0.1)
    assert 100 * rated.ten / rated.occlusion == pytest.approx(ten, abs=0.1)
    assert all(most_tightness(one, 9) < 10 for one in Limb)


@pytest.mark.parametrize(
    ("value", "limb", "exposure", "stops"),
    [
        (7, Limb.THIGH, 5, 0),
        (7.5, Limb.THIGH, 5, 1),
        (7, Limb.UPPER_ARM, 5, 1),
        (6, Limb.THIGH, 1, 1),
        (5, Limb.THIGH, 1, 0),
        (10, Limb.THIGH, 9, 1),
        (None, Limb.THIGH, 5, 1),
    ],
)
def test_a_tightness_over_its_limit_stops(value, limb, exposure, stops):
    found = list(tightness_issues(value, limb, exposure))
    assert [issue.severity.value for issue in found] == ["stop"] * stops


def test_a_clinicians_tightness_counts_where_it_is_lower():
    (found,) = tightness_issues(6, Limb.THIGH, 5, clinician=5)
    assert found.right == "at most 5 of 10 here"


@pytest.mark.parametrize("value", [-1, 11, float("nan")])
def test_a_tightness_is_0_to_10(value):
    with pytest.raises(DomainError, match="tightness"):
        list(tightness_issues(value, Limb.THIGH, 5))


@pytest.mark.parametrize(
    ("numb", "seconds", "again", "advice"),
    [
        (False, 20, False, WrapAdvice.GO_ON),
        (True, 20, False, WrapAdvice.OFF_THEN_LOOSER),  # about 20 s: common practice
        (True, 30, False, WrapAdvice.OFF_THEN_LOOSER),
        (True, 31, False, WrapAdvice.OFF_FOR_TODAY),
        (True, 150, False, WrapAdvice.OFF_FOR_TODAY),  # in a set: "my hand is numb"
        (True, 15, True, WrapAdvice.OFF_FOR_TODAY),
    ],
)
def test_numb_means_off(numb, seconds, again, advice):
    assert after_numbness(numb, seconds, again) is advice
