"""The plan and its load sheets side by side: sessions, exercises and sets with their places."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from undercroft.domain.exercise import Exercise, Implement
from undercroft.domain.load_sheet import LoadSheet, SheetExercise, SheetSet
from undercroft.domain.program.block import ExercisePlan, SessionPlan, SetPlan
from undercroft.domain.program.checks.place import Place


@dataclass(frozen=True, slots=True, eq=False)
class Line:
    """An exercise of the plan with its place and day; `sheet` where it was worked out.

    `ahead`: its session is yet to be sent, and neither done nor under way.
    """

    place: Place
    on: date
    session: SessionPlan
    plan: ExercisePlan
    exercise: Exercise
    implement: Implement
    ahead: bool
    sheet: SheetExercise | None = None

    def sets(self) -> Iterator["SetLine"]:
        """Its sets, each with its place and what it was worked out to be."""
        sheets = {one.key: one for one in self.sheet.sets} if self.sheet else {}
        for n, one in enumerate(self.plan.sets):
            yield SetLine(self, self.place.set(n), one, sheets.get(one.key))


@dataclass(frozen=True, slots=True, eq=False)
class SetLine:
    """A set with its place; `kg` is the load chosen for it."""

    line: Line
    place: Place
    plan: SetPlan
    sheet: SheetSet | None

    @property
    def kg(self) -> float | None:
        whole, one = self.line.sheet, self.sheet
        if whole is None or one is None or one.load is None:
            return None
        return whole.loads[one.load].kg


@dataclass(frozen=True, slots=True, eq=False)
class SessionLines:
    """A session of the plan with its exercises, `sheet` where it is yet to be sent."""

    place: Place
    on: date
    plan: SessionPlan
    sheet: LoadSheet | None
    lines: tuple[Line, ...]
