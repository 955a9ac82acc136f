"""Plates on a bar: check values, what a sleeve holds, what is refused."""

import pytest
from tests.domain.plates.kits import CELLAR, CELLAR_BAR, plates, pounds

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import KG_PER_LB, Load, above, below, nearest, nearest_many
from undercroft.domain.plates import alternatives, loadable
from undercroft.domain.sleeves import landmine_sleeve

FULL_SET = plates({25: 4, 20: 4, 15: 4, 10: 4, 5: 4, 2.5: 4, 1.25: 4})
WOMENS_BAR = Bar("light", "Bar of 15 kg", 15.0, sleeve_length_m=0.320)


@pytest.mark.parametrize(("kg", "fewest"), [(100, 2), (102.5, 3), (142.5, 4), (187.5, 6)])
def test_a_bar_of_20_kg_takes_the_fewest_plates(kg: float, fewest: int) -> None:
    """Source of the counts: an integer program (`scipy.optimize.milp`), worked out beforehand."""
    fit = nearest(loadable(CELLAR_BAR, FULL_SET), kg)
    assert (fit.off_kg, len(fit.load.plates)) == (0.0, fewest)


def test_a_bar_of_15_kg_with_one_of_each_makes_92_5_and_not_93() -> None:
    """Source: an integer program, which finds 38.75 kg a side and calls 39 kg infeasible."""
    table = loadable(WOMENS_BAR, plates({20: 1, 15: 1, 10: 2, 5: 1, 2.5: 1, 1.25: 1}))
    assert nearest(table, 92.5).load.side == (20, 15, 2.5, 1.25)
    fit = nearest(table, 93)
    assert (fit.load.kg, fit.off_kg) == (92.5, -0.5)
    assert fit.below is not None
    assert fit.above is not None
    assert (fit.below.kg, fit.above.kg) == (92.5, 95)


def test_an_answer_on_the_spot_still_names_its_neighbours() -> None:
    fit = nearest(loadable(CELLAR_BAR, CELLAR), 100)
    assert fit.off_kg == 0
    assert fit.below is not None
    assert fit.above is not None
    assert (fit.below.kg, fit.above.kg) == (98.5, 101)


def test_between_two_loads_as_near_the_lighter_is_taken() -> None:
    table = loadable(CELLAR_BAR, plates({5: 1, 2.5: 1}))
    assert nearest(table, 27.5).load.kg == 25
    assert nearest(table, 27.51).load.kg == 30


def test_no_load_passes_the_upper_bound_and_none_is_named_above_it() -> None:
    table = loadable(CELLAR_BAR, plates({5: 1, 2.5: 1}))
    fit = nearest(table, 29, upper_kg=29.9)
    assert (fit.load.kg, fit.off_kg, fit.above) == (25, -4, None)


def test_a_wish_below_the_empty_bar_gets_the_empty_bar() -> None:
    fit = nearest(loadable(CELLAR_BAR, CELLAR), 12)
    assert (fit.load.kg, fit.load.side, fit.off_kg, fit.below) == (20, (), 8, None)


def test_a_bound_below_the_empty_bar_is_refused_with_the_lightest_load() -> None:
    with pytest.raises(LoadError, match=r"upper bound in kg: is 15; should be at least 20"):
        nearest(loadable(CELLAR_BAR, CELLAR), 12, upper_kg=15)


def test_next_below_and_above_are_truly_lighter_and_heavier() -> None:
    table = loadable(CELLAR_BAR, plates({5: 1}))
    lighter, heavier = below(table, 30), above(table, 20)
    assert lighter is not None
    assert heavier is not None
    assert (lighter.kg, heavier.kg) == (20, 30)
    assert below(table, 20) is None
    assert above(table, 30) is None


def test_many_wishes_at_once_are_the_same_as_one_by_one() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    notches = [97.3 * 1.01**notch for notch in range(-20, 21)]
    one_by_one = tuple(nearest(table, kg, upper_kg=110).load for kg in notches)
    assert nearest_many(table, notches, upper_kg=110) == one_by_one


def test_collars_count_on_a_loaded_bar_and_not_on_a_bare_one() -> None:
    """2.5 kg a collar: competition rules of weightlifting, seen in secondary copies."""
    bar = Bar("bar", "Bar", 20.0, collar_mass_kg=2.5)
    table = loadable(bar, plates({25: 1}))
    assert [load.kg for load in table.loads] == [20, 75]


def test_a_lone_plate_stays_off_a_bar_and_goes_on_a_landmine() -> None:
    kit = (Plate(10.0, 1, 0.03), Plate(5.0, 3, 0.02))
    assert [load.kg for load in loadable(CELLAR_BAR, kit).loads] == [20, 30]
    one_sided = loadable(landmine_sleeve(CELLAR_BAR), kit)
    assert [load.kg for load in one_sided.loads] == [0, 5, 10, 15, 20, 25]
    assert nearest(one_sided, 20).load.label == "10 + 5 + 5 on the sleeve"


@pytest.mark.parametrize(("sleeve_m", "thick_plates"), [(0.415, 6), (0.320, 5)])
def test_a_sleeve_holds_as_many_thick_plates_as_its_length(
    sleeve_m: float, thick_plates: int
) -> None:
    """Sleeves of 415 and 320 mm are those of weightlifting's men's and women's bars (seen in
    secondary copies of the rules); 60 mm is the most that powerlifting lets a 20 kg disc be."""
    bar = Bar("bar", "Bar", 20.0, sleeve_length_m=sleeve_m)
    table = loadable(bar, (Plate(20.0, 20, 0.060),))
    assert len(table.loads[-1].plates) == thick_plates


def test_a_bar_has_the_sleeves_of_weightlifting_unless_measured() -> None:
    """2200 mm in all, 1310 mm between shoulders of 30 mm (the rules, seen in secondary copies)."""
    of_the_rules_mm = (2200 - 1310) / 2 - 30
    assert Bar("bar", "Bar", 20.0).sleeve_length_m * 1000 == pytest.approx(of_the_rules_mm)


def test_on_a_short_sleeve_thin_plates_win_over_few() -> None:
    """Two bumpers of 60 mm would be fewest, but only three thin plates fit 100 mm."""
    bar = Bar("bar", "Bar", 20.0, sleeve_length_m=0.100)
    kit = (Plate(15.0, 4, 0.060), Plate(10.0, 6, 0.025))
    assert nearest(loadable(bar, kit), 80).load.side == (10, 10, 10)
    assert nearest(loadable(CELLAR_BAR, kit), 80).load.side == (15, 15)


def test_plates_and_collars_keep_within_the_rated_load() -> None:
    bar = Bar("bar", "Bar", 8.0, rated_load_kg=60.0, collar_mass_kg=0.5)
    heaviest = loadable(bar, plates({10: 4, 5: 1, 2.5: 1})).loads[-1]
    assert heaviest.side == (10, 10, 5, 2.5)
    assert heaviest.kg == 8 + 2 * 0.5 + 55


def test_pound_plates_add_up_without_a_trace_of_rounding() -> None:
    """45 lb = 20.41165665 kg by the definition of the pound (0.45359237 kg)."""
    table = loadable(CELLAR_BAR, pounds((45, 2), (2.5, 2), (1.25, 4)) + plates({20: 1}))
    load = nearest(table, 20 + 2 * 20.41165665).load
    assert load.kg == 60.8233133
    two_small = nearest(table, 20 + 2 * 2.5 * KG_PER_LB).load
    assert [plate.label for plate in two_small.plates] == ["2.5 lb"]


def test_other_plates_for_the_same_load_come_fewest_first() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    load = nearest(table, 60).load
    sides = [[p.mass_kg for p in stack] for stack in alternatives(table, load, more_plates=2)]
    assert sides == [[20], [15, 5], [10, 10], [10, 5, 5]]


def test_the_label_says_what_to_hang() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    assert nearest(table, 92.5).load.label == "20 + 15 + 1.25 on each side"
    assert nearest(table, 20).load.label == "nothing on the bar"


def test_a_bar_without_plates_loads_itself() -> None:
    assert [load.kg for load in loadable(CELLAR_BAR, ()).loads] == [20]


def test_a_sort_that_is_listed_twice_makes_a_pair() -> None:
    kit = (Plate(10.0, 1, 0.03), Plate(10.0, 1, 0.03))
    assert loadable(CELLAR_BAR, kit).loads[-1].side == (10,)


@pytest.mark.parametrize(
    ("plate", "message"),
    [
        (Plate(float("nan"), 2, 0.02), "plate mass in kg: is nan; should be a number above 0"),
        (Plate(-5.0, 2, 0.02), "plate mass in kg: is -5.0"),
        (Plate(5.0, -2, 0.02), "number of plates of 5 kg: is -2; should be a whole number from 0"),
        (Plate(5.0, 2000, 0.02), "number of plates of 5 kg: is 2000; should be 200 or fewer"),
        (Plate(5.0, 2, 0.0), "thickness in m of the plate of 5 kg: is 0.0; should be 0.001 or"),
        (Plate(5.0, 2, float("nan")), "thickness in m of the plate of 5 kg: is nan"),
    ],
)
def test_a_plate_that_cannot_be_is_refused_with_what_would_be_right(
    plate: Plate, message: str
) -> None:
    with pytest.raises(LoadError, match=message):
        loadable(CELLAR_BAR, (plate,))


@pytest.mark.parametrize(
    ("bar", "message"),
    [
        (Bar("b", "B", 0.0), "b: mass of the bar in kg: is 0.0"),
        (Bar("b", "B", 20.0, sleeve_length_m=-1.0), "b: sleeve length in m: is -1.0"),
        (Bar("b", "B", 20.0, rated_load_kg=float("inf")), "b: rated load in kg: is inf"),
        (Bar("b", "B", 20.0, collar_mass_kg=-0.5), "b: collar mass in kg: is -0.5"),
    ],
)
def test_a_bar_that_cannot_be_is_refused_with_its_key(bar: Bar, message: str) -> None:
    with pytest.raises(LoadError, match=message):
        loadable(bar, CELLAR)


def test_more_sorts_than_anybody_owns_are_refused() -> None:
    kit = tuple(Plate(1.0 + n / 7, 2, 0.01) for n in range(25))
    with pytest.raises(LoadError, match="sorts of plates in the kit: is 25; should be 24 at most"):
        loadable(CELLAR_BAR, kit)


def test_plates_of_too_many_odd_masses_are_refused_before_they_fill_the_memory() -> None:
    kit = tuple(Plate(1.0 + 2.0**-n, 4, 0.001) for n in range(24))
    with pytest.raises(LoadError, match="sums of the plates"):
        loadable(CELLAR_BAR, kit)


@pytest.mark.parametrize("wish", [float("nan"), float("inf"), -1.0])
def test_a_wish_that_is_no_mass_is_refused(wish: float) -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    with pytest.raises(LoadError, match="wished load in kg"):
        nearest(table, wish)
    with pytest.raises(LoadError, match="wished load in kg"):
        nearest_many(table, [60.0, wish])


def test_a_refusal_carries_where_what_and_right_apart() -> None:
    with pytest.raises(LoadError) as caught:
        nearest(loadable(CELLAR_BAR, CELLAR), -1.0)
    refusal = caught.value
    assert (refusal.where, refusal.what) == ("wished load in kg", "is -1.0")
    assert refusal.right == "should be 0 or a number above 0"


def test_a_load_without_sleeves_has_a_bare_label() -> None:
    assert Load(20.0).label == "nothing"
