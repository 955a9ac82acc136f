"""A maximum from a set, and repetitions at a load."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from undercroft.documents.calculators import MaximumInputs, RepsInputs
from undercroft.domain.strength import (
    CHART,
    EQUATIONS,
    HANDBOOK,
    curve_of,
    one_rep_max,
    repetitions_at,
)
from undercroft.domain.strength.reserve import MOST
from undercroft.services.calculators.calculator import Calculator, Figure, Result, blaming

CHART_SOURCE = f"{CHART[0].source}: 1 to 10 seen, 11 to 15 from memory"
READS_LOW = (
    "every equation reads the deadlift low (LeSuer et al. 1997), and most rest on charts rather "
    "than on data"
)


def _maximum(given: Mapping[str, Any], _: date) -> Result:
    n = given["reps"] + given["rir"]
    with blaming("rir" if given["rir"] else "reps"):
        keys = (HANDBOOK.name, *(one.key for one in EQUATIONS))
        found = [one_rep_max(given["load_kg"], n, key) for key in keys]
    names = ("Handbook chart", *(one.name for one in EQUATIONS))
    figures = tuple(Figure(name, one.kg, "kg") for name, one in zip(names, found, strict=True))
    notes = [READS_LOW]
    if n == 1:
        notes.append("a true single is the maximum itself, by every equation")
    if found[0].weak:
        notes.append(f"weak: {n:g} repetitions are many; from ten down it says more")
    return Result(figures, notes=tuple(notes))


def _repetitions(given: Mapping[str, Any], _: date) -> Result:
    curve = curve_of(given["curve"].value)
    part = given["load_kg"] / given["maximum_kg"]
    with blaming("load_kg"):
        n = repetitions_at(part, curve)
    figures = (Figure("Repetitions to failure", n, ""), Figure("Share", 100 * part, "%"))
    reserve = "each repetition left in reserve is one fewer to do"
    return Result(figures, notes=(reserve,))


MAXIMUM = Calculator(
    key="maximum-from-set",
    name="Maximum from a set",
    formula="; ".join(
        (
            "n = reps + reserve",
            "handbook chart: w/share(n)",
            *(f"{one.name}: {one.formula}, r = n" for one in EQUATIONS),
        )
    ),
    source="; ".join((CHART_SOURCE, *(f"{one.source} ({one.mark})" for one in EQUATIONS))),
    range=f"1 to {MOST} repetitions to failure; weak above 10",
    doubt="about 3 % at 3 repetitions, 5 % at 5, 8 % at 14: people differ (twice the tracker's own"
    " settings, which rest on Nuzzo et al. 2024); our own choice",
    inputs=MaximumInputs,
    work=_maximum,
    caution="A worked-out maximum is no leave to try it: test with safeties or a spotter, after a"
    " warm-up.",
)

REPETITIONS = Calculator(
    key="reps-at-load",
    name="Repetitions at a load",
    formula="the n at which share(n) = load/maximum, linear between the rows of the chart",
    source=CHART_SOURCE,
    range=f"from the share at {MOST} repetitions (65 % by the handbook) to the whole maximum",
    doubt="trained squatters do from 6 to 26 repetitions at 70 % (Zourdos et al. 2021, seen)",
    inputs=RepsInputs,
    work=_repetitions,
)
