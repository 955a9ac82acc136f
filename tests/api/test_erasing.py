"""An athlete is erased: nothing of theirs is left in any table, everything of others is."""

import sqlite3
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from flask import Flask
from tests.api.training import entries_of, finished, send, sheets
from tests.people import AtDesk, Clock, Phone, enlist, statuses
from tests.storing import everything

from undercroft.services import handing_over
from undercroft.services.auditing import check
from undercroft.services.devices import IDLE_MS
from undercroft.store import database
from undercroft.store.feed import athlete_lock


@pytest.fixture
def trained(coach: AtDesk, writing_coach: AtDesk, ready: str, block: str, device: Phone) -> Phone:
    """The phone of a shared athlete of whom every table knows something."""
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    device.syncs({**device.writes.done("squat.9"), "kind": "set.juggled"})
    coach.post(f"/desk/athletes/{ready}/screening/ask")
    coach.post(f"/desk/athletes/{ready}/codes")
    coach.offers("read", ready)
    coach.invites(ready)
    return device


def erase(coach: AtDesk, athlete: str, name: str = "Runa Tealdi") -> Any:
    return coach.post(f"/desk/athletes/{athlete}/erase", {"name": name})


def test_nothing_of_the_athlete_is_left_in_any_table(coach: AtDesk, trained: Phone) -> None:
    before = everything()
    named = {table for table, rows in before.items() if trained.athlete_id in repr(rows)}
    assert {"Entry", "Change", "Sheet", "Revision", "CoachRight", "OfferedAthlete"} < named
    assert erase(coach, trained.athlete_id).status_code == 204
    after = everything()
    for word in (trained.athlete_id, trained.id, "Runa"):
        left = {table for table, rows in after.items() if word in repr(rows)}
        assert left == set(), word


def test_everything_of_others_stays_whole(
    coach: AtDesk, trained: Phone, block: str, other_device: Phone
) -> None:
    other = coach.adds_athlete("Aada Berg")
    shared = coach.offers("read", trained.athlete_id, other)
    other_device.syncs(other_device.writes.done("squat.1"))
    before = everything()
    erase(coach, trained.athlete_id)
    after = everything()
    theirs = (trained.athlete_id, trained.id)
    for table in before.keys() - {"Offer", "ErasedDevice"}:
        of_others = [row for row in before[table] if not any(one in repr(row) for one in theirs)]
        assert after[table] == of_others, table
    assert coach.get(f"/desk/blocks/{block}").status_code == 200
    assert coach.get(f"/desk/athletes/{other}").status_code == 200
    assert statuses(other_device.syncs(other_device.writes.done("squat.2"))) == ["stored"]
    assert len(coach.get("/desk/offers").json["offers"]) == 1, shared
    database.connect()
    assert list(check()) == []
    database.disconnect()


def test_nobody_erases_an_athlete_who_was_handed_over_meanwhile(
    coach: AtDesk, other_coach: AtDesk, athlete: str
) -> None:
    with ThreadPoolExecutor() as elsewhere:
        database.connect()
        with athlete_lock(athlete):
            waiting = elsewhere.submit(erase, coach, athlete, "Runa Falk")
            time.sleep(1)
            handing_over.hand_over(athlete, other_coach.id, None, 1)
        database.disconnect()
    assert waiting.result().status_code == 404
    assert other_coach.get(f"/desk/athletes/{athlete}").status_code == 200


def test_the_name_has_to_be_typed(coach: AtDesk, trained: Phone) -> None:
    before = everything()
    answer = erase(coach, trained.athlete_id, "Runa")
    assert answer.status_code == 422
    assert answer.json["errors"][0]["right"] == "type Runa Tealdi"
    assert everything() == before


def test_the_athletes_phones_are_told_plainly_and_take_nothing_away(
    coach: AtDesk, trained: Phone, second_device: Phone
) -> None:
    erase(coach, trained.athlete_id)
    for phone in (trained, second_device):
        answer = phone.sends(phone.writes.done("squat.2"))
        assert answer.status_code == 401
        assert answer.json["type"] == "urn:undercroft:problem:erased"
        assert "erased what the server had of you" in answer.json["detail"]
        assert "Set-Cookie" not in answer.headers


def test_phones_are_told_as_long_as_one_may_be_away(
    coach: AtDesk, trained: Phone, clock: Clock, app: Flask
) -> None:
    erase(coach, trained.athlete_id)
    clock.passes(IDLE_MS + 1)
    later = enlist(app, clock, "Casper Nyberg", "casper@example.org")
    erase(later, later.adds_athlete("Aada Berg"), "Aada Berg")
    assert trained.sends().json["type"] == "urn:undercroft:problem:log-in-needed"


def test_the_file_keeps_no_trace(sqlite: Path, sqlite_app: Flask, clock: Clock) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    phone = coach.pairs_phone(coach.adds_athlete("Runa Falk"))
    sore = {"where": "a sore left knee", "level": 3}
    phone.syncs(*(phone.writes.entry("pain.reported", sore) for _ in range(50)))
    assert b"sore left knee" in everything_in(sqlite)
    assert erase(coach, phone.athlete_id, "Runa Falk").status_code == 204
    assert b"sore left knee" not in everything_in(sqlite)
    assert phone.athlete_id.encode() not in everything_in(sqlite)


def everything_in(sqlite: Path) -> bytes:
    """The bytes of the database and of its side files."""
    with closing(sqlite3.connect(sqlite)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    return b"".join(path.read_bytes() for path in sorted(sqlite.parent.glob("undercroft.sqlite3*")))
