"""The walk in whole numbers: rounding, the step, skipped and added sets, the next session."""

from dataclasses import replace
from math import exp, floor, log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.errors import DomainError
from undercroft.domain.strength import NotchTable, Rise, begin, carry, difference, position, walk
from undercroft.domain.strength.scale import at_n, quotient, to_tenths

OFFSET = (0, 51, 73, 105, 139, 163, 186, 223, 261, 288, 357, 400, 410, 421, 431)
LEAN = (139, 88, 67, 34, 0, -23, -47, -84, -122, -148, -217, -261, -271, -281, -292)


def table(**changes) -> NotchTable:
    """100 kg at five repetitions; a top set, then two back-offs of another kind."""
    return replace(
        NotchTable(
            lift="back-squat",
            level=4605,
            form=0,
            base=441,
            drift=2,
            kind=(0, 1, 1),
            at=(5, 8, 8),
            gain={
                "0.0:0": (310, 120, 50),
                "0.0:1": (300, 110, -60),
                "1.0:1": (200, 80, -30),
                "0.1:1": (210, 90, -40),
                "1.1:1": (150, 60, -20),
                "1.2:1": (120, 50, -10),
            },
            missed={},
            told=0,
            less=(0,) * 11,
            tells=(0, 400, 700, 900),
            offset=OFFSET,
            lean=LEAN,
            gate=120,
            rise=Rise(2, 5),
        ),
        **changes,
    )


@pytest.mark.parametrize(
    ("value", "by", "expected"),
    [(5, 10, 1), (-5, 10, -1), (4, 10, 0), (-4, 10, 0), (15, 10, 2), (-15, 10, -2), (0, 7, 0)],
)
def test_quotients_round_half_away_from_zero(value, by, expected):
    assert quotient(value, by) == expected


@given(value=st.integers(-(10**9), 10**9), by=st.integers(1, 10**4))
def test_a_quotient_is_the_nearest_whole_number(value, by):
    found = quotient(value, by)
    assert abs(found * by - value) * 2 <= by
    assert quotient(-value, by) == -found


def test_a_hundred_kilograms_stand_at_notch_460_and_a_half():
    assert position(100) == 4605  # 1000 ln 100 = 4605.17


@given(st.floats(1, 500))
def test_a_percent_more_load_is_about_one_notch(load_kg):
    assert abs(position(load_kg * exp(0.01)) - position(load_kg) - 10) <= 1


@pytest.mark.parametrize("load_kg", [0, -20, float("nan"), float("inf")])
def test_a_load_without_a_place_on_the_scale_is_refused(load_kg):
    with pytest.raises(DomainError, match="load in kg"):
        position(load_kg)


@given(st.floats(-2, 2))
def test_tenths_round_half_away_from_zero(value):
    assert to_tenths(value) == (1 if value >= 0 else -1) * floor(abs(value) * 1000 + 0.5)


@pytest.mark.parametrize(
    ("n", "value"), [(1, 10), (1.5, 16), (2, 21), (2.5, 11), (3, 0), (0.2, 10), (9, 0), (1.24, 10)]
)
def test_half_a_repetition_lies_between_its_neighbours(n, value):
    assert at_n((10, 21, 0), n) == value


def test_a_set_just_as_expected_moves_nothing():
    state = begin(table())
    place = 4605 - OFFSET[6]
    assert difference(state, table(), place, 7) == 0
    after = walk(state, table(), 0, place, 7)
    assert (after.level, after.form, after.tilt) == (4605, 0, 0)


def test_a_step_moves_level_form_and_tilt_by_their_gains():
    state = begin(table())
    after = walk(state, table(), 0, 4605 - OFFSET[6] + 50, 7)
    # 310, 120 and 50 per mille of 50: 15.5, 6 and 2.5, halves away from zero.
    assert (after.level - 4605, after.form, after.tilt) == (16, 6, 3)


@pytest.mark.parametrize("sign", [1, -1])
def test_a_difference_beyond_the_gate_counts_as_the_gate_and_is_wild(sign):
    far = walk(begin(table()), table(), 0, 4605 - OFFSET[6] + sign * 500, 7)
    at_gate = walk(begin(table()), table(), 0, 4605 - OFFSET[6] + sign * 120, 7)
    assert (far.level, far.form, far.tilt) == (at_gate.level, at_gate.form, at_gate.tilt)
    assert (far.wild, at_gate.wild) == (True, False)


def test_tilt_that_was_learnt_on_the_way_is_reckoned_with_at_the_next_set():
    state = replace(begin(table()), tilt=100)
    untilted = difference(begin(table()), table(), 4400, 12)
    assert difference(state, table(), 4400, 12) - untilted == 26  # 100 per mille of 261
    assert difference(state, table(), 4400, 5) == difference(begin(table()), table(), 4400, 5)


def test_after_a_skipped_set_the_next_has_the_gain_of_one_that_comes_first():
    place = 4605 - OFFSET[7] + 100
    after = walk(begin(table()), table(), 1, place, 8)
    assert (after.level - 4605, after.form) == (30, 11)


def test_sets_of_other_kinds_are_counted_apart():
    state = walk(begin(table()), table(), 1, 4605 - OFFSET[7], 8)
    assert state.done == (0, 1)
    after = walk(state, table(), 2, 4605 - OFFSET[7] + 100, 8)
    assert after.level - 4605 == 21


def test_sets_beyond_the_plan_weigh_as_one_more_of_its_last_kind():
    state = begin(table())
    for turn in range(3):
        state = walk(state, table(), turn, state.level - OFFSET[7], 8)
    for turn in (3, 4, 9):
        after = walk(state, table(), turn, state.level - OFFSET[7] + 100, 8)
        assert after.level - state.level == 12
        state = replace(after, level=state.level, form=0, tilt=0)


def test_without_turns_in_the_plan_nothing_moves():
    empty = table(kind=(), at=(), gain={}, tells=(0,))
    assert walk(begin(empty), empty, 0, 4000, 5) == begin(empty)


def test_the_next_session_starts_with_the_level_walked_to_and_without_form():
    this, following = table(), table(level=4607)
    state = walk(begin(this), this, 0, 4605 - OFFSET[6] + 50, 7)
    after = carry(this, state, begin(this), following)
    assert (after.level, after.form, after.tilt) == (4607 + 16, 0, 3)
    assert (after.from_level, after.allowed, after.done) == (4623, 0, (0, 0))


def test_what_the_server_knew_of_a_session_is_not_carried_twice():
    this = table()
    known = walk(begin(this), this, 0, 4605 - OFFSET[6] + 50, 7)
    state = walk(known, this, 1, 4605 - OFFSET[7] + 80, 8)
    # The server worked the next table out after it had the first set.
    after = carry(this, state, known, table(level=known.level))
    assert after.level == state.level
    assert after.tilt == state.tilt - known.tilt
    assert after.told == 700 - 400


@pytest.mark.parametrize(
    ("told", "less"),
    [(0, 1000), (50, 900), (100, 800), (150, 720), (900, 60), (950, 30), (1000, 0), (2000, 0)],
)
def test_the_less_was_told_the_more_the_gains_are_those_of_missed_sessions(told, less):
    following = table(
        gain={"0.0:0": (200, 100, 0)},
        missed={"0.0:0": (700, 40, -20)},
        told=1000,
        less=(1000, 800, 640, 500, 400, 300, 220, 160, 100, 60, 0),
    )
    this = table(tells=(0, told))
    state = walk(begin(this), this, 0, 4605 - OFFSET[6], 7)
    begun = carry(this, state, begin(this), following)
    assert begun.less == less
    after = walk(begun, following, 0, begun.level - OFFSET[4] + 100, 5)
    assert after.level - begun.level == pytest.approx((200 + less * 0.5) / 10, abs=0.6)


@given(
    place=st.integers(3000, 5500),
    more=st.integers(1, 200),
    n=st.integers(2, 30).map(lambda h: h / 2),
)
def test_more_load_never_moves_the_level_down(place, more, n):
    light = walk(begin(table()), table(), 0, place, n)
    heavy = walk(begin(table()), table(), 0, place + more, n)
    assert heavy.level >= light.level
    assert heavy.form >= light.form


def test_the_offsets_of_these_tests_are_the_charts():
    shares = (100, 95, 93, 90, 87, 85, 83, 80, 77, 75, 70, 67, 66.333, 65.667, 65)
    assert list(OFFSET) == [round(-1000 * log(share / 100)) for share in shares]
    assert list(LEAN) == [round(1000 * log(share / 87)) for share in shares]
