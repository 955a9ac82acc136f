"""A week unfolded into a block: what stays, keys, names, and the table of loads."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from tests.domain.program.plans import (
    block,
    exercise,
    kg,
    one_day,
    order,
    percent,
    session,
    sets,
    week,
)
from tests.domain.program.unfoldings import plans, with_rule

from undercroft.documents.block import BlockShape
from undercroft.domain.program import progression
from undercroft.domain.program.block import Block, Rest
from undercroft.domain.program.progression import (
    AddKg,
    AddPercent,
    DoubleProgression,
    FallingReserve,
    LightWeek,
    Repeat,
    RisingSets,
)
from undercroft.domain.program.unfolding import load_table, unfold
from undercroft.domain.program.unfolding.keys import derived
from undercroft.domain.program.wish import (
    Fixed,
    OfMaximum,
)
from undercroft.domain.sheet import work_out


class TestWhatStays:
    def test_everything_that_no_rule_moves_is_the_same_in_every_week(self):
        plan = exercise(
            "bench-press",
            sets(3, 4, rir=2),
            group="A",
            rest=Rest(75, 90),
            cue="Feet planted",
            tolerance_percent=1.0,
            progression=AddPercent(2.5),
        )
        for later in plans(unfold(one_day(plan), 3))[1:]:
            same = replace(later, sets=plan.sets, progression=plan.progression)
            assert same == plan
            assert [one.key for one in later.sets] == [one.key for one in plan.sets]

    def test_the_rule_stays_on_the_first_week_alone(self):
        rules = [plan.progression for plan in plans(unfold(with_rule(AddKg(5), kg(50)), 3))]
        assert rules == [AddKg(5), None, None]

    def test_each_exercise_follows_its_own_rule(self):
        day = session(
            exercise("back-squat", sets(1, load=kg(100)), progression=AddKg(5)),
            exercise("barbell-row", sets(1, load=percent(60)), progression=AddPercent(5)),
        )
        second = unfold(block(week(day)), 2).weeks[1].sessions[0]
        assert second.exercises[0].sets[0].load == Fixed(105)
        assert second.exercises[1].sets[0].load == OfMaximum(65)


class TestKeys:
    TWO_DAYS = block(week(session(exercise(), day=1), session(exercise(), day=4)))

    def test_sessions_and_weeks_take_keys_from_the_first_week(self):
        whole = unfold(self.TWO_DAYS, 3)
        keys = [one.key for one in whole.weeks for one in one.sessions]
        assert keys == [
            "w1.day1", "w1.day4", "w1.day1.w2", "w1.day4.w2", "w1.day1.w3", "w1.day4.w3",
        ]  # fmt: skip
        assert [one.key for one in whole.weeks] == ["w1", "w1.w2", "w1.w3"]

    def test_unfolding_again_gives_the_same_keys(self):
        assert unfold(self.TWO_DAYS, 4) == unfold(self.TWO_DAYS, 4)

    def test_a_block_grows_by_unfolding_it_again(self):
        assert unfold(unfold(self.TWO_DAYS, 3), 6) == unfold(self.TWO_DAYS, 6)

    def test_weeks_that_the_coach_has_edited_stay(self):
        whole = unfold(with_rule(AddKg(5), kg(100)), 3)
        edited = replace(whole.weeks[1], name="In the valley", sessions=())
        again = unfold(replace(whole, weeks=(whole.weeks[0], edited, whole.weeks[2])), 4)
        assert again.weeks[1] == edited
        assert again.weeks[3].sessions[0].exercises[0].sets[0].load == Fixed(115)

    def test_after_a_week_was_taken_out_no_key_comes_twice(self):
        whole = unfold(self.TWO_DAYS, 4)
        shorter = replace(whole, weeks=(whole.weeks[0], *whole.weeks[2:]))
        again = unfold(shorter, 5)
        keys = [one.key for each in again.weeks for one in each.sessions]
        assert len(set(keys)) == len(keys) == 10

    @given(st.from_regex(r"[a-z0-9][a-z0-9._-]{0,63}", fullmatch=True), st.integers(2, 52))
    def test_every_derived_key_is_a_key(self, key, number):
        made = derived(key, number, "w")
        assert len(made) <= 64
        assert made.endswith(f".w{number}")
        assert made[0] == key[0]

    def test_long_keys_that_differ_at_their_end_stay_different(self):
        one, other = "k" * 63 + "a", "k" * 63 + "b"
        assert derived(one, 2, "w") != derived(other, 2, "w")

    def test_an_unfolded_block_is_a_valid_document(self):
        whole = unfold(with_rule(RisingSets((2, 5)), percent(70), percent(70)), 12)
        shape = BlockShape()
        assert shape.load(shape.dump(whole)) == whole


class TestNames:
    def test_a_number_counts_on(self):
        whole = unfold(self.week_named("Block 2, week 1"), 3)
        assert [one.name for one in whole.weeks][1:] == ["Block 2, week 2", "Block 2, week 3"]

    def test_a_name_without_one_gets_it(self):
        whole = unfold(self.week_named("Before the ridge"), 2)
        assert whole.weeks[1].name == "Before the ridge, week 2"

    @staticmethod
    def week_named(name: str) -> Block:
        return block(replace(week(session(exercise())), name=name))


RULES = st.sampled_from(
    [
        AddKg(2.5),
        AddPercent(1),
        DoubleProgression(5, 8, 2.5),
        FallingReserve((3, 2, 1)),
        RisingSets((2, 3, 4)),
        LightWeek(4, 0.8),
        Repeat(),
        progression.TestWeek(5),
        None,
    ]
)


@given(RULES, st.integers(1, 12), st.integers(0, 12))
def test_any_block_may_be_unfolded_in_two_goes(rule, weeks, more):
    start = with_rule(rule, kg(60), kg(62.5))
    assert unfold(unfold(start, weeks), weeks + more) == unfold(start, weeks + more)


@given(RULES, st.integers(1, 20))
def test_keys_are_unique_where_they_must_be(rule, weeks):
    whole = unfold(with_rule(rule, kg(60), kg(62.5)), weeks)
    keys = [one.key for each in whole.weeks for one in each.sessions]
    assert len(set(keys)) == weeks
    for plan in plans(whole):
        assert len({one.key for one in plan.sets}) == len(plan.sets)


def test_the_table_of_loads_shows_an_exercise_through_the_weeks():
    whole = unfold(with_rule(AddKg(5), kg(100), kg(100), kg(90)), 3)
    (row,) = load_table(whole, work_out(order(whole)).sheets)
    assert (row.day, row.exercise, len(row.weeks)) == (1, "back-squat", 3)
    assert [[(cell.count, cell.kg) for cell in cells] for cells in row.weeks] == [
        [(2, 100), (1, 90)],
        [(2, 105), (1, 95)],
        [(2, 110), (1, 100)],
    ]


def test_the_table_leaves_a_week_empty_in_which_an_exercise_does_not_stand():
    whole = unfold(with_rule(AddKg(5), kg(100)), 3)
    gap = replace(
        whole, weeks=(whole.weeks[0], replace(whole.weeks[1], sessions=()), whole.weeks[2])
    )
    (row,) = load_table(gap, work_out(order(gap)).sheets)
    assert [len(cells) for cells in row.weeks] == [1, 0, 1]
