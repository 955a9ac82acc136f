"""Maximal sprints: rest enough to be fast again."""

from collections.abc import Iterator

from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.line import Line
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method

SPRINTS = frozenset(
    {"sprint", "flying-sprint", "falling-start-sprint", "hill-sprint", "sled-sprint"}
)
"""Exercises of the catalogue that are run as fast as possible."""


@check(
    "sprint-rest",
    Severity.WARN,
    looks_for="rests after maximal sprints that are too short for speed",
    message="{rest} after {metres:g} m at full speed: the next run will be slower",
    mend="from {least:.0f} s on; shorter rests train something else, so say so if that is meant",
    thresholds=("sprint_rest_s", "sprint_from_m", "sprint_rest_s_per_10_m", "sprint_most_m"),
)
def sprint_rest(context: CheckContext) -> Iterator[Found]:
    for line in context.ahead:
        metres = _metres(line)
        if metres is None or metres > context.thresholds.sprint_most_m:
            continue
        least = needed_rest_s(context, metres)
        rest = line.plan.rest
        if rest is None or rest.from_s < least - 1e-9:
            words = "no rest is written" if rest is None else f"a rest from {rest.from_s} s on"
            yield Found(line.place, {"rest": words, "metres": metres, "least": least})


def needed_rest_s(context: CheckContext, metres: float) -> float:
    """Full recovery from the longer distances on, a minute for each ten metres below them."""
    limits = context.thresholds
    if metres >= limits.sprint_from_m:
        return limits.sprint_rest_s
    return metres / 10 * limits.sprint_rest_s_per_10_m


def _metres(line: Line) -> float | None:
    """The longest run of a maximal sprint that is run more than once."""
    if line.plan.method is not Method.TIMED or line.plan.exercise not in SPRINTS:
        return None
    runs = [one.distance_m for one in line.plan.sets if one.distance_m is not None]
    return max(runs) if len(runs) > 1 else None


CHECKS: tuple[Check, ...] = (sprint_rest,)
