"""All that the domain of occlusion says of a block's occlusion work, worked out once."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from undercroft.domain.occlusion import (
    LIMITS,
    Issue,
    Lock,
    OcclusionDay,
    Person,
    PlannedOcclusion,
    break_issues,
    cuff_pressure,
    exposures_ahead,
    frequency_issues,
    lifting_issues,
    session_issues,
)
from undercroft.domain.program.checks.line import Line, SessionLines
from undercroft.domain.program.checks.place import Place
from undercroft.domain.program.methods import Limb, OcclusionRule, Restriction
from undercroft.domain.sheet import Order
from undercroft.domain.sheet.occlusion import occlusion_rule, work_on_sheet

Placed = Iterator[tuple[Place, Issue]]


@dataclass(frozen=True, slots=True, eq=False)
class OcclusionLook:
    """`sessions` are those ahead with occlusion work, `locks` theirs by place."""

    sessions: tuple[SessionLines, ...]
    locks: Mapping[tuple[int, ...], Lock]
    issues: tuple[tuple[Place, Issue], ...]


def look_at_occlusion(order: Order, sessions: Iterable[SessionLines]) -> OcclusionLook:
    """Locks and issues of the sessions ahead; each exposure counts those before it as done."""
    ahead = [one for one in sessions if one.sheet is not None and occlusion_lines(one)]
    ahead.sort(key=lambda one: one.on)
    by_day = order.occlusion.locks(one.on for one in ahead)
    locks = {one.place.at: by_day[one.on] for one in ahead}
    return OcclusionLook(tuple(ahead), locks, tuple(_issues(order, ahead, locks)))


def occlusion_lines(session: SessionLines) -> list[Line]:
    """The session's exercises with a wrap or cuff on."""
    return [line for line in session.lines if _rule(line) is not None]


def _rule(line: Line) -> OcclusionRule | None:
    return occlusion_rule(line.plan)


def _limbs(session: SessionLines) -> list[Limb]:
    rules = (_rule(line) for line in session.lines)
    return [rule.limb for rule in rules if rule is not None]


def _issues(
    order: Order, ahead: Sequence[SessionLines], locks: Mapping[tuple[int, ...], Lock]
) -> Placed:
    planned = [PlannedOcclusion(one.plan.key, one.on, frozenset(_limbs(one))) for one in ahead]
    exposures = exposures_ahead(planned, order.occlusion)
    for session in ahead:
        numbers = [exposures[session.plan.key, limb].exposure for limb in _limbs(session)]
        yield from _of_session(order, session, locks[session.place.at], numbers)
    days_a_week = min((lock.limits.days_a_week for lock in locks.values()), default=0)
    days = [OcclusionDay(one.on, one.limbs) for one in planned]
    for on, issue in frequency_issues(order.occlusion.days, days, days_a_week):
        yield next(session.place for session in ahead if session.on == on), issue


def _of_session(
    order: Order, session: SessionLines, lock: Lock, exposures: Sequence[int]
) -> Placed:
    lines = occlusion_lines(session)
    works = list(
        zip((work_on_sheet(line.plan, line.sheet) for line in lines), exposures, strict=True)
    )
    measured = all(_measured(order, line) for line in lines)
    for at, issue in session_issues(works, measured, lock.limits):
        yield (session.place if at is None else lines[at].place), issue
    groups = [line.plan.group for line in session.lines]
    for line in lines:
        exercise = replace(line.exercise, implement=line.implement)
        for issue in lifting_issues(exercise, order.athlete.trains_alone):
            yield line.place, issue
        if line.plan.group is not None and groups.count(line.plan.group) > 1:
            # Done in rounds, the wraps stay on across exercises.
            for issue in break_issues(None):
                yield line.place, issue


def _measured(order: Order, line: Line) -> bool:
    """A wrap needs none; a cuff's occlusion pressure was measured on that limb, and lately."""
    rule = _rule(line)
    if rule is None or rule.restriction is not Restriction.CUFF:
        return True
    person = Person(order.occlusion, order.athlete.thigh_cm)
    least = LIMITS.least_pressure_percent
    found = cuff_pressure(person, order.kit.cuffs, rule.limb, least, line.on)
    return found is not None and found.measured
