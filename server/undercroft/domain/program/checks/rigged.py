"""What the rig of each exercise comes to on this kit, worked out once for all checks."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from undercroft.domain.errors import LoadError
from undercroft.domain.exercise import Exercise
from undercroft.domain.mechanics import BandLaw, Choice, laws_of, path_for, rig_up
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.checks.line import Line
from undercroft.domain.program.rig import Rig
from undercroft.domain.sheet import Order


@dataclass(frozen=True, slots=True, eq=False)
class Rigged:
    """The rig as it would hang under the heaviest wish, or why it cannot."""

    load_kg: float
    choice: Choice | None = None
    fault: LoadError | None = None


Rigs = Mapping[tuple[int, ...], Rigged]
"""By the exercise's place in the block."""


def rigs_of(order: Order, lines: Iterable[Line]) -> Rigs:
    """Every rig of a line whose loads are known; the same rig under the same load only once."""
    found: dict[tuple[int, ...], Rigged] = {}
    known: dict[tuple[str, Rig, float, float | None], Rigged] = {}
    laws: dict[str, BandLaw] | None = None
    for line in lines:
        rig, load_kg = line.plan.rig, heaviest_kg(line)
        if rig is None or load_kg is None:
            continue
        maximum = line.sheet.maximum if line.sheet else None
        kg = maximum.kg if maximum else None
        same = (line.plan.exercise, rig, load_kg, kg)
        if same not in known:
            laws = laws_of(order.kit) if laws is None else laws
            known[same] = _rigged(order, line.exercise, line.plan, laws, load_kg, kg)
        found[line.place.at] = known[same]
    return found


def heaviest_kg(line: Line) -> float | None:
    """The heaviest wish among the sets; None where all loads are found by feel."""
    sets = line.sheet.sets if line.sheet else ()
    wishes = [one.wish_kg for one in sets if one.wish_kg]
    return max(wishes, default=None)


def _rigged(
    order: Order,
    exercise: Exercise,
    plan: ExercisePlan,
    laws: Mapping[str, BandLaw],
    load_kg: float,
    maximum_kg: float | None,
) -> Rigged:
    if plan.rig is None:
        return Rigged(load_kg)
    try:
        path = path_for(order.athlete, exercise)
        return Rigged(load_kg, rig_up(order.kit, laws, plan.rig, path, load_kg, maximum_kg))
    except LoadError as fault:
        return Rigged(load_kg, fault=fault)
