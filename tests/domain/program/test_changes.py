"""What a coach reads before sending, and an athlete after: differences in words."""

from dataclasses import replace

from undercroft.documents.catalogue import catalogue
from undercroft.domain.program.block import Block, ExercisePlan, Rest, SessionPlan, SetPlan, Week
from undercroft.domain.program.changes import changes
from undercroft.domain.program.methods import Method
from undercroft.domain.program.wish import AsLastTime, Fixed, LoadWish, OfMaximum

EIGHTY = Fixed(80)


def sets(count: int, reps: int, load: LoadWish = EIGHTY) -> tuple[SetPlan, ...]:
    return tuple(SetPlan(f"s{i}", load, reps) for i in range(count))


def squat(*planned: SetPlan) -> ExercisePlan:
    return ExercisePlan("a", "back-squat", Method.STRAIGHT, planned, rest=Rest(120, 180))


def block(*exercises: ExercisePlan, day: int = 2) -> Block:
    session = SessionPlan("tue", "Legs", day, exercises)
    return Block("b", "Base", (Week("w1", "Week 1", (session,)),))


def told(old: Block, new: Block) -> list[str]:
    return list(changes(old, new, catalogue()))


def test_fewer_sets_are_told_without_the_load_that_stays() -> None:
    said = told(block(squat(*sets(5, 5))), block(squat(*sets(4, 5))))
    assert said == ["Week 1, Tuesday: back squat 4 × 5 instead of 5 × 5"]


def test_another_load_is_told_without_the_repetitions_that_stay() -> None:
    said = told(block(squat(*sets(5, 5))), block(squat(*sets(5, 5, Fixed(82.5)))))
    assert said == ["Week 1, Tuesday: back squat 82.5 kg instead of 80 kg"]


def test_a_load_that_changes_in_some_sets_is_told_for_all_of_them() -> None:
    first, *rest = sets(5, 5)
    raised = replace(first, load=Fixed(85))
    said = told(block(squat(first, *rest)), block(squat(raised, *rest)))
    assert said == ["Week 1, Tuesday: back squat 1 × 85 kg, 4 × 80 kg instead of 80 kg"]


def test_another_scheme_with_another_load_is_told_whole() -> None:
    said = told(block(squat(*sets(5, 5))), block(squat(*sets(3, 3, OfMaximum(85)))))
    assert said == ["Week 1, Tuesday: back squat 3 × 3 at 85 % instead of 5 × 5 at 80 kg"]


def test_the_reserve_is_told_where_it_changes_and_not_where_it_stays() -> None:
    three, four = sets(3, 5), sets(4, 5)
    with_two = tuple(replace(one, rir=2) for one in three)
    kept = tuple(replace(one, rir=2) for one in four)
    said = told(block(squat(*kept)), block(squat(*with_two)))
    assert said == ["Week 1, Tuesday: back squat 3 × 5 instead of 4 × 5"]
    harder = tuple(replace(one, rir=1) for one in three)
    said = told(block(squat(*with_two)), block(squat(*harder)))
    assert said == [
        "Week 1, Tuesday: back squat 3 × 5 (1 in reserve) instead of 3 × 5 (2 in reserve)"
    ]


def test_as_last_time_is_told_with_what_is_added() -> None:
    said = told(block(squat(*sets(3, 8))), block(squat(*sets(3, 8, AsLastTime(2.5)))))
    assert said == ["Week 1, Tuesday: back squat last time +2.5 kg instead of 80 kg"]


def test_a_longer_rest_and_a_cue_are_told_in_one_line() -> None:
    old = squat(*sets(3, 5))
    new = replace(old, rest=Rest(240, 240), cue="Slow down")
    said = told(block(old), block(new))
    assert said == ["Week 1, Tuesday: back squat rest 240 s instead of 120–180 s, with another cue"]


def test_another_exercise_in_the_same_place_takes_the_place_of_the_first() -> None:
    old = squat(*sets(3, 5))
    said = told(block(old), block(replace(old, exercise="front-squat")))
    assert said == ["Week 1, Tuesday: front squat in place of back squat"]


def test_a_session_on_another_day_moves() -> None:
    said = told(block(squat(*sets(3, 5))), block(squat(*sets(3, 5)), day=4))
    assert said == ["Legs moves from Week 1, Tuesday to Week 1, Thursday"]


def test_what_nobody_put_into_words_is_still_told_as_changed() -> None:
    old = squat(*sets(3, 5))
    said = told(block(old), block(replace(old, hold_the_plan=True)))
    assert said == ["Week 1, Tuesday: back squat has changed"]
