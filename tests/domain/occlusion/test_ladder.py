"""First exposures, and the way back after time away. Figures: our own choice, see the ladder."""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion import (
    FULL_DOSE,
    Work,
    WorkSet,
    next_exposure,
    rung,
    rung_in_words,
    session_issues,
)
from undercroft.domain.occlusion.ladder import ladder_issues
from undercroft.domain.program.methods import Limb, Restriction

DAY = date(2026, 3, 2)


def work(*reps: int | None, to_failure=False, **more) -> Work:
    sets = tuple(WorkSet(one, to_failure or one is None) for one in reps)
    return Work(Limb.THIGH, Restriction.WRAP, sets, 30, 30, **({"tightness": 5} | more))


def days(*offsets: int) -> list[date]:
    return [DAY + timedelta(days=one) for one in offsets]


@pytest.mark.parametrize(
    ("exposure", "exercises", "reps", "percent", "tightness", "failure", "gap_h"),
    [
        (1, 1, (15, 15), 20, 5, False, 72),
        (2, 1, (20, 15, 15), 20, 6, False, 72),
        (3, 2, (30, 15, 15), 30, 6, False, 48),
        (4, 2, (30, 15, 15), 30, 6, False, 48),
        (5, 2, (30, 15, 15, 15), 40, 7, True, 48),
        (50, 2, (30, 15, 15, 15), 40, 7, True, 48),
    ],
)
def test_the_rungs(exposure, exercises, reps, percent, tightness, failure, gap_h):
    one = rung(exposure)
    assert (one.exercises, one.reps, one.load_percent) == (exercises, reps, percent)
    assert (one.most_tightness, one.to_failure, one.gap_h) == (tightness, failure, gap_h)


def test_there_is_no_exposure_before_the_first():
    with pytest.raises(DomainError, match="exposure"):
        rung(0)


def test_a_first_session_to_failure_on_two_exercises_is_refused_and_the_first_rung_offered():
    """Clark & Manini 2017, Sieljacks et al. 2016 (seen): how muscles were broken down."""
    first = (work(None, None, None, None, load_percent=30, both_at_once=True), 1)
    found = [issue for _, issue in session_issues([first, first])]
    stops = {issue.key for issue in found if issue.severity.value == "stop"}
    assert stops >= {
        "exposure-exercises", "exposure-dose", "exposure-failure", "exposure-load",
        "exposure-limbs",
    }  # fmt: skip
    offered = next(issue.right for issue in found if issue.key == "exposure-dose")
    assert offered == rung_in_words(1)
    assert "one exercise, 15-15, at most 20 % of the maximum" in offered


@pytest.mark.parametrize(
    ("exposure", "planned", "keys"),
    [
        (1, work(15, 15, load_percent=20), []),
        (1, work(16, 15, load_percent=20), ["exposure-dose"]),
        (1, work(15, 15, 1, load_percent=20), ["exposure-dose"]),
        (1, work(15, 15, load_percent=21), ["exposure-load"]),
        (1, work(15, 15, both_at_once=True), ["exposure-limbs"]),
        (2, work(20, 15, 15, both_at_once=True), []),
        (3, work(30, 15, 15, load_percent=30), []),
        (4, work(30, 15, 15, 15), ["exposure-dose"]),
        (5, work(30, 15, 15, 15, load_percent=40), []),
        (5, work(None, None, None, None, load_percent=30), []),
    ],
)
def test_the_dose_of_an_exposure(exposure, planned, keys):
    assert [issue.key for issue in ladder_issues(planned, exposure)] == keys


def test_first_exposures_end_four_repetitions_short_of_failure():
    near = Work(Limb.THIGH, Restriction.WRAP, (WorkSet(15, rir=3),), load_percent=20)
    far = Work(Limb.THIGH, Restriction.WRAP, (WorkSet(15, rir=4),), load_percent=20)
    assert [issue.key for issue in ladder_issues(near, 1)] == ["exposure-failure"]
    assert not list(ladder_issues(far, 1))


def test_arms_that_are_new_to_it_hold_the_whole_session_back():
    planned = work(15, 15, load_percent=20)
    issues = session_issues([(planned, 5), (planned, 1)])
    found = [issue.key for place, issue in issues if place is None]
    assert found == ["exposure-exercises"]


@pytest.mark.parametrize(
    ("done", "on", "exposure"),
    [
        ([], 0, 1),
        ([0], 3, 2),
        ([0, 3], 6, 3),
        ([0, 3, 6, 8], 10, 5),
        ([0, 3, 6, 8, 10, 12, 14], 16, 5),
        ([0, 3, 6, 8, 10], 30, 5),  # 20 days away
        ([0, 3, 6, 8, 10], 31, 3),  # 21 days away: two steps back
        ([0, 3, 6, 8, 10], 52, 1),  # 42 days away: two more
        ([0, 3], 24, 1),
        ([0, 3, 6, 8, 10, 31], 33, 4),
        ([0, 0, 0], 3, 2),
        ([0, 5], 3, 2),  # what lies after that day does not count
    ],
)
def test_exposures_are_counted_and_time_away_goes_back(done, on, exposure):
    assert next_exposure(days(*done), *days(on)) == exposure


def test_an_illness_goes_two_steps_back_once():
    done = days(0, 3, 6, 8, 10)
    assert next_exposure(done, *days(14), ill=days(12)) == 3
    assert next_exposure([*done, *days(14)], *days(16), ill=days(12)) == 4


@pytest.mark.parametrize(("ill", "exposure"), [(9, 4), (10, 3), (13, 3), (14, 5)])
def test_an_illness_counts_from_an_exposure_to_the_eve_of_the_next(ill, exposure):
    assert next_exposure(days(0, 3, 6, 8, 10), *days(14), ill=days(ill)) == exposure


@settings(deadline=None)
@given(st.sets(st.integers(0, 200), max_size=30), st.integers(0, 200))
def test_time_away_never_makes_the_next_exposure_greater(offsets, on):
    done = days(*offsets)
    now, later = (next_exposure(done, *days(day)) for day in (on, on + 60))
    assert 1 <= now <= FULL_DOSE
    if max(offsets, default=0) < on:
        assert later <= now
