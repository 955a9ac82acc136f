"""The desk's calculators: one number each, with where it comes from and how far to trust it."""

from typing import Any

from undercroft.api import calculator_shapes as shapes
from undercroft.api.contract import COACH, Section, by, gives, takes
from undercroft.services import calculators

section = Section("calculators", "/api/v1/desk")


@section.get("/calculators")
@by(COACH)
@gives(shapes.CalculatorsAnswer)
def list_calculators() -> dict[str, Any]:
    """Every calculator with its formula, source, range, doubt and inputs."""
    return {
        "calculators": [
            {
                **_about(one),
                "key": one.key,
                "name": one.name,
                "caution": one.caution,
                "inputs": one.lines,
            }
            for one in calculators.CALCULATORS.values()
        ]
    }


@section.post("/calculators/<key>")
@by(COACH)
@takes(shapes.CalculationAsked)
@gives(shapes.CalculationAnswer)
def calculate(key: str, body: dict[str, Any], now: int) -> dict[str, Any]:
    """Work one calculator out; nothing is kept.

    Inputs that cannot be, or lie outside its range, are refused by name.
    """
    found, result = calculators.calculate(key, body["inputs"], now)
    doubt = result.doubt or found.doubt
    return {**_about(found), "doubt": doubt, "result": result.figures, "notes": result.notes}


def _about(one: calculators.Calculator) -> dict[str, str]:
    return {name: getattr(one, name) for name in ("formula", "source", "range", "doubt")}
