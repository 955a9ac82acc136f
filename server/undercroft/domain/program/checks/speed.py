"""Speed work: few repetitions, rested, not too heavy, and not too many sets."""

from collections.abc import Iterator

from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.line import Line
from undercroft.domain.program.checks.rigs import lockout_kg
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method


@check(
    "speed-reps",
    Severity.WARN,
    looks_for="speed sets of five or more repetitions",
    message="a speed set of {reps} repetitions: the last ones are slow",
    mend="2 or 3 repetitions, and more sets",
    thresholds=("speed_reps",),
)
def speed_reps(context: CheckContext) -> Iterator[Found]:
    for line in _speed(context):
        for one in line.sets():
            if one.plan.reps is not None and one.plan.reps >= context.thresholds.speed_reps:
                yield Found(one.place, {"reps": one.plan.reps})


@check(
    "speed-rest",
    Severity.WARN,
    looks_for="rests below a minute between speed sets",
    message="{rest} between speed sets",
    mend="at least {least:g} s; 75-90 s are usual",
    thresholds=("speed_rest_s",),
)
def speed_rest(context: CheckContext) -> Iterator[Found]:
    least = context.thresholds.speed_rest_s
    for line in _speed(context):
        rest = line.plan.rest
        if len(line.plan.sets) < 2:
            continue
        if rest is None or rest.from_s < least:
            words = "no rest is written" if rest is None else f"a rest from {rest.from_s} s on"
            yield Found(line.place, {"rest": words, "least": least})


@check(
    "speed-lockout",
    Severity.WARN,
    looks_for="bar, bands and chains together above 85 % of the maximum at lockout",
    message="{percent:.0f} % of the maximum at lockout, bands and chains counted",
    mend="at most {most:g} %: a lighter bar or a smaller share of bands",
    thresholds=("speed_lockout_percent",),
)
def speed_lockout(context: CheckContext) -> Iterator[Found]:
    most = context.thresholds.speed_lockout_percent
    for line in _speed(context):
        maximum = line.sheet.maximum if line.sheet else None
        if maximum is None:
            continue
        for one in line.sets():
            kg = lockout_kg(context, one)
            if kg is not None and 100 * kg / maximum.kg > most + 1e-9:
                yield Found(one.place, {"percent": 100 * kg / maximum.kg, "most": most})


@check(
    "speed-sets",
    Severity.WARN,
    looks_for="more speed sets of an exercise than the point where fatigue sets in",
    message="{count} speed sets: power has gone by then",
    mend="at most {most:g} sets; stop earlier when velocity or quality falls",
    thresholds=("speed_sets",),
)
def speed_sets(context: CheckContext) -> Iterator[Found]:
    most = context.thresholds.speed_sets
    for line in _speed(context):
        if len(line.plan.sets) > most:
            yield Found(line.place, {"count": len(line.plan.sets), "most": most})


def _speed(context: CheckContext) -> Iterator[Line]:
    return (line for line in context.ahead if line.plan.method is Method.SPEED)


CHECKS: tuple[Check, ...] = (speed_reps, speed_rest, speed_lockout, speed_sets)
