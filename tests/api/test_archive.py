"""Everything about an athlete to leave with, in one document and as files."""

import csv
import io
import json
import zipfile
from typing import Any

import pytest
from tests.api.training import entries_of, finished, send, sheets
from tests.fixtures import block_data
from tests.people import AtDesk, Phone
from werkzeug.test import TestResponse

from undercroft.services import archive
from undercroft.services.monitoring.tables import TABLES
from undercroft.services.tokens import fingerprint
from undercroft.store import database


def test_what_could_not_be_placed_goes_along_with_why(coach: AtDesk, device: Phone) -> None:
    sound = device.writes.done("squat.1")
    device.syncs(sound, {**device.writes.done("squat.2"), "kind": "set.juggled"})
    database.connect()
    kept = archive.of_athlete(device.athlete_id)
    database.disconnect()
    assert [entry["id"] for entry in kept["entries"]] == [sound["id"]]
    (held,) = kept["held"]
    assert held["sent"]["kind"] == "set.juggled"
    assert held["problem"]["code"] == "unknown-kind"
    assert held["device"] == device.id


def files(answer: TestResponse) -> dict[str, str]:
    assert answer.status_code == 200, answer.text
    assert answer.mimetype == "application/zip"
    assert answer.headers["Content-Disposition"].startswith("attachment; filename=")
    with zipfile.ZipFile(io.BytesIO(answer.data)) as kept:
        return {name: kept.read(name).decode() for name in kept.namelist()}


@pytest.fixture
def trained(coach: AtDesk, ready: str, block: str, device: Phone) -> Phone:
    """The phone of an athlete who did Monday of the block and wrote of it."""
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    device.syncs(device.writes.entry("pain.reported", {"where": "=1+1", "level": 3}))
    return device


def test_everything_is_in_it_for_programs_and_for_people(coach: AtDesk, trained: Phone) -> None:
    kept = files(coach.get(f"/desk/athletes/{trained.athlete_id}/archive"))
    whole = json.loads(kept["athlete.json"])
    assert [one["number"] for one in whole["revisions"]] == [1]
    rows = list(csv.DictReader(kept["entries.csv"].splitlines()))
    assert [row["id"] for row in rows] == [entry["id"] for entry in whole["entries"]]
    sets = list(csv.DictReader(kept["sets.csv"].splitlines()))
    assert len(sets) == sum(row["kind"] == "set.done" for row in rows)
    assert {row["session_name"] for row in sets} == {"Squat and press"}
    assert all(row["exercise"] and row["reps"] for row in sets)
    assert {f"numbers/{name}.csv" for name in TABLES} < set(kept)


def another_session(phone: Phone) -> Any:
    """A sheet of a session that was not begun."""
    known = sheets(phone.get("/snapshot?after=0").json["feed"])
    return next(one for key, one in known.items() if key != "w1-mon")


def sets_of(coach: AtDesk, phone: Phone) -> list[dict[str, str]]:
    kept = files(coach.get(f"/desk/athletes/{phone.athlete_id}/archive"))
    return list(csv.DictReader(kept["sets.csv"].splitlines()))


def test_a_set_that_was_taken_back_is_none_that_was_done(coach: AtDesk, trained: Phone) -> None:
    sheet = another_session(trained)
    where = {"session": sheet["session"], "revision": 1}
    where["set"] = sheet["exercises"][0]["sets"][0]["key"]
    done = trained.writes.entry("set.done", {"load_kg": 20, "reps": 5, "rir": 2}, **where)
    trained.syncs(done)
    assert where["set"] in {row["set"] for row in sets_of(coach, trained)}
    trained.syncs(trained.writes.entry("set.cleared", {}, replaces=done["id"], **where))
    assert where["set"] not in {row["set"] for row in sets_of(coach, trained)}


def test_sets_after_a_swap_stand_under_what_was_done(coach: AtDesk, trained: Phone) -> None:
    sheet = another_session(trained)
    where = {"session": sheet["session"], "revision": 1}
    line = next(one for one in sheet["exercises"] if one.get("alternatives"))
    other = line["alternatives"][0]
    first, body = line["sets"][0]["key"], {"load_kg": 20, "reps": 5, "rir": 2}
    swap = {"exercise": line["key"], "to": other.get("key") or other["exercise"]}
    trained.syncs(
        trained.writes.entry("exercise.swapped", swap, **where),
        trained.writes.entry("set.done", body, set=first, **where),
        trained.writes.entry("set.added", {"exercise": line["key"]}, set="extra", **where),
        trained.writes.entry("set.done", body, set="extra", **where),
    )
    swapped = [row for row in sets_of(coach, trained) if row["session"] == sheet["session"]]
    assert [row["set"] for row in swapped] == [first, "extra"]
    assert {row["exercise"] for row in swapped} == {other["name"]}
    assert {row["planned"] for row in swapped} == {line["name"]}
    assert {row["session_name"] for row in swapped} == {sheet["name"]}


def test_sets_with_one_key_in_two_sessions_stand_under_their_own(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    document = block_data()
    first, second = document["weeks"][0]["sessions"][:2]
    second["exercises"] = first["exercises"]
    made = coach.post("/desk/blocks", {"document": document}).json
    assert send(coach, str(made["id"]), ready)["refused"] == []
    key = first["exercises"][0]["sets"][0]["key"]
    for one in (first, second):
        where = {"session": one["key"], "revision": 1, "set": key}
        device.syncs(device.writes.entry("set.done", {"load_kg": 60, "reps": 5}, **where))
    names = [row["session_name"] for row in sets_of(coach, device)]
    assert names == [first["name"], second["name"]]


def test_a_phone_saves_the_same_archive(coach: AtDesk, trained: Phone) -> None:
    at_the_desk = coach.get(f"/desk/athletes/{trained.athlete_id}/archive").data
    assert trained.get("/archive").data == at_the_desk


def test_no_cell_of_it_is_run_by_a_spreadsheet(coach: AtDesk, trained: Phone) -> None:
    kept = files(coach.get(f"/desk/athletes/{trained.athlete_id}/archive"))
    (pain,) = csv.DictReader(kept["numbers/pain.csv"].splitlines())
    assert pain["where"] == "'=1+1"
    tables = [text for name, text in kept.items() if name.endswith(".csv")]
    cells = [cell for text in tables for row in csv.reader(text.splitlines()) for cell in row]
    assert [cell for cell in cells if cell.startswith(("=", "+", "@", "\t"))] == []


def test_it_holds_no_secret(coach: AtDesk, trained: Phone) -> None:
    secret = coach.invites(trained.athlete_id)
    cookie = trained.browser.get_cookie("undercroft-device")
    assert cookie is not None
    text = "".join(files(coach.get(f"/desk/athletes/{trained.athlete_id}/archive")).values())
    for word in (secret, cookie.value, fingerprint(secret), fingerprint(cookie.value), "argon2"):
        assert word not in text
