"""Every rule of progression, week by week, and what it refuses."""

from dataclasses import replace

import pytest
from tests.domain.program.plans import (
    block,
    exercise,
    kg,
    one_day,
    percent,
    session,
    sets,
    week,
)
from tests.domain.program.unfoldings import kilograms, loads, percents, plans, with_rule

from undercroft.domain.errors import DomainError
from undercroft.domain.program import progression
from undercroft.domain.program.block import Block
from undercroft.domain.program.methods import Method
from undercroft.domain.program.progression import (
    AddKg,
    AddPercent,
    DoubleProgression,
    FallingReserve,
    LightWeek,
    PercentByWeek,
    Repeat,
    RisingSets,
    Wave,
)
from undercroft.domain.program.rig import Part, Rig
from undercroft.domain.program.unfolding import Unfoldable, unfold
from undercroft.domain.program.wish import (
    AsLastTime,
    BodyMass,
    ByReserve,
    OfTopSet,
    Unloaded,
)


class TestRules:
    def test_kilograms_are_added_week_by_week(self):
        assert kilograms(unfold(with_rule(AddKg(2.5), kg(100)), 4)) == [100, 102.5, 105, 107.5]

    def test_kilograms_may_fall(self):
        assert kilograms(unfold(with_rule(AddKg(-5), kg(100)), 3)) == [100, 95, 90]

    def test_kilograms_on_the_body_rise_and_help_falls(self):
        whole = unfold(with_rule(AddKg(5), BodyMass(10), BodyMass(-20)), 3)
        assert [load.add_kg for load in loads(whole, 0)] == [10, 15, 20]
        assert [load.add_kg for load in loads(whole, 1)] == [-20, -15, -10]

    def test_as_last_time_takes_one_step_a_week_since_last_time_moves_by_itself(self):
        whole = unfold(with_rule(AddKg(2.5), AsLastTime(start_kg=60)), 4)
        assert [load.add_kg for load in loads(whole)] == [0, 2.5, 2.5, 2.5]

    def test_percent_is_in_points_of_the_maximum(self):
        assert percents(unfold(with_rule(AddPercent(2.5), percent(70)), 3)) == [70, 72.5, 75]

    def test_percent_of_kilograms_is_of_the_first_weeks(self):
        assert kilograms(unfold(with_rule(AddPercent(5), kg(80)), 3)) == [80, 84, 88]

    def test_percentages_by_week_set_the_first_week_too_and_hold_the_last(self):
        whole = unfold(with_rule(PercentByWeek((75, 80, 85)), percent(70)), 5)
        assert percents(whole) == [75, 80, 85, 85, 85]

    def test_lighter_sets_keep_their_distance_from_the_heaviest(self):
        whole = unfold(with_rule(PercentByWeek((75, 80)), percent(65), percent(70)), 2)
        assert (percents(whole, 0), percents(whole, 1)) == ([70, 75], [75, 80])

    def test_back_offs_follow_their_top_set_by_themselves(self):
        whole = unfold(with_rule(PercentByWeek((85, 90)), percent(85), OfTopSet(90)), 2)
        assert percents(whole, 0) == [85, 90]
        assert loads(whole, 1) == [OfTopSet(90), OfTopSet(90)]

    def test_a_wave_comes_again_a_step_higher(self):
        whole = unfold(with_rule(Wave((70, 75, 80), 2.5), percent(70)), 7)
        assert percents(whole) == [70, 75, 80, 72.5, 77.5, 82.5, 75]

    def test_a_wave_without_a_step_comes_again_as_it_was(self):
        assert percents(unfold(with_rule(Wave((70, 80)), percent(70)), 4)) == [70, 80, 70, 80]

    def test_double_progression_adds_repetitions_then_load(self):
        whole = unfold(with_rule(DoubleProgression(8, 10, 2.5), kg(40), reps=8), 7)
        assert [plan.sets[0].reps for plan in plans(whole)] == [8, 9, 10, 8, 9, 10, 8]
        assert kilograms(whole) == [40, 40, 40, 42.5, 42.5, 42.5, 45]

    def test_double_progression_as_last_time_adds_only_when_a_round_begins(self):
        whole = unfold(with_rule(DoubleProgression(8, 9, 5), AsLastTime(), reps=8), 5)
        assert [load.add_kg for load in loads(whole)] == [0, 0, 5, 0, 5]

    def test_reserve_falls_for_the_set_and_for_a_load_found_by_it(self):
        whole = unfold(with_rule(FallingReserve((3, 2, 1)), ByReserve(4), percent(70)), 4)
        assert [load.rir for load in loads(whole, 0)] == [3, 2, 1, 1]
        assert [plan.sets[1].rir for plan in plans(whole)] == [3, 2, 1, 1]
        assert percents(whole, 1) == [70, 70, 70, 70]

    def test_a_set_to_failure_has_no_reserve_to_fall(self):
        plan = exercise("back-squat", sets(2, to_failure=True), progression=FallingReserve((2, 1)))
        assert plans(unfold(one_day(plan), 2))[1].sets[0].rir is None

    def test_sets_rise_under_keys_of_their_own_and_may_fall(self):
        whole = unfold(with_rule(RisingSets((2, 4, 1)), percent(70), percent(75)), 3)
        assert [len(plan.sets) for plan in plans(whole)] == [2, 4, 1]
        keys = [one.key for one in plans(whole)[1].sets]
        first = "back-squat.s"
        assert keys == [f"{first}1", f"{first}2", f"{first}2.s3", f"{first}2.s4"]
        assert percents(whole, 0) == [70, 70, 70]

    def test_a_light_week_is_at_its_factor(self):
        rule = LightWeek(every=4, factor=0.8)
        assert percents(unfold(with_rule(rule, percent(75)), 5)) == [75, 75, 75, 60, 75]
        assert kilograms(unfold(with_rule(rule, kg(100)), 4)) == [100, 100, 100, 80]

    def test_a_light_week_asks_for_no_reserve_since_a_lighter_load_leaves_more(self):
        plan = exercise("back-squat", sets(2, 5, percent(80), rir=3), progression=LightWeek(2, 0.6))
        heavy, light = plans(unfold(one_day(plan), 2))
        assert [one.rir for one in heavy.sets] == [3, 3]
        assert [(one.load.percent, one.rir) for one in light.sets] == [(48, None)] * 2

    def test_a_light_week_without_a_written_load_has_fewer_sets(self):
        rule = LightWeek(every=2, factor=0.6)
        whole = unfold(with_rule(rule, *[ByReserve(2)] * 4), 2)
        assert [len(plan.sets) for plan in plans(whole)] == [4, 3]

    def test_repeat_repeats(self):
        first, second = plans(unfold(with_rule(Repeat(), percent(70), percent(75)), 2))
        assert second == replace(first, progression=None)

    def test_no_rule_repeats_as_well(self):
        first, second = plans(unfold(with_rule(None, percent(70)), 2))
        assert second == first

    def test_a_test_week_tries_the_maximum(self):
        rig = Rig(Part.BANDS, 25)
        whole = unfold(with_rule(progression.TestWeek(3), percent(80), rig=rig, group="A"), 3)
        assert [plan.method for plan in plans(whole)[:2]] == [Method.STRAIGHT] * 2
        test = plans(whole)[2]
        assert test.method is Method.MAXIMUM_TEST
        assert [(one.reps, one.load.percent) for one in test.sets] == [
            (1, 90), (1, 95), (1, 100), (1, 102.5),
        ]  # fmt: skip
        assert (test.rig, test.group) == (None, None)


class TestLightWeekOfTheWholeBlock:
    LIGHT = LightWeek(every=4, factor=0.8)

    def test_the_rules_go_on_after_it_where_they_were(self):
        whole = unfold(with_rule(AddKg(5), kg(100)), 6, self.LIGHT)
        assert kilograms(whole) == [100, 105, 110, 88, 115, 120]

    def test_as_last_time_takes_no_step_in_it(self):
        whole = unfold(with_rule(AddKg(5), AsLastTime()), 5, self.LIGHT)
        assert [load.add_kg for load in loads(whole)] == [0, 5, 5, 0, 5]

    def test_its_name_says_so(self):
        whole = unfold(with_rule(None, percent(70)), 4, self.LIGHT)
        assert [one.name for one in whole.weeks] == ["Week 1", "Week 2", "Week 3", "Week 4, light"]

    def test_every_week_cannot_be_light(self):
        with pytest.raises(DomainError, match="every second at most"):
            unfold(with_rule(None, percent(70)), 4, LightWeek(1, 0.5))


class TestRefusals:
    @pytest.mark.parametrize("rule", [AddKg(2.5), DoubleProgression(8, 10, 2.5)])
    def test_kilograms_cannot_be_added_to_a_percentage(self, rule):
        with pytest.raises(Unfoldable, match=r"week 1, Monday, exercise 1 \(back-squat\)"):
            unfold(with_rule(rule, percent(70)), 3)

    @pytest.mark.parametrize("rule", [PercentByWeek((70, 75)), Wave((70, 75))])
    def test_percentages_need_a_set_of_the_maximum(self, rule):
        with pytest.raises(Unfoldable, match="no set is written as % of a maximum"):
            unfold(with_rule(rule, kg(100)), 3)

    @pytest.mark.parametrize("load", [AsLastTime(), ByReserve(2), Unloaded()])
    def test_percent_cannot_be_added_where_no_number_stands(self, load):
        with pytest.raises(Unfoldable, match="no set has a percentage or kilograms"):
            unfold(with_rule(AddPercent(2.5), load), 3)

    def test_loads_that_would_fall_to_nothing_are_refused_with_their_week(self):
        with pytest.raises(Unfoldable, match=r"week 4, Monday.*set 1 would come to 0 kg"):
            unfold(with_rule(AddKg(-20), kg(60)), 6)

    def test_percentages_beyond_belief_are_refused(self):
        with pytest.raises(
            Unfoldable, match="155 % of the maximum; should stay above 0 and to 150"
        ):
            unfold(with_rule(AddPercent(15), percent(95)), 6)

    def test_double_progression_rises(self):
        with pytest.raises(Unfoldable, match="from 10 to 8 repetitions; should rise"):
            unfold(with_rule(DoubleProgression(10, 8, 2.5), kg(40)), 3)

    @pytest.mark.parametrize("weeks", [0, 1, 53])
    def test_weeks_cannot_be_fewer_than_there_are_nor_more_than_a_year(self, weeks):
        two = block(week(session(exercise())), week(session(exercise()), number=2))
        with pytest.raises(DomainError, match="should be from 2, which the block has, to 52"):
            unfold(two, weeks)

    def test_a_block_without_a_week_has_nothing_to_unfold(self):
        with pytest.raises(DomainError, match="write one week first"):
            unfold(Block("b", "B", ()), 4)

    def test_a_week_alone_unfolds_as_well(self):
        one = week(session(exercise()))
        assert unfold(one, 3).weeks == unfold(block(one), 3).weeks
