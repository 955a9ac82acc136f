"""One week and its rules of progression, unfolded into a block that the coach can then edit."""

from undercroft.domain.program.unfolding.placing import (
    Placed,
    Unfolding,
    came_from,
    unfold_within,
    week_of,
)
from undercroft.domain.program.unfolding.rules import Unfoldable, unfolded
from undercroft.domain.program.unfolding.table import Cell, TableRow, load_table
from undercroft.domain.program.unfolding.weeks import MOST_WEEKS, Misfit, misfits, unfold

__all__ = [
    "MOST_WEEKS",
    "Cell",
    "Misfit",
    "Placed",
    "TableRow",
    "Unfoldable",
    "Unfolding",
    "came_from",
    "load_table",
    "misfits",
    "unfold",
    "unfold_within",
    "unfolded",
    "week_of",
]
