"""Thirty athletes of one coach, screened and signed, and what their phones do. All invented."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from tests.browser.conftest import COACH, EMAIL, PASSWORD
from tests.domain.occlusion.people import HEALTHY
from tests.fixtures import athlete_data, kit_data
from tests.writing import Writer

from undercroft.domain.occlusion import Aim
from undercroft.services import (
    accounts,
    athlete_page,
    athletes,
    devices,
    pairing,
    screening,
    sync,
)
from undercroft.services.clock import day_of, now_ms
from undercroft.store import database, revisions
from undercroft.store.feed import athlete_lock, last_position
from undercroft.store.migrate import epoch

NAMES = [f"{first} {last}" for last in ("Halvard", "Osk", "Tindre") for first in (
    "Aud", "Birk", "Dagny", "Eskil", "Frida", "Geir", "Hedda", "Ivar", "Jorun",
)] + ["Ketil Halvard", "Liv Osk"]  # fmt: skip
OFTEN = 10_000


@dataclass(frozen=True)
class Hand:
    """An athlete of whom this test holds the phone: no browser, the same requests.

    Call with the database open.
    """

    id: str
    name: str
    device: str
    writes: Writer

    def syncs(self, *entries: dict[str, Any]) -> None:
        """Everything up, and the feed read to its end."""
        (phone,) = [one for one in devices.devices_of(self.id) if one.id == self.device]
        asked = sync.Asked(phone.id, epoch(), last_position(self.id), list(entries))
        verdicts = sync.exchange(phone, asked, now_ms(), OFTEN)["verdicts"]
        assert {one["status"] for one in verdicts} <= {"stored"}

    def does(self, spare: int) -> None:
        """The first session as planned, with so many repetitions more in reserve than planned."""
        number, sheet = self.strength_of("Week 1")
        self.syncs(*as_planned(self.writes, sheet, number, spare))

    def strength_of(self, week: str) -> tuple[int, dict[str, Any]]:
        """The newest revision, and its sheet of that week's strength session."""
        row = revisions.latest_revision(self.id)
        assert row is not None
        sheets = revisions.sheets_of(self.id, row.number).values()
        (sheet,) = [one for one in sheets if (one["name"], one["week_name"]) == ("Strength", week)]
        return row.number, sheet

    def squat_kg(self, week: str) -> float:
        _, sheet = self.strength_of(week)
        squat = sheet["exercises"][0]
        kg: float = squat["loads"][squat["sets"][0]["load"]]["kg"]
        return kg


def as_planned(
    writes: Writer, sheet: dict[str, Any], revision: int, spare: int
) -> Iterator[dict[str, Any]]:
    evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18), UTC)
    writes.at = evening.isoformat(timespec="milliseconds")
    where = {"session": sheet["session"], "revision": revision}
    yield writes.entry("session.started", {}, **where)
    for exercise in sheet["exercises"]:
        for one in exercise["sets"]:
            yield writes.entry("set.done", done(exercise, one, spare), set=one["key"], **where)
    yield writes.entry("session.finished", {"rpe": 6, "minutes": 50}, **where)


def done(exercise: dict[str, Any], one: dict[str, Any], spare: int) -> dict[str, Any]:
    target = one["target"]
    said = {name: target[name] for name in ("reps", "seconds", "distance_m") if name in target}
    if "load" in one:
        said["load_kg"] = exercise["loads"][one["load"]]["kg"]
    return said | ({"rir": target.get("rir", 2) + spare} if "reps" in target else {})


@dataclass(frozen=True)
class Month:
    """Runa, whose phone is a browser's, and the others."""

    runa: str
    secret: str
    hands: list[Hand]


def month_in(location: str) -> Month:
    """Made by the same services that the API calls, before a server starts."""
    now = now_ms()
    database.open_database(location)
    database.connect()
    coach = accounts.add_coach(accounts.make_hasher(cheap=True), EMAIL, COACH, PASSWORD, now)
    hands = [hand_of(coach, name, now) for name in NAMES]
    runa = hand_of(coach, "Runa Tealdi", now)
    _, secret, _ = pairing.invite(runa.id, now)
    database.close_all()
    return Month(runa.id, secret, hands)


def hand_of(coach: str, name: str, now: int) -> Hand:
    """An athlete with maxima, a kit, a phone, and a screening that the coach has signed."""
    athlete = athletes.add_athlete(coach, name, now).id
    athlete_page.save_document(athlete, {**known_lately(now), "name": name})
    pairs = [{"mass_kg": mass, "count": 2} for mass in (6, 8, 24)]
    athlete_page.save_kit(athlete, {**kit_data(), "dumbbells": pairs})
    with athlete_lock(athlete):
        device, _ = devices.pair(athlete, "a phone", now)
    hand = Hand(athlete, name, device, Writer(clock_ms=now))
    screening.ask(athlete, now)
    hand.syncs(answered := healthy(hand.writes, now))
    signed = screening.Signed(answered["id"], "", Aim.TRAINING)
    screening.sign(athlete, signed, screening.Coach(coach, COACH), now)
    return hand


def known_lately(now: int) -> dict[str, Any]:
    """Maxima of a fortnight ago: older ones would be worth little."""
    document = athlete_data()
    curl = {"lift": "dumbbell-curl", "kg": 30, "kind": "tested", "on": ""}
    on = (day_of(now) - timedelta(days=14)).isoformat()
    maxima = [{**one, "on": on} for one in [*document["maxima"], curl]]
    return {**document, "maxima": maxima}


def healthy(writes: Writer, now: int) -> dict[str, Any]:
    on = (day_of(now) - timedelta(days=10)).isoformat()
    writes.at = f"{day_of(now)}T00:00:01.000Z"
    body = {"answers": {**HEALTHY, "pressure-on": on}}
    return writes.entry("screening.answered", body, revision=None)
