"""Bands and chains: can they hang as wished, and do they do what is meant?"""

from collections.abc import Iterator

from undercroft.domain.mechanics import About, rig_kg
from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.line import Line, SetLine
from undercroft.domain.program.checks.rigged import Rigged
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.wish import Point

MEND_BANDS = "another band, anchor or route; the search for bands says which this kit has"


@check(
    "rig-impossible",
    Severity.STOP,
    looks_for="bands or chains that this kit cannot hang as wished, or only by stretching too far",
    message="{where} {what}",
    mend="{right}",
    source="statics, the bands' readings, and 2.5 times the rest length as the most (textbooks)",
    thresholds=("mechanics.most_stretch", "mechanics.beyond_longest"),
)
def rig_impossible(context: CheckContext) -> Iterator[Found]:
    for line, rigged in _rigs(context):
        if rigged.fault is not None:
            fault = rigged.fault
            values = {"where": fault.where, "what": fault.what, "right": fault.right}
            yield Found(line.place, values)


@check(
    "band-beyond-readings",
    Severity.WARN,
    looks_for="bands stretched further than they were measured",
    message="{words}",
    mend="measure the band to that length, or take " + MEND_BANDS,
    source="no tension is known beyond the longest reading",
)
def band_beyond_readings(context: CheckContext) -> Iterator[Found]:
    yield from _remarks(context, About.BEYOND_READINGS)


@check(
    "band-unmeasured",
    Severity.WARN,
    looks_for="bands that nobody has measured",
    message="{words}",
    mend="four readings with a hanging scale, each band by itself",
    thresholds=("mechanics.estimate_doubt",),
)
def band_unmeasured(context: CheckContext) -> Iterator[Found]:
    yield from _remarks(context, About.ESTIMATED)


@check(
    "band-slack",
    Severity.WARN,
    looks_for="bands that are slack at the start of the lift",
    message="{words}",
    mend="a shorter band, a lower anchor, or doubled: " + MEND_BANDS,
    source="tension is zero at and below the rest length",
)
def band_slack(context: CheckContext) -> Iterator[Found]:
    yield from _remarks(context, About.SLACK_AT_START)


@check(
    "chain-idle",
    Severity.WARN,
    looks_for="chains that are as much off the floor all the way",
    message="{words}",
    mend="hang them doubled or on a leader, so that links lie on the floor at the start",
    source="a chain that no link of lies down is a plate",
)
def chain_idle(context: CheckContext) -> Iterator[Found]:
    yield from _remarks(context, About.CHANGES_NOTHING)


@check(
    "band-share",
    Severity.WARN,
    looks_for="bands or chains whose share is outside the planned one by more than five points",
    message="{share:.0f} % of the load from {part}, {planned:.0f} % were planned",
    mend="another share, or " + MEND_BANDS,
    thresholds=("band_share_points",),
)
def band_share(context: CheckContext) -> Iterator[Found]:
    for line, rigged in _rigs(context):
        choice, rig = rigged.choice, line.plan.rig
        if choice is None or rig is None or rig.share_percent is None:
            continue
        off = 100 * choice.off_kg / rigged.load_kg
        if abs(off) > context.thresholds.band_share_points + 1e-9:
            share = 100 * choice.kg / rigged.load_kg
            values = {"share": abs(share), "planned": abs(share - off), "part": rig.part.value}
            yield Found(line.place, values)


@check(
    "bands-uneven",
    Severity.WARN,
    looks_for="left and right bands that differ by more than five percent of the load",
    message="left {left:.1f} kg and right {right:.1f} kg",
    mend="other pairs, or change sides from set to set and say so in the cue",
    thresholds=("band_sides_percent",),
)
def bands_uneven(context: CheckContext) -> Iterator[Found]:
    for line, rigged in _rigs(context):
        if rigged.choice is None or rigged.choice.sides_kg is None:
            continue
        left, right = rigged.choice.sides_kg
        apart = abs(left - right)
        if 100 * apart > context.thresholds.band_sides_percent * rigged.load_kg + 1e-9:
            yield Found(line.place, {"left": left, "right": right})


def lockout_kg(context: CheckContext, one: SetLine) -> float | None:
    """What a set comes to at lockout with its bands and chains; None where that is not known."""
    if one.sheet is not None and one.sheet.curve is not None:
        return one.sheet.curve.end_kg
    if one.line.plan.rig is None or one.kg is None:
        return one.kg
    rigged = context.rigs.get(one.line.place.at)
    if rigged is None or rigged.choice is None:
        return None
    return one.kg + rig_kg(rigged.choice.curve, Point.LOCKOUT)


def _rigs(context: CheckContext) -> Iterator[tuple[Line, Rigged]]:
    for line in context.ahead:
        rigged = context.rigs.get(line.place.at)
        if rigged is not None:
            yield line, rigged


def _remarks(context: CheckContext, about: About) -> Iterator[Found]:
    for line, rigged in _rigs(context):
        remarks = rigged.choice.remarks if rigged.choice else ()
        words = [remark.words for remark in remarks if remark.about is about]
        if words:
            yield Found(line.place, {"words": "; ".join(words)})


CHECKS: tuple[Check, ...] = (
    rig_impossible,
    band_beyond_readings,
    band_unmeasured,
    band_slack,
    chain_idle,
    band_share,
    bands_uneven,
)
