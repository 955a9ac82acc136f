"""Weeks begin on Monday: names of the days, and on which date a session falls."""

from datetime import date, timedelta

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
"""By `SessionPlan.day` less one."""


def monday_of(day: date) -> date:
    """The Monday of the week that a day lies in."""
    return day - timedelta(days=day.weekday())


def day_of_session(starts_on: date, week_index: int, day: int) -> date:
    """The date of a session.

    `starts_on` is the Monday of the first week, `week_index` counts from 0, `day` from 1 (Monday).
    Raises OverflowError beyond the year 9999.
    """
    return starts_on + timedelta(weeks=week_index, days=day - 1)
