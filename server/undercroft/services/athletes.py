"""A coach's athletes, in their simplest form."""

from dataclasses import dataclass

from undercroft.services import tokens
from undercroft.services.devices import DeviceSeen, seen
from undercroft.store import athletes, devices
from undercroft.store.database import writing


@dataclass(frozen=True, slots=True)
class AthleteSeen:
    id: str
    name: str
    created_at: int
    devices: tuple[DeviceSeen, ...]


def add_athlete(coach_id: str, name: str, now: int) -> AthleteSeen:
    athlete_id = tokens.new_id(now)
    with writing():
        athletes.add_athlete(athlete_id, coach_id, name, now)
    return AthleteSeen(athlete_id, name, now, ())


def athletes_of(coach_id: str) -> list[AthleteSeen]:
    """By name, each with its devices."""
    rows = athletes.athletes_of(coach_id)
    paired = devices.devices_of([row.id for row in rows])
    return [
        AthleteSeen(row.id, row.name, row.created_at, tuple(map(seen, paired[row.id])))
        for row in rows
    ]
