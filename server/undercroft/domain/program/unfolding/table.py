"""A worked-out block as a table: one row an exercise of the week, one column a week."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass

from undercroft.domain.exercise import Catalogue
from undercroft.domain.load_sheet import LoadSheet, SheetExercise, SheetSet
from undercroft.domain.program.block import Block, ExercisePlan, SessionPlan


@dataclass(frozen=True, slots=True)
class Cell:
    """One set in one week: its path in the block, and what it becomes for the athlete.

    `kg` is None where the load is found by feel, where there is none, or where none could be worked
    out; `why` says which. `change_kg` is what it is more than in the column before.
    """

    path: str
    reps: int | None
    kg: float | None = None
    wish_kg: float | None = None
    change_kg: float | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class TableRow:
    """An exercise through the weeks; a week in which it does not stand has no cells."""

    day: int
    session: str
    key: str
    exercise: str
    name: str
    weeks: tuple[tuple[Cell, ...], ...]


Place = tuple[int, str, str]
"""An exercise is known again in other weeks by its session's day and name and by its key."""


def load_table(
    block: Block, sheets: Iterable[LoadSheet], catalogue: Catalogue, weeks: Collection[int]
) -> tuple[TableRow, ...]:
    """Rows in the order of the first week in which each exercise stands.

    `weeks` are the places of those that get a column, in order.
    """
    worked_out = {(sheet.session, one.key): one for sheet in sheets for one in sheet.exercises}
    plans: dict[Place, ExercisePlan] = {}
    rows: dict[Place, list[tuple[Cell, ...]]] = {}
    for column, week in enumerate(weeks):
        for path, session, plan in _plans(block, week):
            place = (session.day, session.name, plan.key)
            plans.setdefault(place, plan)
            cells = rows.setdefault(place, [()] * len(weeks))
            before = cells[column - 1] if column else ()
            sheet = worked_out.get((session.key, plan.key))
            cells[column] = tuple(_cells(path, plan, sheet, before))
    return tuple(_row(place, plan, rows[place], catalogue) for place, plan in plans.items())


def _row(
    place: Place, plan: ExercisePlan, cells: list[tuple[Cell, ...]], catalogue: Catalogue
) -> TableRow:
    return TableRow(*place, plan.exercise, catalogue[plan.exercise].name, tuple(cells))


def _plans(block: Block, week: int) -> Iterator[tuple[str, SessionPlan, ExercisePlan]]:
    for s, session in enumerate(block.weeks[week].sessions):
        for e, plan in enumerate(session.exercises):
            yield f"weeks.{week}.sessions.{s}.exercises.{e}", session, plan


def _cells(
    path: str, plan: ExercisePlan, sheet: SheetExercise | None, before: tuple[Cell, ...]
) -> Iterator[Cell]:
    worked_out: Mapping[str, SheetSet] = {one.key: one for one in sheet.sets} if sheet else {}
    for n, one in enumerate(plan.sets):
        place, made = f"{path}.sets.{n}", worked_out.get(one.key)
        if sheet is None or made is None:
            yield Cell(place, one.reps)
            continue
        kg = None if made.load is None else sheet.loads[made.load].kg
        earlier = before[n].kg if n < len(before) else None
        change = None if kg is None or earlier is None else round(kg - earlier, 3)
        yield Cell(place, one.reps, kg, made.wish_kg, change, made.why)
