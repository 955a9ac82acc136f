"""Fill an empty database with the demo's scenario, by the same services that the API calls."""

import random
from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from argon2 import PasswordHasher

from undercroft.demo.history import session_entries, sessions_in_order
from undercroft.demo.scenario import COACH_EMAIL, COACH_NAME, PEOPLE, Person, load, person_document
from undercroft.domain.program.calendar import monday_of
from undercroft.services import accounts, athlete_page, athletes, blocks, devices, sending, sync
from undercroft.services.clock import DAY_MS, day_of
from undercroft.store import revisions
from undercroft.store.feed import athlete_lock, last_position
from undercroft.store.migrate import epoch

SEED = 20260302
WEEKS_BACK = 2
ENOUGH = 1_000
HURT_IN = "w1-fri"

Say = Callable[[str], None]


def seed(hasher: PasswordHasher, password: str, now: int, say: Say) -> str:
    """Everybody and what they did so far; the id of the athlete whose phone is to be paired."""
    coach_id = accounts.add_coach(hasher, COACH_EMAIL, COACH_NAME, password, now)
    began = monday_of(day_of(now)) - timedelta(weeks=WEEKS_BACK)
    block_ids = [
        blocks.add(coach_id, load("blocks", name), now - 21 * DAY_MS).id
        for name in ("two-weeks", "next-two-weeks")
    ]
    ids = [_add(coach_id, person, began, now) for person in PEOPLE]
    for person, athlete_id in zip(PEOPLE, ids, strict=True):
        say(f"  {person.document}: two weeks {'done' if person.paired else 'sent'}, two to come")
        _train(coach_id, block_ids, athlete_id, person, began, now)
    return ids[0]


def _add(coach_id: str, person: Person, began: date, now: int) -> str:
    document = person_document(person, began - timedelta(days=10))
    athlete_id = athletes.add_athlete(coach_id, document["name"], now - 21 * DAY_MS).id
    athlete_page.save_document(athlete_id, document)
    athlete_page.save_kit(athlete_id, load("kits", person.kit))
    return athlete_id


def _train(
    coach_id: str, block_ids: list[str], athlete_id: str, person: Person, began: date, now: int
) -> None:
    """The first block done by those with a phone, the second one sent and not yet begun."""
    _send(coach_id, block_ids[0], athlete_id, began, now - 15 * DAY_MS)
    if person.paired:
        _do_block(athlete_id, person, now)
    this_week = began + timedelta(weeks=WEEKS_BACK)
    _send(coach_id, block_ids[1], athlete_id, this_week, now - DAY_MS)


def _send(coach_id: str, block_id: str, athlete_id: str, on: date, now: int) -> None:
    (sent,) = sending.send(coach_id, block_id, sending.Wanted([athlete_id], on), now)
    if sent.stops:
        raise AssertionError(f"the demo's own block is refused: {sent.stops[0].what}")


def _do_block(athlete_id: str, person: Person, now: int) -> None:
    chance = random.Random(f"{SEED} {person.document}")
    with athlete_lock(athlete_id):
        devices.pair(athlete_id, "an earlier phone", now - 15 * DAY_MS)
    strength = _true_maxima(person)
    number, n = 1, 0
    for sheet in sessions_in_order(revisions.sheets_of(athlete_id, number)):
        evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18, 30), UTC)
        heard = int(evening.timestamp() * 1000)
        if heard > now - person.last_heard_days * DAY_MS:
            break
        newest = revisions.sheets_of(athlete_id, number)[sheet["session"]]
        lines = session_entries(newest, strength, evening, n, chance)
        if person.pain and sheet["session"] == HURT_IN:
            lines.append(_pain(lines[-1], person.pain))
        n += len(lines)
        _sync(athlete_id, lines, heard)
        strength = {lift: kg * 1.002 for lift, kg in strength.items()}


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
