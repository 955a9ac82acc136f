"""Which sets belong to an exercise as it was done."""

from undercroft.domain.ledger import SessionRecord
from undercroft.domain.program.block import ExercisePlan


def set_keys(plan: ExercisePlan, record: SessionRecord) -> list[str]:
    """Keys of its sets: those of the plan, and then those that the athlete added."""
    added = [key for key, to in record.added.items() if to in (plan.key, plan.exercise)]
    return [*(one.key for one in plan.sets), *added]
