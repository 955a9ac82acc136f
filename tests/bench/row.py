"""One line of the table: a figure, what it was measured against in the same run, its budget."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Row:
    """`value` is what the budget speaks of; `context` are the absolute figures behind it."""

    what: str
    value: float
    unit: str
    budget: float
    context: str
    at_least: bool = False

    @property
    def met(self) -> bool:
        return self.value >= self.budget if self.at_least else self.value <= self.budget


Bench = Callable[[Path], Iterator[Row]]
"""Measures in a scratch folder of its own."""


def lines(rows: list[Row]) -> Iterator[str]:
    """The table for a terminal and for a note."""
    yield "| what | measured | budget | met | context of this run |"
    yield "| --- | --- | --- | --- | --- |"
    for row in rows:
        bound = "at least" if row.at_least else "at most"
        met = "yes" if row.met else "NO"
        budget = f"{bound} {row.budget:g} {row.unit}"
        yield f"| {row.what} | {row.value:.3g} {row.unit} | {budget} | {met} | {row.context} |"
