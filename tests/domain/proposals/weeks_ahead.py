"""A squat at 100 kg of a 140 kg maximum, sent in November, and what has come in since. Invented."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from tests.domain.program.plans import CELLAR, MONDAY, SIV, kg, one_day, order

from undercroft.domain.athlete import Athlete, Maximum, MaximumKind
from undercroft.domain.kit import Kit
from undercroft.domain.program.block import Block, ExercisePlan
from undercroft.domain.proposals import (
    Evidence,
    KnownThen,
    SentLoads,
    SessionProposals,
    SetProposal,
    known_now,
    propose,
)
from undercroft.domain.sheet import DoneSession, Order, standing_of
from undercroft.domain.strength import PlannedSet, SetDone

LATER = date(2026, 11, 9)
HUNDRED = kg(100)


def guessed(lift: str, maximum_kg: float, on: date = LATER) -> Athlete:
    """Siv, with the coach's newer word on one lift."""
    word = Maximum(lift, maximum_kg, MaximumKind.GUESSED, on)
    return replace(SIV, maxima=(*SIV.maxima, word))


def easier(reps: int = 3, rir: float = 4, planned: float = 2, load_kg: float = 120) -> DoneSession:
    """A session of one set, by default easier than planned."""
    return DoneSession(LATER, (SetDone(load_kg, reps, rir, PlannedSet(3, planned)),))


def then() -> KnownThen:
    """What was known when it was sent: Siv's tested maxima, and nothing done yet."""
    return known_now(standing_of(SIV))


def loads_of(plan: Block) -> dict[tuple[str, str], Any]:
    return {
        (session.key, one.key): one.load
        for week in plan.weeks
        for session in week.sessions
        for exercise in session.exercises
        for one in exercise.sets
    }


def evidence(
    plan: Block,
    known: KnownThen | None,
    told: Mapping[str, Sequence[DoneSession]] | None = None,
    **more: Any,
) -> Evidence:
    """The block was sent once, as it stands."""
    return Evidence([SentLoads(loads_of(plan), known)], told or {}, **more)


def ahead(
    plan: Block,
    athlete: Athlete = SIV,
    told: Mapping[str, Sequence[DoneSession]] | None = None,
    known: KnownThen | None = None,
    kit: Kit = CELLAR,
    last_kg: Mapping[str, float] | None = None,
) -> tuple[SessionProposals, ...]:
    """What is proposed for the block, told these sessions since it was sent."""
    standing = standing_of(athlete, told or {}, last_kg or {})
    asked: Order = replace(order(plan, athlete, kit, MONDAY), standing=standing)
    return propose(asked, (), evidence(plan, known or then(), told))


def sets_of(sessions: Sequence[SessionProposals]) -> list[SetProposal]:
    return [one for session in sessions for exercise in session.exercises for one in exercise.sets]


def of(exercise: ExercisePlan, athlete: Athlete = SIV, **more: Any) -> list[SetProposal]:
    """What is proposed for a session of one exercise, set by set."""
    return sets_of(ahead(one_day(exercise), athlete, **more))
