"""Weeks begin on Monday."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.program.calendar import DAYS, day_of_session, monday_of

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
