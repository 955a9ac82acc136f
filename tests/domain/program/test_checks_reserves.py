"""A percentage and a reserve that contradict each other: each side of the threshold.

Values from the load chart of the NSCA's Essentials (seen): 80 % are 8 repetitions, 85 % are 6,
75 % are 10, 70 % are 11 (from memory), 65 % are 15 (from memory), and the chart ends there.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.domain.program.checking import finds, found
from tests.domain.program.plans import exercise, kg, one_day, percent, sets

from undercroft.domain.program.checks import Thresholds
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method
from undercroft.domain.program.rig import Part, Rig
from undercroft.domain.program.wish import OfMaximum
from undercroft.domain.strength import repetitions_at

NAME = "reserve-contradicts"


def squat(load, reps, **fields):
    return one_day(exercise("back-squat", sets(1, reps, load, **fields)))


def test_five_at_seventy_per_cent_do_not_end_at_failure():
    (one,) = found(NAME, squat(percent(70), 5, rir=0))
    assert one.severity is Severity.WARN
    assert one.path == "weeks.0.sessions.0.exercises.0.sets.0"
    assert one.what == (
        "5 repetitions at 70 % leave about 6 in reserve, and 0 is written: a set done as planned"
        " would read as a changed maximum"
    )
    assert one.right == "write about 6 in reserve or none at all, or another percentage"


@pytest.mark.parametrize(
    ("rir", "contradicts"), [(1.5, True), (2, False), (3, False), (4, False), (4.5, True)]
)
def test_one_repetition_to_either_side_is_within_what_people_can_tell(rir, contradicts):
    """Five at 80 % leave three."""
    assert finds(NAME, squat(percent(80), 5, rir=rir)) is contradicts


def test_a_coach_may_move_the_threshold():
    plan = squat(percent(80), 5, rir=1)
    assert finds(NAME, plan)
    assert not finds(NAME, plan, thresholds=Thresholds(reserve_off=2))


def test_more_repetitions_than_the_percentage_allows_leave_none():
    (one,) = found(NAME, squat(percent(90), 8, rir=1))
    assert "leave about 0 in reserve, and 1 is written" in one.what


@pytest.mark.parametrize(("rir", "contradicts"), [(8.9, True), (9, False), (10, False)])
def test_below_the_end_of_the_table_only_too_small_a_reserve_is_found(rir, contradicts):
    """Five at 60 % leave more than ten."""
    assert finds(NAME, squat(percent(60), 5, rir=rir)) is contradicts


def test_a_reserve_that_is_left_open_contradicts_nothing():
    assert not finds(NAME, squat(percent(70), 5))


def test_sets_to_failure_go_on_past_their_aim():
    assert not finds(NAME, squat(percent(70), 5, rir=0, to_failure=True))


def test_a_load_in_kilograms_is_for_other_checks():
    assert not finds(NAME, squat(kg(60), 5, rir=0))


def test_a_percentage_of_another_lift_says_nothing_of_this_ones_reserve():
    assert not finds(NAME, squat(OfMaximum(70, of="deadlift"), 5, rir=0))


def test_a_ratio_belongs_to_the_percentage():
    """80 % of 0.9 of the maximum are 72 %, of which nobody ends after five."""
    assert finds(NAME, squat(percent(80, ratio=0.9), 5, rir=3))


@pytest.mark.parametrize("method", [Method.SPEED, Method.TEMPO])
def test_what_tells_nothing_of_a_maximum_passes(method):
    plan = exercise("back-squat", sets(2, 3, percent(60), rir=2), method)
    assert not finds(NAME, one_day(plan))


def test_bands_change_what_a_percentage_of_the_bar_leaves():
    rig = Rig(Part.BANDS, 25)
    plan = exercise("back-squat", sets(2, 5, percent(70), rir=1), rig=rig)
    assert not finds(NAME, one_day(plan))


@given(st.floats(65, 100), st.integers(1, 10))
def test_the_reserve_that_the_table_leaves_never_contradicts(of, reps):
    left = repetitions_at(of / 100) - reps
    assert left < 0 or not finds(NAME, squat(percent(of), reps, rir=min(left, 10)))
