"""A worked-out block as a table: one row an exercise of the week, one column a week."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from undercroft.domain.load_sheet import LoadSheet, SheetExercise, SheetSet, Target
from undercroft.domain.program.block import Block


@dataclass(frozen=True, slots=True)
class Cell:
    """Sets alike in a row: how many, what is asked, the load in kg (None: found by feel)."""

    count: int
    target: Target
    kg: float | None


@dataclass(frozen=True, slots=True)
class TableRow:
    """An exercise through the weeks; a week in which it does not stand has no cells."""

    day: int
    session: str
    exercise: str
    name: str
    weeks: tuple[tuple[Cell, ...], ...]


def load_table(block: Block, sheets: Iterable[LoadSheet]) -> tuple[TableRow, ...]:
    """Rows in the order of the first week in which each exercise stands.

    An exercise is known again in other weeks by its key and its session's day and name.
    """
    by_session = {sheet.session: sheet for sheet in sheets}
    rows: dict[tuple[int, str, str], list[tuple[Cell, ...]]] = {}
    named: dict[tuple[int, str, str], SheetExercise] = {}
    for number, week in enumerate(block.weeks):
        for session in week.sessions:
            sheet = by_session.get(session.key)
            for one in sheet.exercises if sheet else ():
                place = (session.day, session.name, one.key)
                named.setdefault(place, one)
                cells = rows.setdefault(place, [()] * len(block.weeks))
                cells[number] = _cells(one)
    return tuple(
        TableRow(day, session, named[place].exercise, named[place].name, tuple(rows[place]))
        for place in rows
        for day, session, _ in (place,)
    )


def _cells(exercise: SheetExercise) -> tuple[Cell, ...]:
    told = [(one.target, _kg(exercise, one)) for one in exercise.sets]
    return tuple(_cell(list(alike)) for _, alike in groupby(told))


def _cell(alike: Sequence[tuple[Target, float | None]]) -> Cell:
    target, kg = alike[0]
    return Cell(len(alike), target, kg)


def _kg(exercise: SheetExercise, one: SheetSet) -> float | None:
    return None if one.load is None else exercise.loads[one.load].kg
