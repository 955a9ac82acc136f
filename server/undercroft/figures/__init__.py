"""Check values from outside, in one place for `undercroft figures` and for the tests."""

from undercroft.figures import bands, mechanics, monitoring, plates, pressure, strength, tracker
from undercroft.figures.row import REFUSED, Checked, Mark, Row, checked

ROWS: tuple[Row, ...] = (
    *strength.ROWS,
    *tracker.ROWS,
    *bands.ROWS,
    *mechanics.CHAINS,
    *mechanics.TARGETS,
    *mechanics.LANDMINE,
    *mechanics.PULLEY,
    *mechanics.TIPPING,
    *plates.ROWS,
    *pressure.ROWS,
    *monitoring.ROWS,
)

__all__ = ["REFUSED", "ROWS", "Checked", "Mark", "Row", "checked"]
