"""Weeks begin on Monday."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.program.calendar import DAYS, day_of_session, misfit_of_start, monday_of

MONDAY = date(2026, 3, 2)
"""A Monday by `cal 3 2026`."""


@pytest.mark.parametrize("day", range(2, 9))
def test_all_seven_days_of_a_week_belong_to_its_monday(day: int) -> None:
    assert monday_of(date(2026, 3, day)) == MONDAY


def test_sunday_belongs_to_the_week_before() -> None:
    assert monday_of(date(2026, 3, 1)) == date(2026, 2, 23)


def test_the_friday_of_the_second_week_lies_eleven_days_after_the_first_monday() -> None:
    assert day_of_session(MONDAY, 1, 5) == date(2026, 3, 13)


@given(st.integers(0, 51), st.integers(1, 7))
def test_a_session_falls_on_the_day_that_it_is_named_after(week: int, day: int) -> None:
    assert day_of_session(MONDAY, week, day).strftime("%A") == DAYS[day - 1]


def test_a_block_starts_on_a_monday_and_the_two_nearest_are_named() -> None:
    assert misfit_of_start(MONDAY, MONDAY) is None
    assert misfit_of_start(date(2026, 3, 5), MONDAY) == (
        "2026-03-05 is a Thursday",
        "give a Monday: 2026-03-02 or 2026-03-09",
    )


@pytest.mark.parametrize("day", [date(1, 1, 1), date(2024, 2, 26), date(2028, 3, 6), date.max])
def test_a_start_more_than_two_years_away_is_a_slip(day: date) -> None:
    what, right = misfit_of_start(day, MONDAY) or ("", "")
    assert what == f"{day.isoformat()} is more than two years from today"
    assert right == "give a Monday nearer to today"


@given(st.integers(-104, 104).map(lambda weeks: MONDAY + timedelta(weeks=weeks)))
def test_every_monday_within_two_years_is_good(day: date) -> None:
    assert misfit_of_start(day, MONDAY) is None
