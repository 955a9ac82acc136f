"""Left and right: unequal without intent."""

from collections import defaultdict
from collections.abc import Iterator

from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method, Side

SIDES_BY_THEMSELVES = frozenset(
    {Method.ONE_SIDED, Method.OCCLUSION, Method.TIMED, Method.HOLD, Method.WARM_UP}
)
"""Methods that say their sides, or need not."""


@check(
    "sides-not-said",
    Severity.NOTE,
    looks_for="one-sided exercises whose plan does not say that both sides get the same",
    message="a one-sided exercise as {method} sets: which side, and how often, is left open",
    mend="the one-sided method, which says the first side and counts both",
    source="sides that nobody counts drift apart; our own choice",
)
def sides_not_said(context: CheckContext) -> Iterator[Found]:
    for line in context.ahead:
        if line.exercise.one_sided and line.plan.method not in SIDES_BY_THEMSELVES:
            yield Found(line.place, {"method": line.plan.method.replace("-", " ")})


@check(
    "sides-differ",
    Severity.NOTE,
    looks_for="exercises of which left and right last did unequal work",
    message="last time the {more} did {percent:.0f} % more than the {less}",
    mend="begin with the {less}, and let the {more} do no more than it; or say that it is meant",
    thresholds=("sides_percent",),
)
def sides_differ(context: CheckContext) -> Iterator[Found]:
    last = _last_work(context)
    told: set[str] = set()
    for line in sorted(context.ahead, key=lambda line: line.on):
        name = line.plan.exercise
        work = last.get(name)
        if work is None or name in told:
            continue
        told.add(name)
        less, more = sorted(Side, key=lambda side: work[side])
        if work[less] <= 0:
            continue
        percent = 100 * (work[more] / work[less] - 1)
        if percent > context.thresholds.sides_percent + 1e-9:
            yield Found(line.place, {"more": more.value, "less": less.value, "percent": percent})


def _last_work(context: CheckContext) -> dict[str, dict[Side, float]]:
    """Load times repetitions of each side, of the last day on which both were recorded."""
    days: dict[tuple[str, int], dict[Side, float]] = defaultdict(lambda: dict.fromkeys(Side, 0.0))
    for one in context.background.done:
        if one.side is not None and one.reps:
            load = 1.0 if one.load_kg is None else one.load_kg
            days[one.exercise, one.on.toordinal()][one.side] += load * one.reps
    both = {day: work for day, work in days.items() if all(work.values())}
    return {name: both[name, on] for name, on in sorted(both)}


CHECKS: tuple[Check, ...] = (sides_not_said, sides_differ)
