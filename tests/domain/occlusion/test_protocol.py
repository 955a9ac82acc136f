"""Protocols, expected repetitions, wear time, load."""

import pytest

from undercroft.domain.occlusion import (
    EXPECTED,
    EXPECTED_TOTAL,
    PROTOCOLS,
    Work,
    WorkSet,
    break_issues,
    load_issues,
    load_range_kg,
    planned_reps,
    predicted_wear_s,
    reps_issues,
    wear_issues,
    work_of,
)
from undercroft.domain.occlusion.protocol import FIXED_SEVENTY_FIVE, TO_FAILURE, shape_issues
from undercroft.domain.program.block import ExercisePlan, Rest, SetPlan
from undercroft.domain.program.methods import Limb, Method, OcclusionRule, Restriction
from undercroft.domain.program.wish import Fixed, OfMaximum


def work(sets=FIXED_SEVENTY_FIVE.sets, rest_s=30, **more) -> Work:
    return Work(Limb.THIGH, Restriction.WRAP, tuple(sets), rest_s, rest_s, **more)


def test_the_fixed_protocol_is_75_repetitions():
    assert planned_reps(FIXED_SEVENTY_FIVE.sets) == (30, 15, 15, 15)
    assert sum(planned_reps(FIXED_SEVENTY_FIVE.sets)) == 75


@pytest.mark.parametrize(("rep_s", "rest_s", "wear_s"), [(4, 30, 390), (2, 30, 240), (4, 60, 480)])
def test_wear_of_75_repetitions(rep_s, rest_s, wear_s):
    """2 + 2 s and 30 s rests: PMC7534706 Table 3, seen; times derived."""
    assert predicted_wear_s(work(rest_s=rest_s, rep_s=rep_s), handling_s=0) == wear_s
    assert not list(wear_issues(wear_s))


def test_putting_on_and_taking_off_count_as_wear():
    assert predicted_wear_s(work()) == 420


def test_a_set_to_failure_is_reckoned_at_what_a_good_athlete_does():
    """Upper ends of the 95 % intervals of Rolnick et al. 2025 (seen), rounded up."""
    assert planned_reps(TO_FAILURE.sets) == (42, 18, 14, 13)
    assert planned_reps([WorkSet(30), WorkSet(20, True), WorkSet(20, True)]) == (30, 20, 20)


def test_expected_sets_are_not_corrected_to_the_pooled_total():
    """Rolnick et al. 2025, Sports Med Open 11:84 (seen): pooled one by one."""
    assert sum(one.mean for one in EXPECTED) == pytest.approx(72.6, abs=0.05)
    assert EXPECTED_TOTAL.mean == 73.1


@pytest.mark.parametrize(
    ("wear_s", "severities"),
    [(600, []), (601, ["warn"]), (900, ["warn"]), (901, ["stop"])],
)
def test_wear_over_10_minutes_warns_and_over_15_stops(wear_s, severities):
    """10 min: P from memory; 15 min: common practice."""
    assert [issue.severity.value for issue in wear_issues(wear_s)] == severities


def test_a_clinicians_wear_limit_can_only_be_tighter():
    assert [issue.severity.value for issue in wear_issues(361, most_minutes=6)] == ["stop"]
    assert [issue.severity.value for issue in wear_issues(901, most_minutes=60)] == ["stop"]


@pytest.mark.parametrize(("off_s", "stops"), [(None, 1), (0, 1), (179, 1), (180, 0), (400, 0)])
def test_wraps_come_off_for_3_minutes_between_exercises(off_s, stops):
    """Common practice; kept on across exercises is a stop."""
    assert [issue.severity.value for issue in break_issues(off_s)] == ["stop"] * stops


def test_the_load_range_of_an_80_kg_maximum():
    """20-40 %: P from memory."""
    assert load_range_kg(80) == (16, 32)


@pytest.mark.parametrize(
    ("percent", "severities"),
    [(60, ["stop"]), (40.1, ["stop"]), (40, []), (20, []), (15, ["note"]), (None, ["warn"])],
)
def test_never_above_40_percent(percent, severities):
    assert [issue.severity.value for issue in load_issues(percent)] == severities


def test_nobody_allows_more_than_40_percent():
    assert [issue.severity.value for issue in load_issues(50, most=60)] == ["stop"]
    assert [issue.severity.value for issue in load_issues(31, most=30)] == ["stop"]


@pytest.mark.parametrize(
    ("reps", "keys"),
    [
        ([34, 14, 11, 9], []),  # total 68, inside 61.1-85.2 (Rolnick et al. 2025, seen)
        ([30, 15, 11, 10], []),
        ([30, 30, 30, 30], ["no-drop"]),
        ([31, 31, 31], ["no-drop"]),
        ([30, 15, 15, 15], []),
        ([30, 13, 12], []),
        ([14, 10, 9, 8], ["first-set"]),
        ([76, 20, 15, 12], ["first-set"]),
        ([], []),
    ],
)
def test_what_logged_repetitions_ask(reps, keys):
    assert [issue.key for issue in reps_issues(reps)] == keys


@pytest.mark.parametrize("protocol", PROTOCOLS, ids=lambda one: one.key)
def test_every_protocol_keeps_its_own_limits(protocol):
    planned = work(protocol.sets, protocol.rest_s[1])
    assert not list(shape_issues(planned))
    assert predicted_wear_s(planned) <= 600
    assert not list(load_issues(protocol.load_percent[1]))
    assert protocol.basis.source


def test_five_sets_and_long_rests_with_the_wrap_on_are_told():
    found = list(shape_issues(work([WorkSet(30)] * 5, 90)))
    assert [issue.key for issue in found] == ["sets", "rest", "reps"]


def plan(*sets: SetPlan, **more) -> ExercisePlan:
    rule = OcclusionRule(Limb.UPPER_ARM, Restriction.WRAP, both_at_once=True, tightness=6)
    return ExercisePlan("e1", "dumbbell-curl", Method.OCCLUSION, sets, details=rule, **more)


def test_work_is_read_off_an_exercise_plan():
    sets = (SetPlan("a", OfMaximum(30), 30), SetPlan("b", OfMaximum(25), 15, to_failure=True))
    found = work_of(plan(*sets, rest=Rest(30, 45)))
    assert (found.limb, found.tightness, found.both_at_once) == (Limb.UPPER_ARM, 6, True)
    assert found.sets == (WorkSet(30), WorkSet(15, True))
    assert (found.rest_from_s, found.rest_to_s, found.load_percent) == (30, 45, 30)


def test_a_share_of_another_lift_or_a_fixed_load_is_no_known_share():
    other = OfMaximum(30, of="barbell-curl")
    assert work_of(plan(SetPlan("a", other, 30))).load_percent is None
    assert work_of(plan(SetPlan("a", Fixed(8), 30))).load_percent is None
    mixed = plan(SetPlan("a", OfMaximum(30), 30), SetPlan("b", Fixed(8), 15))
    assert work_of(mixed).load_percent is None
    assert work_of(mixed, load_percent=28.5).load_percent == 28.5


def test_without_a_rest_the_longest_counts():
    assert work_of(plan(SetPlan("a", OfMaximum(30), 30))).rest_to_s == 60
