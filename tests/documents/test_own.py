"""The layer of one athlete's own changes, as it is kept."""

from datetime import date

from undercroft.documents.own import MOST_CHANGES, read_layer, write_layer
from undercroft.domain.program.own import Layer, OwnChange, SessionHead


def test_a_layer_that_grew_for_years_is_read_as_it_was_written() -> None:
    """One that cannot be read would keep everything from being sent to the athlete."""
    monday = SessionHead("Strength", 1)
    changes = [
        OwnChange(f"s{n}", "", monday, SessionHead("Strength", 2), date(2026, 11, 2))
        for n in range(MOST_CHANGES + 500)
    ]
    layer = Layer(tuple(changes))
    assert read_layer(write_layer(layer)) == layer
