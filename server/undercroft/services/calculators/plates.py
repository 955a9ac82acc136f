"""From a target to what hangs on each side."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from undercroft.documents.calculators import PlatesInputs
from undercroft.domain.kit import Bar
from undercroft.domain.loads import nearest
from undercroft.domain.plates import loadable
from undercroft.services.calculators.calculator import Calculator, Figure, Result, blaming


def _plates(given: Mapping[str, Any], _: date) -> Result:
    bar = Bar(
        "bar",
        "Bar",
        given["bar_kg"],
        sleeve_length_m=given["sleeve_length_m"],
        rated_load_kg=given["rated_load_kg"],
        collar_mass_kg=given["collar_kg"],
    )
    with blaming("plates"):
        table = loadable(bar, given["plates"])
    with blaming("upper_kg"):
        fit = nearest(table, given["target_kg"], given["upper_kg"])
    figures = [Figure("Load", fit.load.kg, "kg"), Figure("Off the target", fit.off_kg, "kg")]
    for number, kg in enumerate(fit.load.side, start=1):
        figures.append(Figure(f"Each side, plate {number} from the middle", kg, "kg"))
    if fit.below is not None:
        figures.append(Figure("Nearest lighter than the target", fit.below.kg, "kg"))
    if fit.above is not None:
        figures.append(Figure("Nearest heavier than the target", fit.above.kg, "kg"))
    return Result(tuple(figures), notes=(fit.load.label,))


PLATES = Calculator(
    key="plates",
    name="Plates for a target",
    formula="the nearest of all loads that the plates make, pairs on both sides, ties to the"
    " lighter; of equal loads the fewest plates, heaviest innermost",
    source="a search over all stacks; exact (derived)",
    range="bars with two sleeves; no more than the rated load, no longer than the sleeve",
    doubt="none in the sum; plates may differ from what is cast on them: weigh them",
    inputs=PlatesInputs,
    work=_plates,
)
