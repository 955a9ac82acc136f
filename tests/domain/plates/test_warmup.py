"""The warm-up ramp; its shares and repetitions are common practice."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.domain.plates.kits import CELLAR, CELLAR_BAR, bars, kits, plates

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import nearest
from undercroft.domain.plates import loadable
from undercroft.domain.warmup import RampStep, WarmUpSet, warm_up


def reps_and_loads(sets: tuple[WarmUpSet, ...]) -> list[tuple[int, float]]:
    return [(each.step.reps, each.fit.load.kg) for each in sets]


def test_five_steps_lead_to_a_heavy_set() -> None:
    sets = warm_up(140, loadable(CELLAR_BAR, CELLAR), share_of_maximum=0.85)
    assert reps_and_loads(sets) == [(8, 56), (5, 77.5), (3, 97.5), (2, 112.5), (1, 126)]
    assert [round(each.target_kg, 6) for each in sets] == [56, 77, 98, 112, 126]


def test_below_60_percent_of_the_maximum_two_steps_will_do() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    assert [s.step.reps for s in warm_up(140, table, share_of_maximum=0.59)] == [8, 5]
    assert len(warm_up(140, table, share_of_maximum=0.60)) == 5
    assert len(warm_up(140, table)) == 5


def test_steps_lighter_than_the_empty_bar_are_left_out() -> None:
    assert reps_and_loads(warm_up(45, loadable(CELLAR_BAR, CELLAR))) == [
        (5, 25),
        (3, 31),
        (2, 36),
        (1, 40),
    ]


def test_steps_that_round_to_the_same_load_become_one() -> None:
    table = loadable(CELLAR_BAR, plates({20: 2}))
    assert reps_and_loads(warm_up(100, table)) == [(8, 20), (5, 60)]


def test_a_step_that_comes_out_at_the_work_load_is_left_out() -> None:
    table = loadable(CELLAR_BAR, plates({5: 1}))
    assert reps_and_loads(warm_up(30, table)) == [(3, 20)]


def test_work_with_the_empty_bar_needs_no_ramp() -> None:
    assert warm_up(20, loadable(CELLAR_BAR, CELLAR)) == ()


def test_the_coachs_own_ramp_is_not_shortened() -> None:
    own = (RampStep(10, 0.5), RampStep(4, 0.7), RampStep(2, 0.85))
    sets = warm_up(100, loadable(CELLAR_BAR, CELLAR), share_of_maximum=0.5, ramp=own)
    assert reps_and_loads(sets) == [(10, 50), (4, 70), (2, 85)]


@pytest.mark.parametrize(
    ("step", "message"),
    [
        (RampStep(0, 0.5), "warm-up step 1: repetitions: is 0; should be a whole number from 1"),
        (RampStep(5, 55.0), "warm-up step 1: share of the work load: is 55.0; should be above 0"),
        (RampStep(5, float("nan")), "warm-up step 1: share of the work load: is nan"),
    ],
)
def test_a_step_that_cannot_be_is_refused(step: RampStep, message: str) -> None:
    with pytest.raises(LoadError, match=message):
        warm_up(100, loadable(CELLAR_BAR, CELLAR), ramp=[step])


def test_a_work_load_that_is_no_mass_is_refused() -> None:
    with pytest.raises(LoadError, match="work load in kg: is nan; should be a number above 0"):
        warm_up(float("nan"), loadable(CELLAR_BAR, CELLAR))


@given(bars, kits, st.floats(1, 200))
@settings(deadline=None)
def test_a_ramp_rises_and_stays_below_the_work_load(
    bar: Bar, kit: tuple[Plate, ...], work_kg: float
) -> None:
    table = loadable(bar, kit)
    loads = [kg for _, kg in reps_and_loads(warm_up(work_kg, table))]
    assert loads == sorted(set(loads))
    assert all(kg < nearest(table, work_kg).load.kg for kg in loads)
