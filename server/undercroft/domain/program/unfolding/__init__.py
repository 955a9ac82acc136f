"""One week and its rules of progression, unfolded into a block that the coach can then edit."""

from undercroft.domain.program.unfolding.rules import Unfoldable, unfolded
from undercroft.domain.program.unfolding.table import Cell, TableRow, load_table
from undercroft.domain.program.unfolding.weeks import MOST_WEEKS, unfold

__all__ = [
    "MOST_WEEKS",
    "Cell",
    "TableRow",
    "Unfoldable",
    "load_table",
    "unfold",
    "unfolded",
]
