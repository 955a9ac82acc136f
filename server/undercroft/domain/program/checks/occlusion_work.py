"""All that the domain of occlusion says of a block's occlusion work, worked out once."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from undercroft.domain.athlete import Athlete
from undercroft.domain.occlusion import (
    Issue,
    Lock,
    OcclusionDay,
    ScreeningFile,
    Work,
    break_issues,
    exposure_on,
    frequency_issues,
    lifting_issues,
    session_issues,
    state_on,
    work_of,
)
from undercroft.domain.program.checks.line import Line, SessionLines
from undercroft.domain.program.checks.place import Place
from undercroft.domain.program.methods import Limb, Method, OcclusionRule

Placed = Iterator[tuple[Place, Issue]]


@dataclass(frozen=True, slots=True)
class OcclusionRecord:
    """What is on record of occlusion work before the block begins; with nothing it is locked.

    screening          answers, signatures, clearances
    days               days with occlusion work, ever since the first exposure
    ill                days of illness, which take the first exposures back
    pressure_measured  a measured occlusion pressure is on file
    """

    screening: ScreeningFile = field(default_factory=ScreeningFile)
    days: tuple[OcclusionDay, ...] = ()
    ill: tuple[date, ...] = ()
    pressure_measured: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class OcclusionLook:
    """`sessions` are those ahead with occlusion work, `locks` theirs by place."""

    sessions: tuple[SessionLines, ...]
    locks: Mapping[tuple[int, ...], Lock]
    issues: tuple[tuple[Place, Issue], ...]


def look_at_occlusion(
    athlete: Athlete, sessions: Iterable[SessionLines], record: OcclusionRecord
) -> OcclusionLook:
    """Locks and issues of the sessions ahead; each exposure counts those before it as done."""
    ahead = [one for one in sessions if one.sheet is not None and occlusion_lines(one)]
    ahead.sort(key=lambda one: one.on)
    locks = {one.place.at: state_on(one.on, record.screening) for one in ahead}
    issues = tuple(_issues(athlete, ahead, locks, record))
    return OcclusionLook(tuple(ahead), locks, issues)


def occlusion_lines(session: SessionLines) -> list[Line]:
    """The session's exercises with a wrap or cuff on."""
    return [line for line in session.lines if _rule(line) is not None]


def _rule(line: Line) -> OcclusionRule | None:
    details = line.plan.details
    chosen = line.plan.method is Method.OCCLUSION
    return details if chosen and isinstance(details, OcclusionRule) else None


def _limbs(session: SessionLines) -> list[Limb]:
    rules = (_rule(line) for line in session.lines)
    return [rule.limb for rule in rules if rule is not None]


def _issues(
    athlete: Athlete,
    ahead: Sequence[SessionLines],
    locks: Mapping[tuple[int, ...], Lock],
    record: OcclusionRecord,
) -> Placed:
    done = list(record.days)
    for session in ahead:
        yield from _of_session(athlete, session, locks[session.place.at], done, record)
        done.append(OcclusionDay(session.on, frozenset(_limbs(session))))
    days_a_week = min((lock.limits.days_a_week for lock in locks.values()), default=0)
    planned = done[len(record.days) :]
    for on, issue in frequency_issues(record.days, planned, days_a_week):
        yield next(session.place for session in ahead if session.on == on), issue


def _of_session(
    athlete: Athlete,
    session: SessionLines,
    lock: Lock,
    done: Sequence[OcclusionDay],
    record: OcclusionRecord,
) -> Placed:
    lines, limbs = occlusion_lines(session), _limbs(session)
    exposures = [exposure_on(done, session.on, limb, record.ill) for limb in limbs]
    works = list(zip(map(_work, lines), exposures, strict=True))
    for at, issue in session_issues(works, record.pressure_measured, lock.limits):
        yield (session.place if at is None else lines[at].place), issue
    groups = [line.plan.group for line in session.lines]
    for line in lines:
        exercise = replace(line.exercise, implement=line.implement)
        for issue in lifting_issues(exercise, athlete.trains_alone):
            yield line.place, issue
        if line.plan.group is not None and groups.count(line.plan.group) > 1:
            # Done in rounds, the wraps stay on across exercises.
            for issue in break_issues(None):
                yield line.place, issue


def _work(line: Line) -> Work:
    """The work with the share of the maximum that the kit makes of it, to a tenth of a percent."""
    maximum = line.sheet.maximum if line.sheet else None
    loads = [one.kg for one in line.sets()]
    known = [kg for kg in loads if kg is not None]
    if maximum is None or len(known) < len(loads):
        return work_of(line.plan)
    return work_of(line.plan, round(100 * max(known) / maximum.kg, 1))
