"""Percentage and reserve of one set: two wishes that must agree on how near to failure it ends."""

from collections.abc import Iterator

from undercroft.domain.program.block import SetPlan
from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method
from undercroft.domain.program.wish import OfMaximum
from undercroft.domain.sheet.turns import gives_evidence, planned_set
from undercroft.domain.strength import repetitions_at
from undercroft.domain.strength.reserve import HANDBOOK

LEAST_SHARE = HANDBOOK.shares[-1]
"""Below it the table tells only that the reserve is larger than so much."""

MOST_WRITTEN = 10
"""The largest reserve that a block document takes."""


@check(
    "reserve-contradicts",
    Severity.WARN,
    looks_for="a percentage and a reserve of the same set that contradict each other",
    message=(
        "{reps} repetitions at {percent:g} % leave {left} in reserve, and {written:g} is written:"
        " a set done as planned would read as a changed maximum"
    ),
    mend="write {left} in reserve or none at all, or another percentage",
    source="the load chart of the NSCA's Essentials (seen)",
    thresholds=("reserve_off",),
)
def reserve_contradicts(context: CheckContext) -> Iterator[Found]:
    most = context.thresholds.reserve_off
    for line in context.ahead:
        own = line.plan.exercise
        if line.plan.method is Method.MAXIMUM_TEST or not gives_evidence(line.plan, line.implement):
            continue
        for one in line.sets():
            values = _contradiction(one.plan, own, most)
            if values is not None:
                yield Found(one.place, values)


def _contradiction(one: SetPlan, own: str, most: float) -> dict[str, object] | None:
    """What a set says of itself twice, where that differs by more than `most` repetitions."""
    load, planned = one.load, planned_set(one)
    if not isinstance(load, OfMaximum) or load.of not in (None, own):
        return None
    part = load.percent / 100 * load.ratio
    if one.rir is None or one.to_failure or planned is None or part > 1:
        return None
    left = min(repetitions_at(max(part, LEAST_SHARE)) - planned.reps, MOST_WRITTEN)
    off = one.rir - left
    if abs(off) <= most + 1e-9 or (part < LEAST_SHARE and off > 0):
        return None
    about = f"more than {left:.0f}" if part < LEAST_SHARE else f"about {max(left, 0):.0f}"
    return {"reps": one.reps, "percent": 100 * part, "left": about, "written": one.rir}


CHECKS: tuple[Check, ...] = (reserve_contradicts,)
