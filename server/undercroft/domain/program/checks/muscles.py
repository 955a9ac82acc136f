"""Muscles: time to recover between heavy days, and hard sets week by week."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.effort import LIGHT_BY_NATURE, is_hard, is_heavy
from undercroft.domain.program.checks.line import SessionLines
from undercroft.domain.program.checks.place import week_place
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.monitoring import DoneSet, counts_for, hard_sets

WEEKS_BEFORE = 4
"""A week is compared with the most of so many before it, so that a light week makes no jump."""


@dataclass(frozen=True, slots=True)
class _Heavy:
    """A day and the muscles that work heavily on it; `session` where it is planned."""

    on: date
    muscles: frozenset[str]
    session: SessionLines | None = None


@check(
    "heavy-too-soon",
    Severity.WARN,
    looks_for="the same muscles heavy again within 48 hours",
    message="{muscles} heavy again {hours}",
    mend="at least {least:g} h between, or make one of the two days lighter",
    thresholds=("recovery_h", "heavy_percent", "heavy_reserve"),
)
def heavy_too_soon(context: CheckContext) -> Iterator[Found]:
    least = context.thresholds.recovery_h
    before: list[_Heavy] = []
    for day in _heavy_days(context):
        near = [(24 * (day.on - one.on).days, day.muscles & one.muscles) for one in before]
        close = [(hours, both) for hours, both in near if hours < least and both]
        if close and day.session is not None and day.session.sheet is not None:
            hours = min(hours for hours, _ in close)
            muscles = sorted(set().union(*(both for _, both in close)))
            values = {"muscles": _words(muscles), "hours": _after(hours), "least": least}
            yield Found(day.session.place, values)
        before.append(day)


@check(
    "sets-jump",
    Severity.WARN,
    looks_for="a week with more than 30 % more hard sets of a muscle than any of the four before",
    message="{muscle}: {sets:g} hard sets, after {before:g} at the most in the weeks before",
    mend="at most {most:g} sets here, or a step in between",
    thresholds=("jump_percent", "jump_sets"),
)
def sets_jump(context: CheckContext) -> Iterator[Found]:
    limits = context.thresholds
    weeks = _weeks_before(context)
    known = len(weeks)
    weeks += _planned_weeks(context)
    for at in range(known, len(weeks)):
        earlier = weeks[max(0, at - WEEKS_BEFORE) : at]
        if not earlier or not _is_ahead(context, at - known):
            continue
        for muscle, sets in sorted(weeks[at].items()):
            before = max(week.get(muscle, 0.0) for week in earlier)
            most = before * (1 + limits.jump_percent / 100)
            if sets > most + 1e-9 and sets - before >= limits.jump_sets - 1e-9:
                values = {"muscle": muscle.replace("-", " "), "sets": sets, "before": before}
                most = max(most // 0.5 * 0.5, before + limits.jump_sets - 0.5)
                yield Found(week_place(at - known), {**values, "most": most})


@check(
    "sets-ceiling",
    Severity.WARN,
    looks_for="more hard sets of a muscle in a week than the athlete's ceiling",
    message="{muscle}: {sets:g} hard sets in the week",
    mend="at most {most:g}, the athlete's ceiling",
    thresholds=("ceiling_sets",),
)
def sets_ceiling(context: CheckContext) -> Iterator[Found]:
    for w, week in enumerate(_planned_weeks(context)):
        if not _is_ahead(context, w):
            continue
        for muscle, sets in sorted(week.items()):
            own = context.background.ceilings
            most = own.get(muscle, context.thresholds.ceiling_sets)
            if sets > most + 1e-9:
                values = {"muscle": muscle.replace("-", " "), "sets": sets, "most": most}
                yield Found(week_place(w), values)


def _heavy_days(context: CheckContext) -> list[_Heavy]:
    limits = context.thresholds
    done: dict[date, set[str]] = defaultdict(set)
    for one in context.background.done:
        known = context.order.catalogue.get(one.exercise)
        if known is not None and _was_heavy(one, limits.heavy_percent, limits.heavy_reserve):
            done[one.on].update(known.prime)
    planned = [
        _Heavy(session.on, _heavy_muscles(context, session), session)
        for session in context.sessions
    ]
    days = [*(_Heavy(on, frozenset(muscles)) for on, muscles in done.items()), *planned]
    return sorted(days, key=lambda day: day.on)


def _heavy_muscles(context: CheckContext, session: SessionLines) -> frozenset[str]:
    limits = context.thresholds
    return frozenset(
        muscle
        for line in session.lines
        if any(is_heavy(s, limits.heavy_percent, limits.heavy_reserve) for s in line.sets())
        for muscle in line.exercise.prime
    )


def _was_heavy(one: DoneSet, percent: float, reserve: float) -> bool:
    if one.method in LIGHT_BY_NATURE:
        return False
    near = one.to_failure or (one.rir is not None and one.rir <= reserve)
    return near or (one.share is not None and one.share >= percent / 100)


def _planned_weeks(context: CheckContext) -> list[dict[str, float]]:
    """Hard sets by muscle, week by week; sets whose reserve is left open count."""
    weeks: list[dict[str, float]] = [defaultdict(float) for _ in context.order.block.weeks]
    for session in context.sessions:
        for line in session.lines:
            hard = sum(is_hard(one) for one in line.sets())
            for muscle, count in counts_for(line.exercise).items():
                if hard:
                    weeks[session.place.at[0]][muscle] += hard * count
    return weeks


def _weeks_before(context: CheckContext) -> list[dict[str, float]]:
    """The four weeks before the block, oldest first, from the first in which anything was done."""
    start = context.order.starts_on
    done = hard_sets(context.background.done, context.order.catalogue)
    found = {week.monday: week.by_muscle for week in done}
    mondays = [start - timedelta(weeks=back) for back in range(WEEKS_BEFORE, 0, -1)]
    weeks: list[Mapping[str, float]] = [found.get(monday, {}) for monday in mondays]
    while weeks and not weeks[0]:
        weeks.pop(0)
    return [dict(week) for week in weeks]


def _is_ahead(context: CheckContext, w: int) -> bool:
    return any(one.sheet is not None for one in context.sessions if one.place.at[0] == w)


def _after(hours: int) -> str:
    return f"after {hours} h" if hours else "on the same day"


def _words(muscles: list[str]) -> str:
    return ", ".join(one.replace("-", " ") for one in muscles)


CHECKS: tuple[Check, ...] = (heavy_too_soon, sets_jump, sets_ceiling)
