"""Weeks begin on Monday: names of the days, and on which date a session falls."""

from datetime import date, timedelta

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
"""By `SessionPlan.day` less one."""

LONGEST_WAY = timedelta(days=731)
"""Two years: a start further away is a slip of the keyboard."""


def monday_of(day: date) -> date:
    """The Monday of the week that a day lies in."""
    return day - timedelta(days=day.weekday())


def day_of_session(starts_on: date, week_index: int, day: int) -> date:
    """The date of a session.

    `starts_on` is the Monday of the first week, `week_index` counts from 0, `day` from 1 (Monday).
    Raises OverflowError beyond the year 9999.
    """
    return starts_on + timedelta(weeks=week_index, days=day - 1)


def misfit_of_start(starts_on: date, today: date) -> tuple[str, str] | None:
    """Why a block cannot start on a day, and what would be right; None where it can."""
    said = f"{starts_on.isoformat()} is"
    if abs(starts_on - today) > LONGEST_WAY:
        return f"{said} more than two years from today", "give a Monday nearer to today"
    monday = monday_of(starts_on)
    if starts_on != monday:
        near = f"{monday.isoformat()} or {(monday + timedelta(weeks=1)).isoformat()}"
        return f"{said} a {DAYS[starts_on.weekday()]}", f"give a Monday: {near}"
    return None
