"""A planned exercise against all limits at once, and what may be lifted with wraps on."""

from dataclasses import replace

import pytest

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.occlusion import (
    FULL_DOSE,
    ClinicianLimits,
    Work,
    lifting_issues,
    work_issues,
)
from undercroft.domain.occlusion.protocol import FIXED_SEVENTY_FIVE
from undercroft.domain.program.methods import Limb, Restriction

GOOD = Work(
    Limb.THIGH, Restriction.WRAP, FIXED_SEVENTY_FIVE.sets, 30, 30, load_percent=30, tightness=7
)
CUFF = replace(GOOD, restriction=Restriction.CUFF, tightness=None, pressure_percent=60)


def keys(work: Work, exposure=FULL_DOSE, measured=False, **more) -> list[str]:
    return [issue.key for issue in work_issues(work, exposure, measured, **more)]


def test_a_good_plan_has_nothing_to_say():
    assert keys(GOOD) == []
    assert keys(CUFF, measured=True) == []


@pytest.mark.parametrize(
    ("work", "measured", "exposure", "found"),
    [
        (replace(GOOD, limb=Limb.CALF), False, 5, ["placing"]),
        (replace(GOOD, load_percent=60), False, 5, ["load"]),
        (replace(GOOD, limb=Limb.UPPER_ARM), False, 5, ["tightness"]),
        (replace(GOOD, tightness=None), False, 5, ["tightness"]),
        (replace(GOOD, pressure_percent=60), False, 5, ["wrap-pressure"]),
        (CUFF, False, 5, ["pressure"]),
        (replace(CUFF, pressure_percent=50), False, 5, []),
        (replace(CUFF, pressure_percent=80), True, 5, []),
        (replace(CUFF, pressure_percent=81), True, 5, ["pressure"]),
        (replace(CUFF, pressure_percent=39), True, 5, ["pressure"]),
        (replace(CUFF, pressure_percent=None), True, 5, ["pressure"]),
        (CUFF, True, 2, ["pressure", "exposure-dose", "exposure-load"]),
        (replace(GOOD, rep_s=8), False, 5, ["wear"]),
        (replace(GOOD, rep_s=11), False, 5, ["wear"]),
    ],
)
def test_one_thing_wrong_is_told_as_one(work, measured, exposure, found):
    assert keys(work, exposure, measured) == found


def test_a_clinicians_limits_hold_for_every_figure():
    limits = ClinicianLimits(load_percent=25, wear_minutes=6, tightness=6, pressure_percent=50)
    assert keys(GOOD, limits=limits) == ["tightness", "load", "wear"]
    assert keys(CUFF, measured=True, limits=limits) == ["pressure", "load", "wear"]


def exercise(implement: Implement, needs=(), safeties=False) -> Exercise:
    return Exercise("x", "The lift", implement, ("quads",), (), needs, needs_safeties=safeties)


@pytest.mark.parametrize(
    ("lifted", "severities"),
    [
        (exercise(Implement.STACK), []),
        (exercise(Implement.BAND), []),
        (exercise(Implement.DUMBBELLS, ("bench",)), []),
        (exercise(Implement.BODY), []),
        (exercise(Implement.STRAIGHT_BAR, ("support",), True), ["stop"]),
        (exercise(Implement.OSCILLATING_BAR, ("support", "bench"), True), ["stop"]),
        (exercise(Implement.CURL_BAR, ("bench",)), ["stop"]),  # over the face, lying
        (exercise(Implement.CURL_BAR), ["warn"]),
        (exercise(Implement.LANDMINE, ("landmine",)), ["warn"]),
    ],
)
def test_alone_nothing_that_can_come_down_on_the_lifter(lifted, severities):
    """Lombardi & Troxel (seen): deaths of lone lifters under bars; wraps: our own choice."""
    assert [issue.severity.value for issue in lifting_issues(lifted, alone=True)] == severities
    assert not list(lifting_issues(lifted, alone=False))
