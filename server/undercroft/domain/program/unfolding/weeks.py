"""A block out of its first week: every exercise by its own rule, week after week."""

import re
from collections.abc import Collection, Iterator
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


def unfold(what: Block | Week, weeks: int, light_week: LightWeek | None = None) -> Block:
    """A block of `weeks` weeks out of its first one.

    Weeks that a block already has beyond the first stay as the coach has edited them; further ones
    follow from the first week's rules, so that a block may be unfolded again and grow. The rules
    stay on the first week. `light_week` makes every so-manieth week of the block a light one, and
    the rules go on after it where they were. Raises Unfoldable with the place, DomainError for a
    number of weeks that cannot be.
    """
    block = Block(what.key, what.name, (what,)) if isinstance(what, Week) else what
    _check(block, weeks, light_week)
    first, *edited = block.weeks
    taken = {session.key for week in block.weeks for session in week.sessions}
    further = range(len(block.weeks) + 1, weeks + 1)
    return replace(
        block,
        weeks=(
            _week(first, _Turn(1, light_week), taken),
            *edited,
            *(_week(first, _Turn(number, light_week), taken) for number in further),
        ),
    )


def _check(block: Block, weeks: int, light_week: LightWeek | None) -> None:
    have = len(block.weeks)
    if not have:
        raise DomainError("block", "has no week", "write one week first, then unfold it")
    if not have <= weeks <= MOST_WEEKS:
        right = f"should be from {have}, which the block has, to {MOST_WEEKS}"
        raise DomainError("number of weeks", f"is {weeks}", right)
    if light_week is not None and light_week.every < 2:
        raise DomainError("light week", "comes every week", "should come every second at most")


def _week(week: Week, turn: _Turn, taken: Collection[str]) -> Week:
    seen = set(taken)
    sessions: list[SessionPlan] = []
    for session in week.sessions:
        made = _session(session, turn, seen)
        seen.add(made.key)
        sessions.append(made)
    if turn.number == 1:
        return replace(week, sessions=tuple(sessions))
    return Week(derived(week.key, turn.number, "w"), _name(week.name, turn), tuple(sessions))


def _session(session: SessionPlan, turn: _Turn, taken: Collection[str]) -> SessionPlan:
    first = turn.number == 1
    key = session.key if first else derived(session.key, turn.number, "w", taken)
    return replace(session, key=key, exercises=tuple(_placed(session, turn)))


def _placed(session: SessionPlan, turn: _Turn) -> Iterator[ExercisePlan]:
    for place, plan in enumerate(session.exercises, start=1):
        try:
            yield _exercise(plan, turn)
        except Unfoldable as fault:
            day = DAYS[session.day - 1]
            where = f"week {turn.number}, {day}, exercise {place} ({plan.exercise})"
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
