"""A block out of its first week: every exercise by its own rule, week after week."""

import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, replace

from undercroft.domain.errors import DomainError
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan, Week
from undercroft.domain.program.calendar import DAYS
from undercroft.domain.program.progression import LightWeek, TestWeek
from undercroft.domain.program.unfolding.attempt import as_test
from undercroft.domain.program.unfolding.keys import derived
from undercroft.domain.program.unfolding.rules import Unfoldable, light, unfolded

MOST_WEEKS = 52


@dataclass(frozen=True, slots=True)
class Misfit:
    """A rule that cannot be applied: places of session and exercise from 0, the week from 1."""

    session: int
    exercise: int
    week: int
    what: str
    right: str


@dataclass(frozen=True, slots=True)
class _Turn:
    """A week's number from 1, and whether it is the whole block's light week."""

    number: int
    light: LightWeek | None

    @property
    def is_light(self) -> bool:
        return self.light is not None and self.number % self.light.every == 0

    @property
    def step(self) -> int:
        """Steps of progression so far: a light week takes none."""
        lights = self.number // self.light.every if self.light else 0
        return self.number - 1 - lights


def unfold(
    what: Block | Week,
    weeks: int,
    light_week: LightWeek | None = None,
    taken: Collection[str] = (),
) -> Block:
    """A block of `weeks` weeks out of its first one.

    Weeks that a block already has beyond the first stay as the coach has edited them; further ones
    follow from the first week's rules, so that a block may be unfolded again and grow. The rules
    stay on the first week. `light_week` makes every so-manieth week of the block a light one, and
    the rules go on after it where they were. `taken` are keys of sessions elsewhere, which no new
    one gets. Raises Unfoldable with the place, DomainError for a number of weeks that cannot be.
    """
    block = Block(what.key, what.name, (what,)) if isinstance(what, Week) else what
    _check(block, weeks, light_week)
    first, *edited = block.weeks
    used = {*taken, *(session.key for week in block.weeks for session in week.sessions)}
    further = [_Turn(number, light_week) for number in range(len(block.weeks) + 1, weeks + 1)]
    named = {week.key for week in block.weeks}
    return replace(
        block,
        weeks=(
            replace(first, sessions=_sessions(first, _Turn(1, light_week), used)),
            *edited,
            *(_week(first, turn, named, used) for turn in further),
        ),
    )


def misfits(week: Week, weeks: int, light_week: LightWeek | None = None) -> Iterator[Misfit]:
    """Exercises whose rule cannot be applied, each with the first week in which it cannot."""
    turns = [_Turn(number, light_week) for number in range(1, weeks + 1)]
    for s, session in enumerate(week.sessions):
        for e, plan in enumerate(session.exercises):
            found = _first_fault(plan, turns)
            if found is not None:
                turn, fault = found
                yield Misfit(s, e, turn.number, fault.what, fault.right)


def _first_fault(plan: ExercisePlan, turns: Iterable[_Turn]) -> tuple[_Turn, Unfoldable] | None:
    for turn in turns:
        try:
            _exercise(plan, turn)
        except Unfoldable as fault:
            return turn, fault
    return None


def _check(block: Block, weeks: int, light_week: LightWeek | None) -> None:
    have = len(block.weeks)
    if not have:
        raise DomainError("block", "has no week", "write one week first, then unfold it")
    if not have <= weeks <= MOST_WEEKS:
        right = f"should be from {have}, which the block has, to {MOST_WEEKS}"
        raise DomainError("number of weeks", f"is {weeks}", right)
    if light_week is not None and light_week.every < 2:
        raise DomainError("light week", "comes every week", "should come every second at most")


def _week(first: Week, turn: _Turn, named: Collection[str], used: Collection[str]) -> Week:
    key = derived(first.key, turn.number, "w", named)
    return Week(key, _name(first.name, turn), _sessions(first, turn, used))


def _sessions(week: Week, turn: _Turn, used: Collection[str]) -> tuple[SessionPlan, ...]:
    seen = set(used)
    sessions: list[SessionPlan] = []
    for session in week.sessions:
        made = _session(session, turn, seen)
        seen.add(made.key)
        sessions.append(made)
    return tuple(sessions)


def _session(session: SessionPlan, turn: _Turn, used: Collection[str]) -> SessionPlan:
    first = turn.number == 1
    key = session.key if first else derived(session.key, turn.number, "w", used)
    plans = enumerate(session.exercises)
    return replace(
        session, key=key, exercises=tuple(_placed(session, e, p, turn) for e, p in plans)
    )


def _placed(session: SessionPlan, place: int, plan: ExercisePlan, turn: _Turn) -> ExercisePlan:
    try:
        return _exercise(plan, turn)
    except Unfoldable as fault:
        day = DAYS[session.day - 1]
        where = f"week {turn.number}, {day}, exercise {place + 1} ({plan.exercise})"
        raise Unfoldable(where, fault.what, fault.right) from fault


def _exercise(plan: ExercisePlan, turn: _Turn) -> ExercisePlan:
    rule = plan.progression
    kept = plan if turn.number == 1 else replace(plan, progression=None)
    if isinstance(rule, TestWeek) and turn.number % rule.every == 0:
        return as_test(kept)
    if isinstance(rule, LightWeek) and turn.number % rule.every == 0:
        return light(kept, rule.factor)
    if turn.light is not None and turn.is_light:
        return light(unfolded(kept, rule, turn.step, again=True), turn.light.factor)
    return unfolded(kept, rule, turn.step)


def _name(name: str, turn: _Turn) -> str:
    """The first week's name with its number counted on, or with a number behind it."""
    counted = re.fullmatch(r"(.*?)(\d+)", name)
    if counted:
        plain = f"{counted[1]}{int(counted[2]) + turn.number - 1}"
    else:
        plain = f"{name}, week {turn.number}"
    return f"{plain}, light" if turn.is_light else plain
