"""Sessions: the time that they take, kit needed twice at once, warm-up, and days away."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from statistics import median_high

from undercroft.domain.exercise import Implement
from undercroft.domain.load_sheet import SheetExercise
from undercroft.domain.program.checks.check import Check, Found, check
from undercroft.domain.program.checks.context import Away, CheckContext
from undercroft.domain.program.checks.effort import share
from undercroft.domain.program.checks.line import Line, SessionLines
from undercroft.domain.program.checks.place import week_place
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method

ENDS = {Implement.DUMBBELL.value: 2, Implement.DUMBBELLS.value: 4}
"""Ends that take the same plates, where the sheet does not count sides: loadable dumbbells."""


@check(
    "session-too-long",
    Severity.WARN,
    looks_for="sessions longer than the athlete's time",
    message="takes about {minutes} min, and the athlete has {has}",
    mend="fewer sets, shorter rests where they may be, or another day for part of it",
    thresholds=("over_time_min",),
)
def session_too_long(context: CheckContext) -> Iterator[Found]:
    has = context.order.athlete.session_minutes
    for session in context.sessions:
        if has is None or session.sheet is None:
            continue
        if session.sheet.minutes > has + context.thresholds.over_time_min:
            yield Found(session.place, {"minutes": session.sheet.minutes, "has": has})


@check(
    "kit-needed-twice",
    Severity.WARN,
    looks_for="kit that two exercises done in rounds need at once",
    message="needs {things} at the same time as {other}",
    mend="do them one after the other, or pair one of them with something else",
    source="the kit as it was written down",
)
def kit_needed_twice(context: CheckContext) -> Iterator[Found]:
    for session in context.sessions:
        for one, other in combinations(session.lines, 2):
            if one.sheet is None or other.sheet is None or not _in_rounds(one, other):
                continue
            things = list(_shared(context, one.sheet, other.sheet))
            if things:
                values = {"things": ", ".join(things), "other": one.exercise.name.lower()}
                yield Found(other.place, values)


@check(
    "warm-up-missing",
    Severity.WARN,
    looks_for="a first set of 80 % or more with nothing before it",
    message="the first set is at {percent:.0f} % of the maximum with no warm-up before it",
    mend="leave the ramp in, write one, or put a lighter set of the lift before it",
    thresholds=("warm_up_percent",),
)
def warm_up_missing(context: CheckContext) -> Iterator[Found]:
    for session in context.sessions:
        for place, line in enumerate(session.lines):
            if line.sheet is None or line.sheet.ramp or line.plan.method is Method.WARM_UP:
                continue
            if any(_warms(before, line) for before in session.lines[:place]):
                continue
            part = share(next(line.sets()))
            if part is not None and 100 * part >= context.thresholds.warm_up_percent - 1e-9:
                yield Found(line.place, {"percent": 100 * part})


@check(
    "sessions-lost",
    Severity.NOTE,
    looks_for="weeks that lose sessions to days away",
    message="{lost} of {count} sessions fall on days away ({why})",
    mend="move them within the week, or let the week be a light one and go on after it",
    thresholds=("lost_sessions",),
)
def sessions_lost(context: CheckContext) -> Iterator[Found]:
    for w in range(len(context.order.block.weeks)):
        sessions = [one for one in context.sessions if one.place.at[0] == w]
        lost = [(one, away) for one in sessions for away in _away(context, one)[:1]]
        if len(lost) >= context.thresholds.lost_sessions:
            why = ", ".join(dict.fromkeys(away.why for _, away in lost))
            values = {"lost": len(lost), "count": len(sessions), "why": why}
            yield Found(week_place(w), values)


@check(
    "week-short",
    Severity.NOTE,
    looks_for="weeks with fewer than half of the sessions that the block's weeks usually have",
    message="{count} sessions, and the block's weeks usually have {usual}",
    mend="meant as travel, a holiday or rest? Then nothing; else copy the missing sessions in",
    source="a week left empty is often forgotten; our own choice",
)
def week_short(context: CheckContext) -> Iterator[Found]:
    counts = [len(week.sessions) for week in context.order.block.weeks]
    usual = median_high(counts) if counts else 0
    for w, count in enumerate(counts):
        if 2 * count < usual:
            yield Found(week_place(w), {"count": count or "no", "usual": usual})


def _in_rounds(one: Line, other: Line) -> bool:
    return one.plan.group is not None and one.plan.group == other.plan.group


@dataclass(frozen=True, slots=True)
class _Use:
    """The most of each plate that an exercise has loaded at once, and how it loads its piece."""

    plates: Counter[float]
    loadings: frozenset[object]


def _use(sheet: SheetExercise) -> _Use:
    plates: Counter[float] = Counter()
    chosen = [sheet.loads[one.load] for one in sheet.sets if one.load is not None]
    ends = ENDS.get(sheet.implement.kind, max(1, sheet.implement.sides))
    for load in chosen:
        plates |= Counter({kg: n * ends for kg, n in Counter(load.side).items()})
    return _Use(
        plates, frozenset((sheet.implement.kind, load.side, load.pin_kg) for load in chosen)
    )


def _shared(context: CheckContext, one: SheetExercise, other: SheetExercise) -> Iterator[str]:
    a, b = _use(one), _use(other)
    same_piece = one.implement.key is not None and one.implement.key == other.implement.key
    if same_piece:
        # One bar with one loading serves both in turn; loaded anew every round it does not.
        if a.loadings != b.loadings:
            yield one.implement.name.lower()
        return
    kit = context.order.kit
    here: Counter[float] = Counter()
    for plate in kit.plates:
        here[round(plate.mass_kg, 4)] += plate.count
    both = a.plates + b.plates
    yield from (
        f"{both[kg]} plates of {kg:g} kg (there are {here[kg]})"
        for kg in sorted(both, reverse=True)
        if kg in a.plates and kg in b.plates and both[kg] > here[kg]
    )


def _warms(before: Line, line: Line) -> bool:
    """The same lift earlier in the session, or a warm-up of one of its prime muscles."""
    if before.plan.exercise == line.plan.exercise:
        return True
    shared = set(before.exercise.prime) & set(line.exercise.prime)
    return bool(shared) and before.plan.method is Method.WARM_UP


def _away(context: CheckContext, session: SessionLines) -> list[Away]:
    if session.sheet is None:
        return []
    return [one for one in context.background.away if one.first <= session.on <= one.last]


CHECKS: tuple[Check, ...] = (
    session_too_long,
    kit_needed_twice,
    warm_up_missing,
    sessions_lost,
    week_short,
)
