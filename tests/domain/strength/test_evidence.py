"""What a set says about the maximum, and with how much doubt."""

from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.errors import DomainError
from undercroft.domain.strength import DEFAULT, HANDBOOK, PlannedSet, SetDone, TestedMax, evidence_n
from undercroft.domain.strength.evidence import PlannedTest, read, set_variance, weigh

FIVE = PlannedSet(5, 2)


def test_a_set_reads_the_load_over_its_share():
    assert read(SetDone(100, 5, 2, FIVE)).y == pytest.approx(log(120.48), abs=1e-4)


def test_a_test_reads_its_own_load():
    assert read(TestedMax(120)).y == pytest.approx(log(120))


def test_variance_of_a_set_is_the_curves_and_the_reserves():
    # 5 with 2 in reserve is n = 7: curve 2.8 %, and one repetition from 6 to 8 costs
    # (ln 0.85 - ln 0.80)/2 = 3.03 %.
    expected = 0.028**2 + (1.0 * (log(0.85) - log(0.80)) / 2) ** 2
    assert set_variance(FIVE, HANDBOOK, DEFAULT) == pytest.approx(expected)


def test_reserve_is_trusted_less_in_sets_above_twelve():
    twelve = weigh(PlannedSet(12, 1)).variance - DEFAULT.curve_sd[-1][1] ** 2
    thirteen = weigh(PlannedSet(13, 0)).variance - DEFAULT.curve_sd[-1][1] ** 2
    assert thirteen > twelve * 1.5**2 * 0.9


@given(
    reps=st.integers(1, 12),
    rir=st.integers(0, 3),
    said_reps=st.integers(1, 10),
    said_rir=st.integers(0, 5),
)
def test_weight_follows_from_the_plan_and_not_from_the_report(reps, rir, said_reps, said_rir):
    planned = PlannedSet(reps, rir)
    assert weigh(SetDone(80, said_reps, said_rir, planned)) == weigh(planned)


def test_a_planned_test_weighs_as_a_test():
    assert weigh(PlannedTest()) == weigh(TestedMax(100))
    assert weigh(PlannedTest()).variance == pytest.approx(0.042**2)


@pytest.mark.parametrize("load_kg", [0, -5, float("nan"), float("inf")])
def test_a_load_that_cannot_be_is_refused(load_kg):
    with pytest.raises(DomainError, match="load in kg"):
        read(SetDone(load_kg, 5, 2, FIVE))


def test_sixteen_to_failure_are_refused():
    with pytest.raises(DomainError, match="should be 1 to 15"):
        read(SetDone(100, 12, 4, FIVE))


@pytest.mark.parametrize(
    ("load_kg", "reps", "rir", "to_failure", "n"),
    [
        (100, 5, 2, False, 7),
        (100, 5, 1.5, False, 6.5),
        (100, 5, None, True, 5),
        (100, 5, 3, True, 5),
        (100, 5, None, False, None),
        (100, 12, 4, False, None),
        (100, 0, 2, False, None),
        (0, 5, 2, False, None),
        (100, 15, 0, False, 15),
    ],
)
def test_an_outcome_is_evidence_with_load_repetitions_reserve_and_n_up_to_fifteen(
    load_kg, reps, rir, to_failure, n
):
    assert evidence_n(load_kg, reps, rir, to_failure) == n
