"""The athlete: alone or not, injured or not, and what is known of the maxima."""

from collections.abc import Iterator

from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.effort import is_heavy
from undercroft.domain.program.checks.line import Line
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.wish import ByReserve, OfMaximum
from undercroft.domain.strength import SetDone


@check(
    "alone-without-safeties",
    Severity.STOP,
    looks_for="heavy lifts that can end on the lifter, alone and without safeties",
    message="heavy, alone, and nothing that would catch the bar",
    mend="safeties or a spotter; or dumbbells; or {most:g} % with more than {reserve:g} in reserve",
    thresholds=("alone_percent", "alone_reserve"),
)
def alone_without_safeties(context: CheckContext) -> Iterator[Found]:
    athlete, kit, limits = context.order.athlete, context.order.kit, context.thresholds
    if not athlete.trains_alone or any(one.safeties for one in kit.supports):
        return
    for line in context.ahead:
        if not line.exercise.needs_safeties:
            continue
        for one in line.sets():
            if is_heavy(one, limits.alone_percent, limits.alone_reserve):
                most = limits.alone_percent - 5
                yield Found(one.place, {"most": most, "reserve": limits.alone_reserve})
                break


@check(
    "injury",
    Severity.STOP,
    looks_for="exercises that are on record as to be avoided for an injury",
    message="to be avoided for the {where}{note}",
    mend="take another exercise, or change the injury's record if it has healed",
    source="the athlete's own record of injuries",
)
def injury(context: CheckContext) -> Iterator[Found]:
    for line in context.ahead:
        for hurt in context.order.athlete.injuries:
            if line.plan.exercise in hurt.avoid:
                note = f" ({hurt.note})" if hurt.note else ""
                yield Found(line.place, {"where": hurt.where, "note": note})


@check(
    "maximum-old",
    Severity.WARN,
    looks_for="loads that rest on a maximum of which nothing was heard for twelve weeks",
    message="nothing was heard of the maximum of {lift} for {weeks:.1f} weeks before",
    mend="test it, or begin by reserve; at most {most:g} weeks",
    thresholds=("maximum_weeks",),
)
def maximum_old(context: CheckContext) -> Iterator[Found]:
    most = context.thresholds.maximum_weeks
    for line, lift in _first_uses(context):
        known = context.order.standing.lifts.get(lift)
        if known is None:
            continue
        days = line.on.toordinal() - known.state.at_days
        if days > 7 * most:
            values = {"lift": _name(context, lift), "weeks": days / 7, "most": most}
            yield Found(line.place, values)


@check(
    "maximum-from-long-sets",
    Severity.WARN,
    looks_for="loads that rest on a maximum estimated from sets of more than ten repetitions alone",
    message="the maximum of {lift} is estimated from sets of {reps:g} repetitions or more",
    mend="a set of {most:g} repetitions or fewer, or a test, before loads rest on it",
    thresholds=("maximum_reps",),
)
def maximum_from_long_sets(context: CheckContext) -> Iterator[Found]:
    most = context.thresholds.maximum_reps
    given = {one.lift for one in context.order.athlete.maxima}
    for line, lift in _first_uses(context):
        if lift in given:
            continue
        told = [one for done in context.background.told.get(lift, ()) for one in done.evidence]
        reps = [one.reps + one.rir for one in told if isinstance(one, SetDone)]
        if reps and len(reps) == len(told) and min(reps) > most:
            values = {"lift": _name(context, lift), "reps": min(reps), "most": most}
            yield Found(line.place, values)


def _first_uses(context: CheckContext) -> Iterator[tuple[Line, str]]:
    """The first exercise whose loads rest on each lift's maximum: its own sets tell for later."""
    seen: set[str] = set()
    for line in sorted(context.ahead, key=lambda line: line.on):
        for lift in dict.fromkeys(_lifts(line)):
            if lift not in seen:
                seen.add(lift)
                yield line, lift


def _lifts(line: Line) -> Iterator[str]:
    for one in line.plan.sets:
        if isinstance(one.load, OfMaximum):
            yield one.load.of or line.plan.exercise
        elif isinstance(one.load, ByReserve):
            yield line.plan.exercise


def _name(context: CheckContext, lift: str) -> str:
    known = context.order.catalogue.get(lift)
    return known.name.lower() if known else lift


CHECKS: tuple[Check, ...] = (alone_without_safeties, injury, maximum_old, maximum_from_long_sets)
