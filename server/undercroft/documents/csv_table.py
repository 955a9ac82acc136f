"""A table of results as CSV: one header, one row a line, no cell that a spreadsheet would run."""

import csv
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from io import StringIO

from undercroft.documents.cells import guarded

Cell = str | float | int | bool | date | None


@dataclass(frozen=True, slots=True)
class Table:
    """Columns name their unit; every row has a cell for each, None where there is nothing."""

    columns: Sequence[str]
    rows: Iterable[Sequence[Cell]]


def write_table(table: Table) -> str:
    """The table with its header; words of people are kept from being run as formulas."""
    text = StringIO()
    out = csv.writer(text, lineterminator="\n")
    out.writerow(table.columns)
    out.writerows([_written(cell) for cell in row] for row in table.rows)
    return text.getvalue()


def _written(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, str):
        return guarded(cell)
    if isinstance(cell, date):
        return cell.isoformat()
    return f"{cell:g}" if float(cell).is_integer() else repr(round(cell, 3))
