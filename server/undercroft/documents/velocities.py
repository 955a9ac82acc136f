"""Loads with their velocities, by lift, as kept of each session."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from undercroft.domain.strength import LoadVelocity
from undercroft.domain.velocities import Points


def write_velocities(on: date, by_lift: Mapping[str, Points]) -> dict[str, Any]:
    """Plain data that `read_velocities` reads."""
    return {
        "on": on.isoformat(),
        "lifts": {
            lift: {key: [one.load_kg, one.velocity] for key, one in points.items()}
            for lift, points in by_lift.items()
        },
    }


def read_velocities(data: Mapping[str, Any]) -> tuple[date, dict[str, dict[str, LoadVelocity]]]:
    """The day, and by lift and set the load in kg with its fastest velocity in m/s."""
    lifts = {
        lift: {key: LoadVelocity(*one) for key, one in points.items()}
        for lift, points in data["lifts"].items()
    }
    return date.fromisoformat(data["on"]), lifts
