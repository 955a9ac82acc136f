"""For the week ahead of an athlete: what each set's load should become, and why."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, timedelta

from undercroft.domain.load_sheet import LoadSheet, SheetExercise
from undercroft.domain.program.block import ExercisePlan, SessionPlan
from undercroft.domain.program.calendar import day_of_session
from undercroft.domain.program.methods import Limb
from undercroft.domain.proposals.occlusion import (
    OcclusionDone,
    in_kilograms,
    occlusion_proposals,
)
from undercroft.domain.proposals.proposal import (
    ExerciseProposals,
    SessionProposals,
    proposed_in,
)
from undercroft.domain.proposals.rounding import on_kit
from undercroft.domain.proposals.sent import SentLoads, first_sent
from undercroft.domain.proposals.shares import Asked, lift_of, share_proposal
from undercroft.domain.proposals.written import with_loads
from undercroft.domain.sheet import Order, work_out
from undercroft.domain.sheet.occlusion import occlusion_rule
from undercroft.domain.sheet.standing import DoneSession

WEEK = timedelta(days=7)
"""How far ahead loads are proposed, from the next session's day on: what is further off is decided
when more is known (our own choice)."""


@dataclass(frozen=True, slots=True, eq=False)
class Evidence:
    """What speaks for other loads.

    history    the revisions of the run, newest first
    told       by lift the sessions that told of it, oldest first
    occlusion  by exercise and limb, how it was done last
    """

    history: Sequence[SentLoads]
    told: Mapping[str, Sequence[DoneSession]] = field(default_factory=dict)
    occlusion: Mapping[tuple[str, Limb], OcclusionDone] = field(default_factory=dict)


def propose(
    order: Order, begun: Collection[str], evidence: Evidence
) -> tuple[SessionProposals, ...]:
    """Sessions of the week ahead, by day; `begun` ones keep what they were begun with."""
    plans = {one.key: one for week in order.block.weeks for one in week.sessions}
    ahead = _week_ahead(order, begun)
    sheets = sorted(work_out(order, plans.keys() - ahead).sheets, key=_day)
    raw = tuple(_sessions(order, plans, sheets, evidence))
    wishes = {place: one.write for place, one in proposed_in(raw).items() if one.write}
    if not wishes:
        return raw
    changed = replace(order, block=with_loads(order.block, wishes))
    return on_kit(raw, work_out(changed, plans.keys() - ahead))


def _week_ahead(order: Order, begun: Collection[str]) -> set[str]:
    """Sessions not begun, from the next one on for a week; one that was missed holds up nothing."""
    days = {
        session.key: day_of_session(order.starts_on, w, session.day)
        for w, week in enumerate(order.block.weeks)
        for session in week.sessions
    }
    reached = max((day for key, day in days.items() if key in begun), default=date.min)
    ahead = {key: day for key, day in days.items() if key not in begun and day >= reached}
    end = min(ahead.values(), default=date.max - WEEK) + WEEK
    return {key for key, day in ahead.items() if day < end}


def _day(sheet: LoadSheet) -> date:
    return sheet.on or date.max


def _sessions(
    order: Order,
    plans: Mapping[str, SessionPlan],
    sheets: Sequence[LoadSheet],
    evidence: Evidence,
) -> Iterator[SessionProposals]:
    earlier: set[str] = set()
    for sheet in sheets:
        look = _Look(order, evidence, sheet.session, frozenset(earlier))
        plan, worked = plans[sheet.session], {one.key: one for one in sheet.exercises}
        told = [_exercise(look, e, worked[e.key]) for e in plan.exercises if e.key in worked]
        earlier |= {one.exercise for one in plan.exercises}
        yield SessionProposals(
            sheet.session,
            sheet.name,
            sheet.week_name,
            _day(sheet),
            tuple(one for one in told if one.sets),
        )


@dataclass(frozen=True, slots=True, eq=False)
class _Look:
    """Where a look stands: in which session, with which exercises done in one `earlier`."""

    order: Order
    evidence: Evidence
    session: str
    earlier: frozenset[str]


def _exercise(look: _Look, plan: ExercisePlan, sheet: SheetExercise) -> ExerciseProposals:
    rule = occlusion_rule(plan)
    if rule is not None and in_kilograms(plan):
        done = look.evidence.occlusion.get((plan.exercise, rule.limb))
        return ExerciseProposals(plan.key, sheet.name, occlusion_proposals(sheet, done))
    found = (share_proposal(one) for one in _asked(look, plan, sheet))
    return ExerciseProposals(plan.key, sheet.name, tuple(one for one in found if one))


def _asked(look: _Look, plan: ExercisePlan, sheet: SheetExercise) -> Iterator[Asked]:
    for one, on_sheet in zip(plan.sets, sheet.sets, strict=True):
        lift = lift_of(plan, one)
        yield Asked(
            plan=plan,
            one=one,
            sheet=sheet,
            on_sheet=on_sheet,
            known=look.order.standing.lifts.get(lift),
            then=first_sent((look.session, one.key), look.evidence.history),
            done=tuple(look.evidence.told.get(lift, ())),
            earlier=plan.exercise in look.earlier,
        )
