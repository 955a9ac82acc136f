"""What was known when a revision was sent, as kept with it."""

from datetime import date
from typing import Any

from undercroft.domain.proposals import KnownThen, MaximumThen


def write_known(known: KnownThen) -> dict[str, Any]:
    """Plain data that `read_known` reads."""
    return {
        "maxima": {lift: [one.kg, one.at.isoformat()] for lift, one in known.maxima.items()},
        "last_kg": dict(known.last_kg),
    }


def read_known(data: dict[str, Any] | None) -> KnownThen | None:
    """What `write_known` wrote; None where nothing was kept."""
    if data is None:
        return None
    maxima = {
        lift: MaximumThen(kg, date.fromisoformat(at)) for lift, (kg, at) in data["maxima"].items()
    }
    return KnownThen(maxima, data["last_kg"])
