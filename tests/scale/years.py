"""Years of one athlete's training, by the services that the API calls."""

import random
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from undercroft.demo.history import Trained, session_entries, sessions_in_order
from undercroft.demo.scenario import load
from undercroft.services import athlete_page, athletes, devices, sending, sync
from undercroft.services.tokens import new_id
from undercroft.store import revisions
from undercroft.store.feed import last_position
from undercroft.store.migrate import epoch

MISSED = 0.06
"""Share of sessions that are never begun: our own choice, as are the others here."""

HURTS = 0.02
WRITES = 0.05
GAIN, MOST_GAINED = 0.006, 1.25
"""What share of the way to the strongest that they can become a session brings them."""

ENOUGH = 1_000_000


@dataclass(frozen=True, slots=True)
class Sort:
    """The fixtures that somebody comes from, whether the velocity of their bar is measured, and
    after how many sessions they come to where there is a signal.
    """

    document: str
    kit: str
    block: str
    syncs_after: int
    measures: bool = False


SORTS = (
    Sort("runa", "forge-cellar", "four-weeks", 1, measures=True),
    Sort("osk", "station-basement", "two-weeks", 3),
    Sort("tilde", "forge-cellar", "four-weeks", 3),
)


@dataclass(slots=True)
class Trainee:
    """Somebody with a phone, the entries it did not send yet, and how strong they became."""

    id: str
    sort: Sort
    chance: random.Random
    n: int = 0
    unsent: list[dict[str, Any]] = field(default_factory=list)
    gain: float = 1.0


def enrol(coach_id: str, sort: Sort, began: date, chance: random.Random) -> Trainee:
    """A new athlete with document, kit and phone, ten days before the first session."""
    day = began - timedelta(days=10)
    document = load("athletes", sort.document)
    for maximum in document["maxima"]:
        maximum["on"] = day.isoformat()
    athlete_id = athletes.add_athlete(coach_id, document["name"], at(day)).id
    athlete_page.save_document(athlete_id, document)
    athlete_page.save_kit(athlete_id, load("kits", sort.kit))
    devices.pair(athlete_id, "a phone", at(day))
    return Trainee(athlete_id, sort, chance)


def train(
    trainee: Trainee, coach_id: str, block_id: str, began: date, until: date
) -> Iterator[date]:
    """Block after block from a Monday on, session after session; tells each day on the way.

    The last block is sent whole and done up to `until`.
    """
    number, monday = 0, began
    weeks = len(load("blocks", trainee.sort.block)["weeks"])
    while monday <= until:
        number += 1
        _send(trainee, coach_id, block_id, monday)
        for planned in sessions_in_order(revisions.sheets_of(trainee.id, number)):
            day = date.fromisoformat(planned["on"])
            if day < until and trainee.chance.random() >= MISSED:
                _does(trainee, number, planned["session"], day)
                yield day
        syncs(trainee, min(monday + timedelta(weeks=weeks), until))
        monday += timedelta(weeks=weeks)


def at(day: date, hour: int = 12) -> int:
    """Milliseconds since 1970 of a full hour of that day, UTC."""
    return int(datetime.combine(day, time(hour), UTC).timestamp() * 1000)


def _send(trainee: Trainee, coach_id: str, block_id: str, monday: date) -> None:
    wanted = sending.Wanted([trainee.id], monday)
    (sent,) = sending.send(coach_id, block_id, wanted, at(monday - timedelta(days=1)))
    if sent.stops:
        raise AssertionError(f"the invented block is refused: {sent.stops[0].what}")


def _does(trainee: Trainee, number: int, session: str, day: date) -> None:
    """The session on the newest sheet that the phone has, synced where there is a signal."""
    sheet = revisions.sheet_of(trainee.id, number, session)
    evening = datetime.combine(day, time(18), UTC)
    lines = session_entries(sheet, body_of(trainee), evening, trainee.n, trainee.chance)
    lines += _more(lines[-1], at(day, 20), trainee.chance)
    trainee.n += len(lines)
    trainee.unsent += lines
    trainee.gain += GAIN * (MOST_GAINED - trainee.gain)
    if len({line["session"] for line in trainee.unsent}) == trainee.sort.syncs_after:
        syncs(trainee, day)


def syncs(trainee: Trainee, day: date) -> None:
    """The phone sends what it has."""
    if not trainee.unsent:
        return
    (phone,) = devices.devices_of(trainee.id)
    asked = sync.Asked(phone.id, epoch(), last_position(trainee.id), trainee.unsent)
    answer = sync.exchange(phone, asked, at(day, 21), ENOUGH)
    assert {one["status"] for one in answer["verdicts"]} == {"stored"}
    trainee.unsent = []


def body_of(trainee: Trainee) -> Trained:
    document = load("athletes", trainee.sort.document)
    maxima = {one["lift"]: one["kg"] * trainee.gain for one in document["maxima"]}
    return Trained(maxima, document["body_mass_kg"], trainee.sort.measures)


def _more(last: Mapping[str, Any], at_ms: int, chance: random.Random) -> list[dict[str, Any]]:
    """Now and then a pain or some words after the session."""
    told = []
    if chance.random() < HURTS:
        told.append(("pain.reported", {"where": "left knee", "level": chance.randint(1, 4)}))
    if chance.random() < WRITES:
        told.append(("message", {"text": "The chains ran out, I took the sandbag."}))
    return [
        {**last, "id": new_id(at_ms + n), "n": last["n"] + n, "kind": kind, "body": body}
        for n, (kind, body) in enumerate(told, start=1)
    ]
