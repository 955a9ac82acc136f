"""How hard a planned set is: its share of the maximum, its reserve, and whether that is heavy."""

from undercroft.domain.program.checks.line import SetLine
from undercroft.domain.program.methods import Method
from undercroft.domain.program.monitoring.hard_sets import COUNTED_APART, WITHIN_REPS
from undercroft.domain.program.wish import OfMaximum
from undercroft.domain.sheet.turns import planned_rir

LIGHT_BY_NATURE = COUNTED_APART | {Method.OCCLUSION}
"""Methods whose sets are never heavy, however near to failure they end."""


def share(one: SetLine) -> float | None:
    """Share of the exercise's own maximum: as written, or as chosen; None where nobody can say."""
    load, line = one.plan.load, one.line
    if isinstance(load, OfMaximum) and load.of in (None, line.plan.exercise):
        return load.percent / 100 * load.ratio
    maximum = line.sheet.maximum if line.sheet else None
    return None if maximum is None or one.kg is None else one.kg / maximum.kg


def is_heavy(one: SetLine, percent: float, reserve: float) -> bool:
    """At least so many percent of the maximum, or at most so many repetitions in reserve."""
    if one.line.plan.method in LIGHT_BY_NATURE:
        return False
    part, rir = share(one), planned_rir(one.plan)
    return (part is not None and part >= percent / 100 - 1e-9) or (
        rir is not None and rir <= reserve + 1e-9
    )


def is_hard(one: SetLine) -> bool:
    """Within four repetitions of failure as planned; a reserve that is left open counts as such."""
    if one.line.plan.method in COUNTED_APART:
        return False
    rir = planned_rir(one.plan)
    return rir is None or rir <= WITHIN_REPS
