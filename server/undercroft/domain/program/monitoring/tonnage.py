"""Tonnage: repetitions times the mean resistance over the range, bands and chains not ignored."""

from collections.abc import Iterable
from dataclasses import dataclass

from undercroft.domain.errors import positive
from undercroft.domain.program.monitoring.done import DoneSet


@dataclass(frozen=True, slots=True)
class Tonnage:
    """`kg` over `reps` repetitions; `left_out` sets had no known resistance or repetitions."""

    kg: float = 0.0
    reps: int = 0
    left_out: int = 0

    @property
    def mean_kg(self) -> float | None:
        """Mean resistance of a repetition."""
        return self.kg / self.reps if self.reps else None

    def density(self, minutes: float) -> float:
        """Kilograms a minute. LoadError for minutes not above 0."""
        return self.kg / positive("minutes", minutes)


def tonnage(sets: Iterable[DoneSet]) -> Tonnage:
    """The sum over sets; one-sided repetitions are done twice, once on each side."""
    kg, reps, left_out = 0.0, 0, 0
    for one in sets:
        if not one.reps or one.resistance_kg is None:
            left_out += 1
            continue
        done = one.reps * (2 if one.each_side and one.side is None else 1)
        kg += done * one.resistance_kg
        reps += done
    return Tonnage(kg, reps, left_out)
