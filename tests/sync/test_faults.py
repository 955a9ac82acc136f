"""What goes wrong between a cellar and a server, and what must come of it.

The faults that a sync must survive, each with its tests; numbers stand in the tests' names.

1 the answer lost after the commit, 2 the request lost before it, 3 the same request twice at once,
4 entries out of order and a batch partly taken, 5 two devices on one session, 9 a clock that is
wrong or jumps, 11 a phone's storage wiped, 12 older and newer apps, 13 a revision during a session,
14 a database restored from yesterday, 15 a device revoked or its pairing expired while offline,
17 a proxy that cuts the body short, 19 daylight saving and travel: here.
8 the server killed around a commit: test_killed.py. 18 three weeks offline and 429s on the way:
test_long_offline.py. 20 a full disk: test_full_disk.py. 21 a poisoned entry: test_poison.py.
6 two tabs, 7 a browser killed after a tap, 10 storage full or hanging, 16 a captive portal are the
phone's: pwa/src/offline and tests/browser; what the server does for 16 is a header, see
tests/api/test_headers.py.
"""

import json
import threading
from typing import Any

import pytest
from tests.people import AtDesk, Clock, Phone, statuses
from tests.storing import everything
from tests.sync.asking import ids, positions, stored

from undercroft.services.clock import DAY_MS
from undercroft.store import database, migrate
from undercroft.store.models import Athlete, Entry


def test_1_an_answer_lost_after_the_commit_doubles_nothing(device: Phone) -> None:
    entries = device.writes.many(3)
    lost = device.syncs(*entries)
    again = device.syncs(*entries)
    assert statuses(lost) == ["stored"] * 3
    assert statuses(again) == ["duplicate"] * 3
    assert [v["position"] for v in again["verdicts"]] == [v["position"] for v in lost["verdicts"]]
    assert stored(device) == ids(entries)
    assert again["stored_through"] == 3


def test_2_a_request_lost_before_it_is_simply_sent_again(device: Phone) -> None:
    lost, sent = device.writes.many(2), device.writes.many(2)
    answer = device.syncs(*sent)
    assert answer["stored_through"] == 0, "the phone sees that the server has a gap at 1"
    assert device.syncs(*lost)["stored_through"] == 4


def test_3_the_same_request_twice_at_once_stores_it_once(device: Phone) -> None:
    entries = device.writes.many(40)
    answers: list[dict[str, Any]] = []

    def send() -> None:
        browser = device.browser.application.test_client()
        browser.set_cookie(
            "undercroft-device", device.browser.get_cookie("undercroft-device").value
        )
        answer = browser.post("/api/v1/sync", json=device.asks(entries))
        assert answer.status_code == 200, answer.text
        answers.append(answer.json)

    threads = [threading.Thread(target=send) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    found = sorted(set(statuses(answer)).pop() for answer in answers)
    assert found == ["duplicate", "duplicate", "duplicate", "stored"]
    assert stored(device) == ids(entries)
    positions(device.athlete_id)


def test_4_entries_out_of_order_and_a_batch_partly_taken(device: Phone) -> None:
    entries = device.writes.many(6)
    assert device.syncs(entries[4], entries[1])["stored_through"] == 0
    assert device.syncs(entries[0])["stored_through"] == 2
    answer = device.syncs(*reversed(entries))
    assert sorted(statuses(answer)) == ["duplicate"] * 3 + ["stored"] * 3
    assert answer["stored_through"] == 6
    assert sorted(stored(device)) == sorted(ids(entries))


def test_5_two_devices_on_one_session_both_end_with_everything(
    device: Phone, second_device: Phone
) -> None:
    mine, theirs = device.writes.done("squat.1"), second_device.writes.done("squat.1", reps=5)
    device.syncs(mine)
    second_device.syncs(theirs)
    assert [item["key"] for item in device.reads_all()] == [theirs["id"]]
    device.cursor = second_device.cursor = 0
    assert [item["key"] for item in second_device.reads_all()] == [mine["id"]]
    assert sorted(stored(device)) == sorted([mine["id"], theirs["id"]])


@pytest.mark.parametrize(
    "at",
    [
        "1999-12-31T23:59:59Z",
        "2027-02-03T18:04:11.250+01:00",
        "2026-02-03T18:04:11-11:00",
        "2026-03-29T02:30:00+01:00",
        "9999-12-31T23:59:59.999999+14:00",
    ],
)
def test_9_and_19_a_clock_that_is_wrong_or_has_travelled_is_data_and_never_order(
    device: Phone, second_device: Phone, at: str
) -> None:
    first = device.writes.done("squat.1")
    device.writes.at = at
    second = device.writes.corrected(first, reps=2)
    assert statuses(device.syncs(first, second)) == ["stored", "stored"]
    assert [item["body"]["at"] for item in second_device.reads_all()] == [first["at"], at]


def test_11_a_wiped_phone_pairs_again_and_is_told_what_the_server_has(
    coach: AtDesk, device: Phone
) -> None:
    device.syncs(*device.writes.many(5))
    anew = coach.pairs_phone(device.athlete_id)
    snapshot = anew.get("/snapshot").json
    assert [item["kind"] for item in snapshot["feed"]] == ["entry"] * 5
    assert (snapshot["stored_through"], snapshot["cursor"]) == (0, 5)


def test_11_a_phone_that_kept_only_its_cookie_gets_its_own_entries_back(device: Phone) -> None:
    entries = device.writes.many(5)
    device.syncs(*entries)
    snapshot = device.get("/snapshot").json
    assert snapshot["device"] == device.id
    assert snapshot["stored_through"] == 5, "it counts on from here"
    assert [item["body"] for item in snapshot["feed"]] == entries


@pytest.mark.parametrize(
    ("change", "code"),
    [({"v": 2}, "newer-version"), ({"kind": "sauna.taken"}, "unknown-kind")],
)
def test_12_what_only_a_newer_server_knows_is_held_and_never_dropped(
    coach: AtDesk, device: Phone, change: dict[str, Any], code: str
) -> None:
    odd = {**device.writes.done("squat.1"), **change}
    good = device.writes.done("squat.2")
    answer = device.syncs(odd, good)
    assert statuses(answer) == ["held", "stored"]
    assert answer["verdicts"][0]["problem"]["code"] == code
    assert answer["stored_through"] == 2
    (held,) = coach.held(device.athlete_id)
    assert held["sent"] == odd


def test_13_an_entry_of_an_old_revision_is_taken(device: Phone) -> None:
    entry = device.writes.entry("session.started", revision=1, session="w1.mon")
    later = device.writes.entry("session.started", revision=40, session="w1.mon")
    assert statuses(device.syncs(later, entry)) == ["stored", "stored"]


def restore_yesterday(phone: Phone, kept: int) -> None:
    """The database as it was after the first `kept` entries: a new life of it."""
    database.connect()
    with database.writing():
        Entry.delete().where(Entry.position > kept).execute()
        Athlete.update(position=kept).execute()
        database.database.execute_sql(f"UPDATE device SET stored_through = {kept}")
        migrate.new_epoch()
    database.disconnect()


def test_14_after_a_restore_phones_begin_from_a_snapshot_and_nothing_they_hold_is_lost(
    device: Phone, second_device: Phone
) -> None:
    entries = device.writes.many(5)
    device.syncs(*entries)
    second_device.reads_all()
    restore_yesterday(device, kept=2)

    answer = device.sends(device.writes.done("squat.6")).json
    assert answer["epoch"] != device.epoch
    assert (answer["feed"], answer["cursor"], answer["more"]) == ([], 0, False)
    assert statuses(answer) == ["stored"], (
        "the entries are taken whichever life they were meant for"
    )
    assert answer["stored_through"] == 2

    snapshot = device.get("/snapshot").json
    device.epoch, device.cursor = snapshot["epoch"], snapshot["cursor"]
    above = [e for e in entries if e["n"] > snapshot["stored_through"]]
    assert device.syncs(*above)["stored_through"] == 6
    assert set(stored(device)) >= set(ids(entries))


def test_14_a_cursor_beyond_the_end_tells_the_phone_to_begin_again(device: Phone) -> None:
    device.syncs(*device.writes.many(3))
    device.cursor = 99
    answer = device.sends().json
    assert answer["cursor"] == 3 < device.cursor


def test_15_a_revoked_devices_entries_are_held_for_the_coach(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    coach.revokes(device)
    answer = device.syncs(*device.writes.many(2))
    assert statuses(answer) == ["held", "held"]
    assert answer["revoked"] is True
    assert {v["problem"]["code"] for v in answer["verdicts"]} == {"revoked-device"}
    assert len(coach.held(device.athlete_id)) == 2
    assert second_device.reads_all() == []


def test_15_a_revoked_device_learns_nothing_more(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    coach.revokes(device)
    second_device.syncs(second_device.writes.done("squat.1"))
    assert device.syncs()["feed"] == []
    assert device.get("/snapshot").status_code == 401


def test_15_after_an_expired_pairing_nothing_is_stored_and_nothing_is_lost(
    coach: AtDesk, device: Phone, clock: Clock
) -> None:
    entry = device.writes.done("squat.1")
    clock.passes(400 * DAY_MS)
    before = everything()
    assert device.sends(entry).status_code == 401
    assert everything() == before


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 0.999])
def test_17_a_body_that_a_proxy_cut_short_stores_nothing(device: Phone, share: float) -> None:
    body = json.dumps(device.asks(device.writes.many(20)))
    before = everything()
    cut = body[: int(len(body) * share)]
    answer = device.browser.post("/api/v1/sync", data=cut, content_type="application/json")
    assert answer.status_code == 400
    assert everything() == before
