"""Calculators for the desk: each with its formula, source, range and doubt beside the number."""

from collections.abc import Mapping
from typing import Any

from undercroft.documents.inputs import read_inputs
from undercroft.services.calculators.calculator import Calculator, Figure, Result
from undercroft.services.calculators.mechanics import BAND, LANDMINE, PULLEY, TIPPING
from undercroft.services.calculators.occlusion import PRESSURE
from undercroft.services.calculators.plates import PLATES
from undercroft.services.calculators.strength import MAXIMUM, REPETITIONS
from undercroft.services.clock import day_of
from undercroft.services.refusals import NotFound

CALCULATORS: Mapping[str, Calculator] = {
    one.key: one
    for one in (BAND, LANDMINE, TIPPING, MAXIMUM, REPETITIONS, PRESSURE, PLATES, PULLEY)
}


def calculator(key: str) -> Calculator:
    """The calculator of that key. Raises NotFound, which names those there are."""
    if key not in CALCULATORS:
        raise NotFound(f"no calculator has that name; there are {', '.join(CALCULATORS)}")
    return CALCULATORS[key]


def calculate(key: str, inputs: Any, now: int) -> tuple[Calculator, Result]:
    """One result. Raises NotFound, and FaultyDocument naming each input that cannot be."""
    found = calculator(key)
    return found, found.work(read_inputs(found.inputs, inputs), day_of(now))


__all__ = ["CALCULATORS", "Calculator", "Figure", "Result", "calculate", "calculator"]
