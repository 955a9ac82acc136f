"""A block of one week under one rule, and what its weeks become."""

from tests.domain.program.plans import exercise, one_day

from undercroft.domain.program.block import Block, ExercisePlan, SetPlan
from undercroft.domain.program.progression import Progression


def with_rule(rule: Progression | None, *loads, reps: int | None = 5, **fields) -> Block:
    """A block of one week with one exercise under a rule, a set for each load."""
    plan_sets = tuple(SetPlan(f"s{n}", load, reps) for n, load in enumerate(loads, start=1))
    return one_day(exercise("back-squat", plan_sets, progression=rule, **fields))


def plans(whole: Block) -> list[ExercisePlan]:
    return [one.sessions[0].exercises[0] for one in whole.weeks]


def loads(whole: Block, place: int = 0) -> list:
    return [plan.sets[place].load for plan in plans(whole)]


def percents(whole: Block, place: int = 0) -> list[float]:
    return [load.percent for load in loads(whole, place)]


def kilograms(whole: Block, place: int = 0) -> list[float]:
    return [load.kg for load in loads(whole, place)]
