"""Plates for a target, against integer programming."""

from functools import partial

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import Load, nearest
from undercroft.domain.plates import loadable
from undercroft.figures.row import Mark, Row

SUBJECT = "plates"
MILP = "scipy.optimize.milp"


def _plates(*masses: float, each_side: int) -> tuple[Plate, ...]:
    """Thin ones, so that the sleeve's length plays no part."""
    return tuple(Plate(kg, 2 * each_side * masses.count(kg), 0.005) for kg in sorted(set(masses)))


WIDE = loadable(
    Bar("bar", "bar", 20.0, collar_mass_kg=0.0), _plates(25, 20, 15, 10, 5, 2.5, 1.25, each_side=6)
)
SCARCE = loadable(Bar("light", "bar", 15.0), _plates(20, 15, 10, 10, 5, 2.5, 1.25, each_side=1))


def _count(target_kg: float) -> int:
    return len(nearest(WIDE, target_kg).load.side)


def _scarce(target_kg: float) -> Load:
    return nearest(SCARCE, target_kg).load


ROWS = (
    *(
        Row(SUBJECT, f"fewest plates a side for {target:g} kg", "20 kg bar, 25 to 1.25", expected,
            partial(_count, target), 0.0, MILP, Mark.DERIVED)
        for target, expected in ((100.0, 2), (102.5, 3), (142.5, 4), (187.5, 6))
    ),
    Row(SUBJECT, "one of each and two tens: 92.5 kg", "15 kg bar", 92.5,
        lambda: _scarce(92.5).kg, 0.0, MILP, Mark.DERIVED),
    Row(SUBJECT, "its plates a side", "20 + 15 + 2.5 + 1.25", 4,
        lambda: len(_scarce(92.5).side), 0.0, MILP, Mark.DERIVED),
    Row(SUBJECT, "one of each and two tens: 93 kg cannot be", "15 kg bar", 92.5,
        lambda: _scarce(93).kg, 0.0, MILP, Mark.DERIVED),
)  # fmt: skip
