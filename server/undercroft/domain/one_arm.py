"""Work of one arm at a time: there is one dumbbell, and it is in the hand that works."""

from undercroft.domain.exercise import Exercise, Muscle
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import Method, OcclusionRule

OF_LEGS = frozenset(
    {
        Muscle.QUADS,
        Muscle.HAMSTRINGS,
        Muscle.GLUTES,
        Muscle.ADDUCTORS,
        Muscle.ABDUCTORS,
        Muscle.HIP_FLEXORS,
        Muscle.CALVES,
        Muscle.SHINS,
    }
)


def with_one_arm(plan: ExercisePlan, exercise: Exercise) -> bool:
    """Is it done one arm at a time? One leg at a time both hands hold a dumbbell still."""
    return _side_by_side(plan) and not OF_LEGS & set(exercise.prime)


def _side_by_side(plan: ExercisePlan) -> bool:
    one_limb = isinstance(plan.details, OcclusionRule) and not plan.details.both_at_once
    return plan.method is Method.ONE_SIDED or one_limb
