"""The load to show for the next set, under the rules of the sheet."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.domain.strength.test_notches import LEAN, OFFSET, table

from undercroft.domain.strength import Ladder, Reason, begin, suggest, walk

EACH = Ladder(tuple(range(41)))
"""A kit in which each notch has its own load: today's is index 20."""


def standing(level: int, allowed: int = 5, **changes):
    """A walk that began at 4605 and stands at this level."""
    return replace(begin(table()), level=level, allowed=allowed, **changes)


def test_before_any_set_the_sheets_own_load_is_shown():
    found = suggest(begin(table()), table(), EACH, 5)
    assert (found.index, found.notch, found.reason) == (20, 461, Reason.SAME)


@pytest.mark.parametrize(
    ("level", "index", "reason"),
    [(4615, 21, "up"), (4625, 22, "up"), (4595, 19, "down"), (4485, 8, "down"), (4609, 20, "same")],
)
def test_the_load_follows_the_nearest_notch(level, index, reason):
    found = suggest(standing(level), table(), EACH, 5)
    assert (found.index, found.reason) == (index, reason)


def test_a_load_rises_by_two_notches_a_set_and_five_in_all():
    state, shown = begin(table()), []
    for turn in range(4):
        state = walk(state, table(), turn, 4605 - OFFSET[4] + 400, 5)
        shown.append(suggest(state, table(), EACH, 5))
    assert [one.index - 20 for one in shown] == [2, 4, 5, 5]
    assert {one.reason for one in shown} == {Reason.RISE_LIMITED}


def test_a_load_may_fall_freely_and_rises_from_there_by_two():
    fives = table(at=(5, 5, 5))
    state = walk(begin(fives), fives, 0, 4605 - OFFSET[4] - 120, 5)
    fallen = suggest(state, fives, EACH, 5)
    assert fallen.index - 20 == -6  # from 460.5 by 310 + 120 per mille of 12 notches to 455.3
    up = walk(state, fives, 1, state.level - OFFSET[4] + 600, 5)
    assert suggest(up, fives, EACH, 5).index - fallen.index == 2


def test_a_rise_is_counted_from_the_load_that_was_suggested_for_the_set_just_done():
    state = walk(begin(table()), table(), 0, 4605 - OFFSET[4] - 120, 5)
    for_eight = suggest(state, table(), EACH, 8)
    up = walk(state, table(), 1, state.level - OFFSET[4] + 600, 5)
    assert suggest(up, table(), EACH, 8).index - for_eight.index == 2


def test_no_suggestion_passes_the_upper_bound():
    found = suggest(standing(4655), table(), Ladder(EACH.indices, cap=22), 5)
    assert (found.index, found.reason) == (22, Reason.UPPER_BOUND)


def test_the_upper_bound_holds_for_a_plan_on_hold_too():
    found = suggest(begin(table()), table(hold=True), Ladder(EACH.indices, cap=18), 5)
    assert (found.index, found.reason) == (18, Reason.UPPER_BOUND)


@pytest.mark.parametrize("level", [4400, 4605, 4700])
def test_on_hold_the_plan_stands_whatever_was_done(level):
    found = suggest(standing(level), table(hold=True), EACH, 5)
    assert (found.index, found.reason) == (20, Reason.HOLD)


def test_the_ladders_end_is_the_end():
    found = suggest(standing(4300), table(), EACH, 5)
    assert (found.index, found.notch, found.reason) == (0, 441, Reason.END_OF_TABLE)


def test_a_learnt_tilt_moves_light_sets_and_heavy_sets_apart():
    state = standing(4605, tilt=-100)
    assert suggest(state, table(), EACH, 5).index == 20
    assert suggest(state, table(), EACH, 12).index - 20 == 2  # 460.5 and 2.6 are 463.1
    assert suggest(state, table(), EACH, 1).index - 20 == -2  # 460.5 less 1.4 are 459.1


def test_a_session_begun_with_a_carried_tilt_may_rise_from_there():
    state = standing(4605, allowed=0, tilt=-100, from_tilt=-100)
    assert suggest(state, table(), EACH, 12).index - 20 == 2
    assert suggest(state, table(), EACH, 12).reason is Reason.SAME


def test_loads_that_a_kit_cannot_tell_apart_stay_the_same():
    coarse = Ladder(tuple(i // 5 for i in range(41)))
    assert suggest(standing(4615), table(), coarse, 5).index == 4
    assert suggest(standing(4615), table(), coarse, 5).reason is Reason.UP


@given(
    outcomes=st.lists(
        st.tuples(st.integers(4000, 4900), st.integers(1, 15)), min_size=1, max_size=6
    ),
    n=st.integers(1, 15),
)
def test_whatever_is_reported_a_rise_is_bounded_by_the_set_and_in_all(outcomes, n):
    state = begin(table())
    before = start = suggest(state, table(at=(n, n, n)), EACH, n)
    for turn, (place, done) in enumerate(outcomes):
        state = walk(state, table(at=(n, n, n)), turn, place, done)
        found = suggest(state, table(at=(n, n, n)), EACH, n)
        if found.reason is not Reason.END_OF_TABLE:
            assert found.index - before.index <= 2
        assert found.index - start.index <= 5
        before = found


def test_the_leans_of_these_tests_fall_as_repetitions_rise():
    assert list(LEAN) == sorted(LEAN, reverse=True)
