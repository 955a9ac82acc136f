"""The mean resistance of a set, from the load that was recorded and the sheet's force curve."""

from undercroft.domain.exercise import Implement
from undercroft.domain.load_sheet import SheetExercise, SheetSet

SAME_KG = 0.01
"""Loads nearer than this are one load, written down with other decimals."""


def mean_resistance(
    load_kg: float | None,
    implement: Implement,
    sheet: SheetExercise | None = None,
    one: SheetSet | None = None,
) -> float | None:
    """Mean of force / g over the range of the lift, in kg; None where nobody can say.

    With a curve on the sheet, a bar that was loaded otherwise moves the whole curve by the
    difference: bands and chains hang where they hung. A landmine is a lever: its mean is known at
    the planned load alone. A pair of dumbbells is both of them.
    """
    if not load_kg:
        return None
    kind = Implement(sheet.implement.kind) if sheet else implement
    pieces = 2 if kind is Implement.DUMBBELLS else 1
    curve = one.curve if one else None
    if sheet is None or one is None or one.load is None or curve is None:
        return None if kind is Implement.LANDMINE else pieces * load_kg
    off = load_kg - sheet.loads[one.load].kg
    if kind is Implement.LANDMINE and abs(off) > SAME_KG:
        return None
    return curve.mean_kg + pieces * off
