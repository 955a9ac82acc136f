"""Repetitions in reserve and the load chart."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.errors import DomainError
from undercroft.domain.strength import (
    CHART,
    HANDBOOK,
    repetitions_at,
    rir_from_rpe,
    share,
    share_for,
)
from undercroft.domain.strength.reserve import lean, log_share, steepness

SEEN = {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75}
"""The NSCA's load chart, seen in a copy."""

FROM_MEMORY = {11: 70, 12: 67, 15: 65}
"""The same chart in the textbook, from memory; the stand-alone chart prints 70 at 12."""


def test_chart_prints_the_handbooks_shares_with_their_standing():
    assert {row.reps: row.percent for row in CHART if row.mark == "seen"} == SEEN
    assert {row.reps: row.percent for row in CHART if row.mark == "from memory"} == FROM_MEMORY


def test_the_two_printed_versions_at_twelve_are_told_apart():
    (twelve,) = (row for row in CHART if row.reps == 12)
    assert twelve.percent == 67
    assert "stand-alone chart prints 70" in twelve.source


@pytest.mark.parametrize(("n", "percent"), [*SEEN.items(), *FROM_MEMORY.items()])
def test_share_at_each_printed_repetition_is_the_charts(n, percent):
    assert share(n) == pytest.approx(percent / 100)


def test_share_is_linear_between_printed_repetitions():
    assert share(5.5) == pytest.approx(0.86)
    assert share(13) == pytest.approx(0.67 - 0.02 / 3)
    assert share(14) == pytest.approx(0.67 - 0.04 / 3)


def test_five_at_rpe_8_is_a_seven_repetition_maximum():
    # Derived from the definition of reserve and the seen chart: 83 %, so 100 kg speaks for 120.48.
    rir = rir_from_rpe(8)
    assert rir == 2
    assert share_for(5, rir) == pytest.approx(0.83)
    assert 100 / share_for(5, rir) == pytest.approx(120.48, abs=0.01)


def test_load_of_190_at_five_repetitions_is_165_3():
    assert 190 * share(5) == pytest.approx(165.3, abs=0.05)  # chart row seen


@pytest.mark.parametrize(("rpe", "rir"), [(10, 0), (9.5, 0.5), (9, 1), (8, 2), (7, 3), (6.5, 3.5)])
def test_rpe_from_6_5_up_tells_the_reserve(rpe, rir):
    # 10/0 and 9/1 seen (Zourdos et al. 2016), the rest of the scale from memory.
    assert rir_from_rpe(rpe) == rir


@pytest.mark.parametrize("rpe", [1, 5, 6, 6.4])
def test_rpe_below_6_5_tells_nothing(rpe):
    assert rir_from_rpe(rpe) is None


@pytest.mark.parametrize("rpe", [0, 10.5, float("nan")])
def test_rpe_off_the_scale_is_refused(rpe):
    with pytest.raises(DomainError, match="should be on the scale of 1 to 10"):
        rir_from_rpe(rpe)


@pytest.mark.parametrize("n", [0.5, 15.5, 20, float("nan")])
def test_share_is_refused_outside_one_to_fifteen(n):
    with pytest.raises(DomainError, match="should be 1 to 15"):
        share(n)


@pytest.mark.parametrize("wanted", [0.64, 1.01])
def test_repetitions_are_refused_where_the_curve_does_not_tell(wanted):
    with pytest.raises(DomainError, match=r"should be 0\.650 to 1"):
        repetitions_at(wanted)


@given(st.floats(1, 15))
def test_repetitions_at_a_share_are_the_inverse_of_the_share(n):
    assert repetitions_at(share(n)) == pytest.approx(n, abs=1e-9)


@given(low=st.floats(1, 15), high=st.floats(1, 15))
def test_more_repetitions_never_go_with_a_larger_share(low, high):
    low, high = sorted((low, high))
    assert share(high) <= share(low)


def test_every_repetition_costs_something():
    assert all(after < before for before, after in pairwise(HANDBOOK.shares))
    assert all(steepness(n) > 0 for n in range(1, 16))


def test_lean_is_nothing_at_five_up_below_and_down_above():
    assert lean(5) == 0
    assert lean(1) == pytest.approx(-log_share(5))
    assert lean(1) > lean(3) > 0 > lean(8) > lean(12)
