"""Loads: can this kit make them, and can this athlete lift them?"""

from collections.abc import Iterator
from itertools import pairwise

from undercroft.domain.at_hand import lacking
from undercroft.domain.kit import Kit
from undercroft.domain.loads import LoadTable, kilograms
from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.effort import share
from undercroft.domain.program.checks.line import Line, SetLine
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method, OcclusionRule, Restriction
from undercroft.domain.strength.reserve import FEWEST, MOST
from undercroft.domain.strength.reserve import share as share_of_reps

SAME_KG = 1e-6


@check(
    "kit-missing",
    Severity.STOP,
    looks_for="exercises for which something does not stand in this gym",
    message="not here: {things}",
    mend="take an exercise that this kit can do, or add what is missing to the kit",
    source="the kit as it was written down",
)
def kit_missing(context: CheckContext) -> Iterator[Found]:
    for line in context.ahead:
        missing = list(dict.fromkeys(_missing(context, line)))
        if missing:
            yield Found(line.place, {"things": ", ".join(missing)})


@check(
    "lighter-than-empty",
    Severity.WARN,
    looks_for="loads below the lightest that the bar, stack or dumbbell can be",
    message="{wish:g} kg wished, and the lightest here is {lightest:g} kg",
    mend="a lighter piece, more repetitions at {lightest:g} kg, or for the body help from a band",
    source="the kit as it was written down",
)
def lighter_than_empty(context: CheckContext) -> Iterator[Found]:
    for one in _wished(context):
        table = _table(context, one.line)
        wish = _wish(one)
        if table is not None and wish < table.loads[0].kg - SAME_KG:
            values = {"wish": round(wish, 2), "lightest": table.loads[0].kg}
            yield Found(one.place, values)


@check(
    "load-off",
    Severity.WARN,
    looks_for="loads further off the wish than the tolerance, or than half of the smallest step",
    message="{wish:g} kg wished, and the nearest that this kit makes is {kg:g} kg",
    mend="take {kg:g} kg, another exercise, or smaller plates into the kit",
    thresholds=("load_off_percent", "load_off_kg"),
)
def load_off(context: CheckContext) -> Iterator[Found]:
    for one in _wished(context):
        table, wish = _table(context, one.line), _wish(one)
        if table is None or one.kg is None or wish < table.loads[0].kg - SAME_KG:
            continue
        limits = context.thresholds
        percent = max(limits.load_off_percent, one.line.plan.tolerance_percent)
        # A kit that only makes great steps is not let off by them.
        half_step = min(smallest_step_kg(table) / 2, limits.load_off_kg)
        allowed = max(wish * percent / 100, half_step)
        if abs(one.kg - wish) > allowed + SAME_KG:
            yield Found(one.place, {"wish": round(wish, 2), "kg": one.kg})


@check(
    "above-upper-bound",
    Severity.STOP,
    looks_for="loads that even the upper end of the maximum's 90 % band could not lift so often",
    message="{kg:g} kg for {reps}, and at the very best {bound:.1f} kg would go ({source})",
    mend="a lighter load or fewer repetitions, or test the maximum first",
    source="the tracker's 90 % band and the load chart of the NSCA's Essentials (seen)",
)
def above_upper_bound(context: CheckContext) -> Iterator[Found]:
    for line in context.ahead:
        maximum = line.sheet.maximum if line.sheet else None
        if maximum is None or line.plan.method is Method.OCCLUSION:
            continue
        for one in line.sets():
            reps = one.plan.reps or FEWEST
            if one.kg is None or not FEWEST <= reps <= MOST:
                continue
            bound = maximum.high_kg * share_of_reps(reps)
            if one.kg > bound + SAME_KG:
                values = {"kg": one.kg, "reps": reps, "bound": bound, "source": maximum.source}
                yield Found(one.place, values)


@check(
    "above-maximum",
    Severity.WARN,
    looks_for="sets above the maximum outside a test",
    message="{percent:.4g} % of the maximum",
    mend="at most {most:g} % outside a test; make it a maximum test if that is what is meant",
    thresholds=("top_percent",),
)
def above_maximum(context: CheckContext) -> Iterator[Found]:
    most = context.thresholds.top_percent
    for line in context.ahead:
        if line.plan.method is Method.MAXIMUM_TEST:
            continue
        for one in line.sets():
            part = share(one)
            if part is not None and 100 * part > most + SAME_KG:
                yield Found(one.place, {"percent": 100 * part, "most": most})


def smallest_step_kg(table: LoadTable) -> float:
    """The smallest difference between two loads of a table; 0 where there is only one."""
    steps = [after - before for before, after in pairwise(table.grains)]
    return kilograms(min(steps)) if steps else 0.0


def _wished(context: CheckContext) -> Iterator[SetLine]:
    for line in context.ahead:
        for one in line.sets():
            if one.sheet is not None and one.sheet.wish_kg is not None:
                yield one


def _wish(one: SetLine) -> float:
    return one.sheet.wish_kg if one.sheet and one.sheet.wish_kg is not None else 0.0


def _table(context: CheckContext, line: Line) -> LoadTable | None:
    piece = context.pieces.find(line.implement, line.exercise.key)
    return piece.table if piece else None


def _missing(context: CheckContext, line: Line) -> Iterator[str]:
    if context.pieces.find(line.implement, line.exercise.key) is None:
        yield line.implement.replace("-", " ")
    kit = context.order.kit
    yield from lacking(kit, line.exercise)
    yield from _restriction_missing(kit, line)


def _restriction_missing(kit: Kit, line: Line) -> Iterator[str]:
    rule = line.plan.details
    if isinstance(rule, OcclusionRule):
        here = kit.wraps if rule.restriction is Restriction.WRAP else kit.cuffs
        if not here:
            yield f"{rule.restriction.value}s"


CHECKS: tuple[Check, ...] = (
    kit_missing,
    lighter_than_empty,
    load_off,
    above_upper_bound,
    above_maximum,
)
