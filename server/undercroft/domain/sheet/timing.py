"""How long a session takes, roughly: common practice, rounded to five minutes."""

from undercroft.domain.load_sheet import SheetExercise
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import ClusterRule, TempoRule

REP_S = 4.0
SETTING_UP_S = 120.0
WARM_UP_SET_S = 75.0
DEFAULT_REST_S = 90.0


def minutes(done: list[tuple[ExercisePlan, SheetExercise]]) -> int:
    """Setting up, warm-up, work and rests of all exercises; one-sided work counts twice."""
    total = sum(_exercise_s(plan, sheet) for plan, sheet in done)
    return max(5, round(total / 300) * 5)


def _exercise_s(plan: ExercisePlan, sheet: SheetExercise) -> float:
    rest = DEFAULT_REST_S if plan.rest is None else (plan.rest.from_s + plan.rest.to_s) / 2
    work = sum(_set_s(plan, place) for place in range(len(plan.sets)))
    return SETTING_UP_S + WARM_UP_SET_S * len(sheet.ramp) + work + rest * len(plan.sets)


def _set_s(plan: ExercisePlan, place: int) -> float:
    one = plan.sets[place]
    details = plan.details
    rep_s = REP_S
    if isinstance(details, TempoRule):
        rep_s = details.lowering_s + details.pause_low_s + details.lifting_s + details.pause_high_s
    pauses = 0.0
    if isinstance(details, ClusterRule):
        pauses = details.block_rest_s * max(0, len(one.blocks) - 1)
    reps = one.reps or sum(one.blocks)
    sides = 2 if plan.method.value == "one-sided" else 1
    return (one.seconds or 0) + reps * rep_s * sides + pauses
