"""Rules that carry an exercise from one week into the next."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class AddKg:
    kg: float


@dataclass(frozen=True, slots=True)
class AddPercent:
    percent: float


@dataclass(frozen=True, slots=True)
class PercentByWeek:
    percents: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Wave:
    """Percentages that repeat every `len(percents)` weeks, each round `step_percent` higher."""

    percents: tuple[float, ...]
    step_percent: float = 0.0


@dataclass(frozen=True, slots=True)
class DoubleProgression:
    """Repetitions from `reps_from` to `reps_to`, then `add_kg` and back to `reps_from`."""

    reps_from: int
    reps_to: int
    add_kg: float


@dataclass(frozen=True, slots=True)
class FallingReserve:
    rirs: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class RisingSets:
    sets: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class LightWeek:
    every: int
    factor: float


@dataclass(frozen=True, slots=True)
class Repeat:
    pass


@dataclass(frozen=True, slots=True)
class TestWeek:
    every: int


Progression = (
    AddKg
    | AddPercent
    | PercentByWeek
    | Wave
    | DoubleProgression
    | FallingReserve
    | RisingSets
    | LightWeek
    | Repeat
    | TestWeek
)
