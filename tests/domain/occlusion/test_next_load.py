"""The next load by repetitions reached."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion import (
    FULL_DOSE,
    Step,
    WorkSet,
    next_load_table,
    next_step,
    next_why,
)
from undercroft.domain.occlusion.protocol import FIXED_SEVENTY_FIVE, TO_FAILURE

KIT = [10, 15, 20, 22.5, 25, 30, 35, 40]


def table(sets=FIXED_SEVENTY_FIVE.sets, used=25, maximum=80, exposure=FULL_DOSE, **more):
    return next_load_table(sets, KIT, used, maximum, exposure, **more)


@pytest.mark.parametrize(
    ("reps", "step", "kg"),
    [
        ([30, 15, 15, 16], Step.UP, 30),  # fourth set above 15: PMC7534706 Table 3, seen
        ([30, 15, 15, 15], Step.HOLD, 25),
        ([30, 14, 11, 9], Step.HOLD, 25),  # missing 15 in the last two is normal
        ([20, 15, 15, 15], Step.HOLD, 25),
        ([19, 15, 15, 16], Step.DOWN, 22.5),  # first set under two thirds
        ([19, 8, 6, 5], Step.DOWN, 22.5),  # 38 in all
        ([19, 8, 6, 4], Step.DOWN_A_TENTH, 22.5),  # 37 in all
        ([30, 15, 15], Step.HOLD, 25),
    ],
)
def test_the_table_of_the_fixed_protocol(reps, step, kg):
    assert next_step(table(), reps) == (step, kg)


def test_a_sign_or_a_broken_off_list_never_moves_the_load():
    assert next_step(table(), [30, 15, 15, 20], stopped=True) == (Step.HOLD, 25)
    assert next_step(table(), [5]) == (Step.HOLD, 25)


def test_the_next_load_says_why():
    assert next_why(table(), [30, 15, 15, 16]) == "last set above its target"
    assert next_why(table(), [19, 15, 15, 15]) == "first set under two thirds of its target"
    assert next_why(table(), [30, 15, 15]) == "not every set was done"
    assert next_why(table(), [30, 15, 15, 16], stopped=True) == "the session was stopped"


def test_where_no_load_is_left_the_next_one_says_so():
    why = next_why(table(exposure=4), [30, 15, 15, 16])
    assert why == "last set above its target, but no other load is open here"


def test_a_tenth_down_is_at_least_a_tenth():
    assert next_step(table(used=30), [5, 5, 5, 5]) == (Step.DOWN_A_TENTH, 25)


def test_never_above_40_percent_of_the_maximum():
    assert table(used=30, maximum=80).up_kg == 30  # 35 would be 43.75 %
    assert table(used=30, maximum=87.5).up_kg == 35
    assert table(used=40, maximum=80).hold_kg == 30


def test_a_clinicians_limit_caps_the_load():
    assert table(used=20, maximum=80, most_percent=28.2).up_kg == 22.5
    assert table(used=22.5, maximum=80, most_percent=28.2).up_kg == 22.5
    assert table(used=30, maximum=80, most_percent=90).up_kg == 30


def test_nothing_rises_without_a_maximum_or_before_the_full_dose():
    assert table(maximum=None).up_kg == 25
    assert table(exposure=4).up_kg == 25


def test_sets_to_failure_without_an_aim_take_the_studies_means():
    """Rolnick et al. 2025 (seen): means 36, 15, 12, 10 rounded; above 12.7 in the fourth is up."""
    found = table(TO_FAILURE.sets)
    assert (found.total_under, found.first_under, found.last_over) == (37, 24, 13)


def test_an_aim_beyond_failure_is_the_target():
    found = table((WorkSet(30), WorkSet(20, True), WorkSet(20, True)))
    assert (found.total_under, found.first_under, found.last_over) == (35, 20, 20)
    assert next_step(found, [30, 13, 12])[0] is Step.HOLD  # 12-13 of 20: common practice


@pytest.mark.parametrize(
    ("sets", "loads", "maximum"),
    [((), KIT, 80), (FIXED_SEVENTY_FIVE.sets, [], 80), (FIXED_SEVENTY_FIVE.sets, KIT, 20)],
)
def test_no_sets_no_loads_or_none_light_enough_is_refused(sets, loads, maximum):
    with pytest.raises(DomainError, match="loads"):
        next_load_table(sets, loads, 10, maximum, FULL_DOSE)


@settings(deadline=None)
@given(
    st.lists(st.integers(0, 80), min_size=4, max_size=4),
    st.sampled_from(KIT),
    st.floats(25, 200),
    st.floats(5, 60),
)
def test_no_step_passes_the_cap_and_more_repetitions_never_lower_the_load(
    reps, used, maximum, percent
):
    cap = maximum * min(percent, 40) / 100
    if cap < KIT[0]:
        return
    found = table(used=used, maximum=maximum, most_percent=percent)
    kg = next_step(found, reps)[1]
    assert kg <= cap + 1e-6
    for place in range(4):
        better = [one + (place == i) for i, one in enumerate(reps)]
        assert next_step(found, better)[1] >= kg - 1e-9


def test_a_last_set_to_failure_rises_only_beyond_what_studies_expect_of_it() -> None:
    # Rolnick et al. 2025 (seen): the fourth set's mean lies between 8.1 and 12.7.
    aimed_at_the_means = [WorkSet(reps, to_failure=True) for reps in (36, 15, 12, 10)]
    table = next_load_table(aimed_at_the_means, [15, 20, 25], 20, 80, exposure=5)
    assert table.last_over == 13
    assert next_step(table, [36, 15, 12, 13])[0] is Step.HOLD
    assert next_step(table, [36, 15, 12, 14])[0] is Step.UP
