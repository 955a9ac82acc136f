"""The athletes whom a coach may see, in their simplest form."""

from dataclasses import dataclass

from undercroft.services import tokens
from undercroft.services.devices import DeviceSeen, seen
from undercroft.services.rights import OWN
from undercroft.store import athletes, devices, rights
from undercroft.store.database import writing


@dataclass(frozen=True, slots=True)
class AthleteSeen:
    """`right`: what the coach who asks may do, own, read or write; `owner`: whose athlete it is."""

    id: str
    name: str
    right: str
    owner: str
    created_at: int
    devices: tuple[DeviceSeen, ...]


def add_athlete(coach_id: str, name: str, now: int) -> AthleteSeen:
    athlete_id = tokens.new_id(now)
    with writing():
        athletes.add_athlete(athlete_id, coach_id, name, now)
    (made,) = [one for one in athletes_of(coach_id) if one.id == athlete_id]
    return made


def athletes_of(coach_id: str) -> list[AthleteSeen]:
    """Own ones and those that others share, by name, each with its devices."""
    members = rights.members_of(coach_id)
    paired = devices.devices_of([one.athlete_id for one in members])
    return [
        AthleteSeen(
            one.athlete_id,
            one.name,
            one.level,
            one.owner,
            one.created_at,
            tuple(map(seen, paired[one.athlete_id])),
        )
        for one in members
    ]


def own_athletes(coach_id: str) -> list[AthleteSeen]:
    """Those of `athletes_of` who are the coach's own."""
    return [one for one in athletes_of(coach_id) if one.right == OWN]
