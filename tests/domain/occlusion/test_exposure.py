"""How often: hours between sessions of a limb, days in a row, days a week; and the weekly sums."""

from datetime import date, datetime, timedelta, timezone

import pytest

from undercroft.domain.occlusion import (
    Dose,
    OcclusionDay,
    Site,
    exposure_on,
    frequency_issues,
    gap_issues,
    weekly,
)
from undercroft.domain.program.methods import Limb, Side

MONDAY = date(2026, 3, 2)
LEG, ARM = frozenset({Limb.THIGH}), frozenset({Limb.UPPER_ARM})


def legs(*offsets: int) -> list[OcclusionDay]:
    return [OcclusionDay(MONDAY + timedelta(days=one), LEG) for one in offsets]


def arms(*offsets: int) -> list[OcclusionDay]:
    return [OcclusionDay(MONDAY + timedelta(days=one), ARM) for one in offsets]


USED_TO_IT = legs(-20, -17, -14, -11, -8)


@pytest.mark.parametrize(
    ("hours", "severities"),
    [(30, ["stop"]), (35.9, ["stop"]), (36, ["warn"]), (40, ["warn"]), (47.9, ["warn"]), (48, [])],
)
def test_36_hours_stop_and_48_warn(hours, severities):
    """36 h: PMC7534706 Table 3, seen; 48 h: our own choice."""
    assert [issue.severity.value for issue in gap_issues(hours)] == severities


@pytest.mark.parametrize(
    ("last", "hours", "severities"),
    [(1, 71, ["stop"]), (1, 72, []), (2, 71, ["stop"]), (3, 48, []), (3, 47, ["warn"])],
)
def test_after_the_first_two_exposures_72_hours(last, hours, severities):
    assert [issue.severity.value for issue in gap_issues(hours, last)] == severities


def keys(done, planned, **more) -> list[tuple[int, str]]:
    found = frequency_issues(done, planned, **more)
    return [((on - MONDAY).days, issue.key) for on, issue in found]


def test_three_days_a_week_with_a_day_between_pass():
    assert keys(USED_TO_IT, legs(0, 2, 4, 7, 9, 11)) == []


def test_a_fourth_day_in_a_week_is_a_stop():
    """P, from memory: 2-3 days a week."""
    found = frequency_issues(USED_TO_IT, [*legs(0, 2, 4), *legs(6)])
    assert [(issue.key, issue.severity.value) for _, issue in found] == [("days-a-week", "stop")]


def test_a_week_is_any_seven_days():
    assert keys(USED_TO_IT, legs(2, 4, 6, 8)) == [(8, "days-a-week")]
    assert keys(USED_TO_IT, legs(2, 4, 6, 9)) == []


def test_arms_and_legs_share_the_days_of_a_week():
    planned = [*legs(0), *arms(2), *legs(4), *arms(6)]
    assert (6, "days-a-week") in keys([*USED_TO_IT, *arms(-20, -17, -14, -11, -8)], planned)


def test_twice_a_day_is_for_the_clinic():
    found = frequency_issues(USED_TO_IT, [*legs(0), *arms(0)])
    assert [(issue.key, issue.severity.value) for _, issue in found] == [("twice-a-day", "stop")]


def test_two_days_in_a_row_are_24_hours_for_the_same_limb():
    assert keys(USED_TO_IT, legs(0, 1)) == [(1, "gap"), (1, "days-in-a-row")]


def test_two_days_in_a_row_with_other_limbs_warn():
    found = frequency_issues([*USED_TO_IT, *arms(-8)], [*legs(0), *arms(1)])
    assert [(issue.key, issue.severity.value) for _, issue in found] == [("days-in-a-row", "warn")]


def test_the_first_exposures_lie_three_days_apart():
    assert keys([], legs(0, 2)) == [(2, "gap")]
    assert keys([], legs(0, 3, 6, 8)) == []


def test_what_was_done_counts_for_what_is_planned():
    assert keys(legs(-14, -11, -8, -4, -1), legs(0)) == [(0, "gap"), (0, "days-in-a-row")]


def test_a_clinician_may_allow_fewer_days_and_never_more():
    assert keys(USED_TO_IT, legs(0, 2, 4), days_a_week=2) == [(4, "days-a-week")]
    assert keys(USED_TO_IT, legs(0, 2, 4, 6), days_a_week=7) == [(6, "days-a-week")]


def test_arms_are_new_to_it_however_used_the_legs_are():
    assert exposure_on(USED_TO_IT, MONDAY, Limb.THIGH) == 5
    assert exposure_on(USED_TO_IT, MONDAY, Limb.UPPER_ARM) == 1


def test_minutes_and_repetitions_by_limb_and_week():
    left, right = Site(Limb.THIGH, Side.LEFT), Site(Limb.THIGH, Side.RIGHT)

    def dose(site: Site, day: int, seconds: float, reps: int) -> Dose:
        start = datetime(2026, 3, 2, 18, tzinfo=timezone(timedelta(hours=1)))
        start += timedelta(days=day)
        return Dose(site, start, start + timedelta(seconds=seconds), seconds, reps)

    doses = [
        dose(left, 0, 390, 75), dose(left, 2, 420, 70), dose(right, 2, 60, 15),
        dose(left, 7, 300, 60), dose(left, 6, 30, 5),
    ]  # fmt: skip
    found = [(w.week, str(w.site), w.minutes, w.reps, w.sessions) for w in weekly(doses)]
    assert found == [
        (MONDAY, "left-thigh", 14.0, 150, 3),
        (MONDAY, "right-thigh", 1.0, 15, 1),
        (MONDAY + timedelta(days=7), "left-thigh", 5.0, 60, 1),
    ]
