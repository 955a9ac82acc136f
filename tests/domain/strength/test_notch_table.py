"""The tables that the server works out: gains, drift, wishes, and what skipping does to them."""

from dataclasses import replace
from itertools import combinations, pairwise
from math import exp, log

import numpy as np
import pytest
from tests.domain.strength.scenarios import ORDINARY, scenario
from tests.domain.strength.walks import walked

from undercroft.domain.strength import (
    DEFAULT,
    PlannedSession,
    PlannedSet,
    PlannedTest,
    PlannedTurn,
    SetDone,
    advance,
    curve_of,
    estimate,
    notch_tables,
    start_from_guess,
    take_session,
    wishes_for_set,
    wishes_for_share,
)
from undercroft.domain.strength.evidence import weigh
from undercroft.domain.strength.gains import MOST_GAINS, kinds_of
from undercroft.domain.strength.notches import gain_key
from undercroft.domain.strength.scale import to_tenths

TOP, BACK = PlannedSet(3, 1), PlannedSet(6, 2)
WAVE = (PlannedSet(5, 1), PlannedSet(3, 1), PlannedSet(2, 1)) * 2


def session(days: float, *sets) -> PlannedSession:
    return PlannedSession(days, tuple(PlannedTurn(one, one.reps + one.rir) for one in sets))


def guess(doubt: float = 0.08):
    return start_from_guess(100, doubt, 0)


def brute_gain(state, planned_before, planned):
    """Gain after those sets, by inverting the whole covariance: plain matrices, no recursion."""
    precision = np.linalg.inv(np.array(state.covariance))
    for one in planned_before:
        weight = weigh(one)
        row = np.array([1.0, 1.0, weight.lean])
        precision = precision + np.outer(row, row) / weight.variance
    weight = weigh(planned)
    row = np.array([1.0, 1.0, weight.lean])
    shared = np.linalg.inv(precision) @ row
    return shared / (row @ shared + weight.variance)


def test_a_table_starts_from_the_trackers_level_with_drift():
    state = guess()
    (table,) = notch_tables("back-squat", state, [session(7, TOP, BACK)])
    assert table.level == to_tenths(log(100) + 0.002)
    assert table.base == round(table.level / 10) - 20
    assert table.form == 0


def test_drift_leads_from_each_level_to_the_next():
    days = [2, 5, 9, 30, 90]
    tables = notch_tables("back-squat", guess(), [session(d, BACK) for d in days])
    for this, following in pairwise(tables):
        assert this.level + this.drift == following.level
    assert tables[-1].drift == 0
    weeks = 9 / 7 + 2 + 2  # a gap of three weeks or nine counts as two
    assert tables[-1].level == to_tenths(log(100) + 0.002 * weeks)


@pytest.mark.parametrize(
    "sets", [(BACK,) * 4, (TOP, BACK, BACK, BACK), WAVE, (PlannedSet(12, 1), TOP, BACK)]
)
def test_gains_are_the_filters_own_after_any_sets_were_skipped(sets):
    state = guess()
    (table,) = notch_tables("back-squat", state, [session(3, *sets)])
    at_start = advance(state, 3)
    for turn, planned in enumerate(sets):
        for size in range(turn + 1):
            for before in combinations(range(turn), size):
                done = [0] * (max(table.kind) + 1)
                for one in before:
                    done[table.kind[one]] += 1
                found = table.gain[gain_key(done, table.kind[turn])]
                expected = brute_gain(at_start, [sets[one] for one in before], planned)
                assert found == pytest.approx(1000 * expected, abs=0.51)


def test_sets_that_are_planned_alike_are_of_one_kind():
    (table,) = notch_tables("back-squat", guess(), [session(3, TOP, BACK, BACK, TOP)])
    assert table.kind == (0, 1, 1, 0)


def test_the_first_session_needs_no_gains_for_missed_ones():
    first, second = notch_tables("back-squat", guess(), [session(3, BACK), session(7, BACK)])
    assert first.missed == {}
    assert second.missed["0:0"][0] > second.gain["0:0"][0]
    assert (first.told, second.told) == (0, first.tells[-1])


def test_missed_gains_are_those_of_a_tracker_that_was_told_nothing():
    *_, third = notch_tables("back-squat", guess(), [session(d, TOP, BACK) for d in (3, 7, 14)])
    expected = brute_gain(advance(guess(), 14), [], TOP)
    assert third.missed["0.0:0"] == pytest.approx(1000 * expected, abs=0.51)


def test_between_all_told_and_nothing_told_gains_go_the_way_that_information_adds_up():
    *_, third = notch_tables("back-squat", guess(), [session(d, *(BACK,) * 4) for d in (3, 7, 14)])
    assert third.less[0] == 1000
    assert third.less[-1] == 0
    assert list(third.less) == sorted(third.less, reverse=True)
    assert third.less[5] < 500  # the first half tells more than the second


def test_where_one_session_tells_next_to_nothing_missing_it_is_no_matter():
    still = replace(DEFAULT, growth_sd=0.0)
    state = guess()
    for day in range(0, 900, 3):
        state = take_session(state, day, [SetDone(80, 6, 2, BACK)], still)[-1].state
    sessions = [session(901, BACK), session(904, BACK)]
    _, second = notch_tables("back-squat", state, sessions, still)
    assert second.missed == {}
    assert set(second.less) == {0}


def test_what_a_session_tells_rises_with_its_sets_and_stays_below_what_form_allows():
    (table,) = notch_tables("back-squat", guess(), [session(3, *(BACK,) * 8)])
    assert table.tells[0] == 0
    assert list(table.tells) == sorted(table.tells)
    assert table.tells[-1] < 1 / 0.02**2


def test_a_session_of_ten_different_sets_is_merged_within_budget_and_stays_near():
    planned = session(3, *(PlannedSet(reps, reps % 4) for reps in range(11, 1, -1)))
    kind, weights = kinds_of([weigh(turn.planned) for turn in planned.turns])
    assert len(kind) == 10 > len(weights)
    worst = 0.0
    for seed in range(40):
        (one,) = walked(replace(scenario(seed), sessions=(planned,)), ORDINARY)
        assert len(one.table.gain) <= MOST_GAINS
        worst = max(worst, *(abs(turn.load_gap) for turn in one.turns))
    assert worst < 1.0


def test_a_session_without_evidence_has_an_empty_table():
    first, second = notch_tables("back-squat", guess(), [PlannedSession(3, ()), session(7, BACK)])
    assert (first.kind, first.gain, first.tells) == ((), {}, (0,))
    assert second.missed == {}


def test_a_planned_test_weighs_as_one():
    one = PlannedSession(3, (PlannedTurn(PlannedTest(), 1),))
    (table,) = notch_tables("back-squat", guess(), [one])
    expected = brute_gain(advance(guess(), 3), [], PlannedTest())
    assert table.gain["0:0"] == pytest.approx(1000 * expected, abs=0.51)


def test_today_in_the_middle_of_the_ladder_is_the_load_that_the_tracker_gives():
    state = guess()
    (table,) = notch_tables("back-squat", state, [session(3, BACK)])
    wishes = wishes_for_set(table, state, BACK)
    assert len(wishes) == 41
    assert wishes[20] == pytest.approx(100 * 0.80, rel=0.006)
    assert np.diff(np.log(wishes)) == pytest.approx(0.01)


def test_a_share_of_the_maximum_follows_the_estimate_of_the_maximum():
    state = guess()
    for days in range(0, 60, 3):
        state = take_session(state, days, [SetDone(80, 8, 1, PlannedSet(8, 1))])[-1].state
    (table,) = notch_tables("back-squat", state, [session(60, BACK)])
    expected = 0.6 * estimate(advance(state, 60)).kg
    assert wishes_for_share(table, state, 0.6)[20] == pytest.approx(expected, rel=0.006)


def test_the_offsets_follow_the_curve_that_the_lift_uses():
    curve = curve_of("epley")
    (table,) = notch_tables("back-squat", guess(), [session(3, BACK)], curve=curve)
    assert table.offset[4] == round(1000 * log(1 + 5 / 30))
    assert [exp(-one / 1000) for one in table.offset] == pytest.approx(curve.shares, abs=6e-4)


def test_the_athletes_own_tilt_is_in_the_offsets():
    state = guess()
    sets = [SetDone(80, 5, 0, PlannedSet(5, 0)), SetDone(75, 11, 0, PlannedSet(10, 0))]
    for days in range(0, 60, 3):
        state = take_session(state, days, sets)[-1].state
    (table,) = notch_tables("back-squat", state, [session(60, BACK)])
    (plain,) = notch_tables("back-squat", guess(), [session(60, BACK)])
    assert table.offset[4] == plain.offset[4]
    assert table.offset[9] - plain.offset[9] == pytest.approx(-state.tilt * table.lean[9], abs=1)
    assert state.tilt < -0.05
