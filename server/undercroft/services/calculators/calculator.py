"""What a calculator is: what it is given, how it works, how far to trust it."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType
from typing import Any

from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.inputs import InputLine, Inputs, lines_of
from undercroft.domain.errors import DomainError

NO_NAMES: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Figure:
    """One number of a result, with its unit ("" where it has none)."""

    name: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True)
class Result:
    """The figures; `doubt` where it follows from what was given, else the calculator's own."""

    figures: tuple[Figure, ...]
    doubt: str = ""
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Calculator:
    """`work` takes the inputs as loaded by `inputs`, and today. It raises FaultyDocument.

    `caution` is what must be read before the number, where using it can hurt someone.
    """

    key: str
    name: str
    formula: str
    source: str
    range: str
    doubt: str
    inputs: type[Inputs]
    work: Callable[[Mapping[str, Any], date], Result]
    caution: str = ""

    @property
    def lines(self) -> tuple[InputLine, ...]:
        """What it is given, with units and limits."""
        return lines_of(self.inputs)


def fault(field: str, what: str, right: str) -> FaultyDocument:
    """A refusal that names the input."""
    return FaultyDocument((Fault(f"inputs, {field}", f"inputs.{field}", what, right),))


@contextmanager
def blaming(field: str, names: Mapping[str, str] = NO_NAMES) -> Iterator[None]:
    """What the domain refuses, told of an input.

    `names` gives the input for a place that the domain names; for others it is `field`.
    """
    try:
        yield
    except DomainError as refused:
        raise fault(names.get(refused.where, field), refused.what, refused.right) from None
