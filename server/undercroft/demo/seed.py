"""Fill an empty database with the demo's scenario, by the same services that the API calls."""

import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from argon2 import PasswordHasher

from undercroft.demo import wraps
from undercroft.demo.history import Trained, session_entries, sessions_in_order
from undercroft.demo.scenario import COACH_EMAIL, COACH_NAME, PEOPLE, Person, load, person_document
from undercroft.domain.program.calendar import monday_of
from undercroft.services import (
    accounts,
    athlete_page,
    athletes,
    blocks,
    devices,
    screening,
    sending,
    sync,
)
from undercroft.services.clock import DAY_MS, HOUR_MS, day_of
from undercroft.store import revisions
from undercroft.store.feed import athlete_lock, last_position
from undercroft.store.migrate import epoch

SEED = 20260302
WEEKS_BACK = 2
LAST_BLOCK = "next-two-weeks"
WEEKS_BEFORE = 4
KNOWN_DAYS = 60
ENOUGH = 1_000
HURT_IN = "w1-fri"

Say = Callable[[str], None]


@dataclass(slots=True)
class Trainee:
    """Somebody who trains: how many entries their phone made, and how strong they became."""

    id: str
    person: Person
    chance: random.Random
    n: int = 0
    gain: float = 1.0


def seed(hasher: PasswordHasher, password: str, now: int, say: Say) -> str:
    """Everybody and what they did so far; the id of the athlete whose phone is to be paired."""
    coach_id = accounts.add_coach(hasher, COACH_EMAIL, COACH_NAME, password, now)
    began = monday_of(day_of(now)) - timedelta(weeks=WEEKS_BACK)
    block_ids = {
        name: blocks.add(coach_id, load("blocks", name), now - KNOWN_DAYS * DAY_MS).id
        for name in ("four-weeks", "two-weeks", "next-two-weeks")
    }
    ids = [_add(coach_id, person, began, now) for person in PEOPLE]
    for person, athlete_id in zip(PEOPLE, ids, strict=True):
        done = "six weeks done" if person.before else "two weeks done"
        say(f"  {person.document}: {done if person.paired else 'two weeks sent'}, two to come")
        _train(coach_id, block_ids, athlete_id, person, began, now)
    return ids[0]


def _add(coach_id: str, person: Person, began: date, now: int) -> str:
    weeks = WEEKS_BEFORE if person.before else 0
    document = person_document(person, began - timedelta(weeks=weeks, days=10))
    athlete_id = athletes.add_athlete(coach_id, document["name"], now - KNOWN_DAYS * DAY_MS).id
    athlete_page.save_document(athlete_id, document)
    athlete_page.save_kit(athlete_id, load("kits", person.kit))
    return athlete_id


def _train(
    coach_id: str,
    block_ids: Mapping[str, str],
    athlete_id: str,
    person: Person,
    began: date,
    now: int,
) -> None:
    """Blocks done by those with a phone, and the next one sent and not yet begun."""
    trainee = Trainee(athlete_id, person, random.Random(f"{SEED} {person.document}"))
    if person.paired:
        with athlete_lock(athlete_id):
            devices.pair(athlete_id, "an earlier phone", now - KNOWN_DAYS * DAY_MS)
    begins = {"two-weeks": began, "next-two-weeks": began + timedelta(weeks=WEEKS_BACK)}
    if person.before:
        begins = {person.before: began - timedelta(weeks=WEEKS_BEFORE), **begins}
    for number, (name, on) in enumerate(begins.items(), start=1):
        if person.wraps and name == LAST_BLOCK:
            _open_wraps(coach_id, trainee, _evening_before(on))
            block_ids = {**block_ids, name: _wrapped(coach_id, person, on, now)}
        _send(coach_id, block_ids[name], athlete_id, on, _evening_before(on))
        if person.paired:
            _do_block(trainee, number, now)


def _open_wraps(coach_id: str, trainee: Trainee, now: int) -> None:
    """The screening asked for, answered, read and signed."""
    screening.ask(trainee.id, now - HOUR_MS)
    trainee.n += 1
    entry = wraps.answered(load("athletes", trainee.person.document), trainee.n, now)
    _sync(trainee.id, [entry], now)
    wraps.sign(trainee.id, entry, screening.Coach(coach_id, COACH_NAME), now)


def _wrapped(coach_id: str, person: Person, begins: date, now: int) -> str:
    """The block with occlusion work in the next session that is open, and in one after it."""
    after = day_of(now - person.last_heard_days * DAY_MS)
    document = wraps.with_wraps(load("blocks", LAST_BLOCK), begins, after + timedelta(days=1))
    return blocks.add(coach_id, document, now).id


def _evening_before(day: date) -> int:
    return int(datetime.combine(day, time(), UTC).timestamp() * 1000) - HOUR_MS


def _send(coach_id: str, block_id: str, athlete_id: str, on: date, now: int) -> None:
    (sent,) = sending.send(coach_id, block_id, sending.Wanted([athlete_id], on), now)
    if sent.stops:
        raise AssertionError(f"the demo's own block is refused: {sent.stops[0].what}")


def _do_block(trainee: Trainee, number: int, now: int) -> None:
    for sheet in sessions_in_order(revisions.sheets_of(trainee.id, number)):
        evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18, 30), UTC)
        heard = int(evening.timestamp() * 1000)
        if heard > now - trainee.person.last_heard_days * DAY_MS:
            break
        if sheet["session"] == trainee.person.missed:
            continue
        newest = revisions.sheets_of(trainee.id, number)[sheet["session"]]
        lines = _did(trainee, newest, evening)
        trainee.n += len(lines)
        _sync(trainee.id, lines, heard)
        trainee.gain *= 1.002


def _did(trainee: Trainee, sheet: Mapping[str, Any], evening: datetime) -> list[dict[str, Any]]:
    person = trainee.person
    strength = {lift: kg * trainee.gain for lift, kg in _true_maxima(person).items()}
    body = Trained(strength, load("athletes", person.document)["body_mass_kg"], person.measures)
    lines = session_entries(sheet, body, evening, trainee.n, trainee.chance)
    if person.pain and sheet["session"] == HURT_IN:
        lines.append(_pain(lines[-1], person.pain))
    return lines


def _sync(athlete_id: str, lines: list[dict[str, Any]], heard: int) -> None:
    """As the phone would, having read everything that was there."""
    (phone,) = devices.devices_of(athlete_id)
    asked = sync.Asked(phone.id, epoch(), last_position(athlete_id), lines)
    sync.exchange(phone, asked, heard, ENOUGH)


def _true_maxima(person: Person) -> Mapping[str, float]:
    maxima = load("athletes", person.document)["maxima"]
    return {one["lift"]: one["kg"] * person.strength for one in maxima}


def _pain(last: dict[str, Any], where: str) -> dict[str, Any]:
    body = {"where": where, "level": 4, "comment": "since the last squat"}
    return {
        **last,
        "id": last["id"][:-4] + "beef",
        "n": last["n"] + 1,
        "kind": "pain.reported",
        "body": body,
    }
