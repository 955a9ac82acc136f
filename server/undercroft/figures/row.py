"""One check value from outside, beside what this program makes of the same inputs."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from undercroft.domain.errors import DomainError

REFUSED = "refused"
"""What is expected where no number may come out."""

Value = float | str


class Mark(StrEnum):
    """How well the expected value is known."""

    SEEN = "seen"
    COPY = "seen in a secondary copy"
    MEMORY = "from memory"
    DERIVED = "derived"
    PRACTICE = "common practice"


@dataclass(frozen=True, slots=True)
class Row:
    """`within` is how far `ours` may be off `expected`; a REFUSED must be met as it is."""

    subject: str
    what: str
    given: str
    expected: Value
    ours: Callable[[], float]
    within: float
    source: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Checked:
    """A row worked out."""

    row: Row
    ours: Value

    @property
    def ok(self) -> bool:
        expected = self.row.expected
        if isinstance(expected, str) or isinstance(self.ours, str):
            return expected == self.ours
        # A hair for sums of decimals that no binary fraction meets.
        return expected == self.ours or abs(self.ours - expected) <= self.row.within + 1e-9


def checked(row: Row) -> Checked:
    """The row with our own value; what the domain refuses is REFUSED."""
    try:
        return Checked(row, row.ours())
    except DomainError:
        return Checked(row, REFUSED)
