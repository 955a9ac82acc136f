"""The feed: ordered by positions that are given under the athlete's lock."""

import threading
from contextlib import suppress

import pytest
from tests.people import AtDesk, Clock, Phone
from tests.sync.asking import positions

from undercroft.services import feed as pages
from undercroft.services.clock import DAY_MS
from undercroft.store import database
from undercroft.store.feed import UnknownAthlete, athlete_lock, publish


def say(athlete_id: str, kind: str, key: str, body: object) -> int:
    database.connect()
    try:
        with athlete_lock(athlete_id):
            return publish(athlete_id, kind, key, body)
    finally:
        database.disconnect()


def test_changes_and_entries_share_one_row_of_positions(
    device: Phone, second_device: Phone
) -> None:
    say(device.athlete_id, "kit", "kit", {"bars": []})
    entry = device.writes.done("squat.1")
    device.syncs(entry)
    say(device.athlete_id, "message", "m1", {"text": "well done"})
    items = second_device.reads_all()
    assert [(i["position"], i["kind"], i["key"]) for i in items] == [
        (1, "kit", "kit"),
        (2, "entry", entry["id"]),
        (3, "message", "m1"),
    ]
    positions(device.athlete_id)


def test_a_newer_change_of_the_same_kind_and_key_supersedes_the_older(device: Phone) -> None:
    say(device.athlete_id, "sheet", "w1.mon", {"load": 90})
    say(device.athlete_id, "sheet", "w1.wed", {"load": 70})
    say(device.athlete_id, "sheet", "w1.mon", {"load": 95})
    say(device.athlete_id, "kit", "w1.mon", {})
    items = device.reads_all()
    assert [(i["position"], i["key"], i["body"]) for i in items] == [
        (2, "w1.wed", {"load": 70}),
        (3, "w1.mon", {"load": 95}),
        (4, "w1.mon", {}),
    ]


def test_a_body_comes_back_as_it_went_in(device: Phone) -> None:
    body = {"z": 1, "a": [1.0, 1, 0.1, None, True], "text": 'é "quoted" 漢 🪨', "b": {"n": {}}}
    say(device.athlete_id, "kit", "kit", body)
    (item,) = device.reads_all()
    assert item["body"] == body
    assert list(item["body"]) == list(body)
    assert repr(item["body"]["a"]) == "[1.0, 1, 0.1, None, True]"


def test_another_athletes_changes_are_not_in_it(device: Phone, other_device: Phone) -> None:
    say(other_device.athlete_id, "kit", "kit", {})
    assert device.reads_all() == []


def test_what_was_read_is_not_sent_again(device: Phone) -> None:
    say(device.athlete_id, "kit", "kit", {})
    assert len(device.reads_all()) == 1
    assert device.reads_all() == []


def test_a_long_feed_comes_in_pages_that_join_without_gap_or_overlap(
    device: Phone, second_device: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pages, "MOST_ITEMS", 7)
    for number in range(5):
        device.syncs(*device.writes.many(4))
        say(device.athlete_id, "message", f"m{number}", {})
    first = second_device.syncs()
    assert (len(first["feed"]), first["more"], first["cursor"]) == (7, True, 7)
    rest = second_device.reads_all()
    assert [i["position"] for i in [*first["feed"], *rest]] == list(range(1, 26))


def test_large_changes_come_in_pages_by_size_but_always_at_least_one(
    device: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pages, "MOST_BYTES", 1000)
    for number in range(4):
        say(device.athlete_id, "sheet", f"s{number}", {"text": "x" * (400 if number else 5000)})
    assert [len(device.syncs()["feed"]) for _ in range(3)] == [1, 2, 1]


def test_a_snapshot_leaves_out_entries_older_than_120_days_and_keeps_all_changes(
    device: Phone, second_device: Phone, clock: Clock
) -> None:
    say(device.athlete_id, "kit", "kit", {})
    device.syncs(device.writes.done("squat.1"))
    clock.passes(121 * DAY_MS)
    recent = device.writes.done("squat.2")
    device.syncs(recent)
    items = second_device.get("/snapshot").json["feed"]
    assert [item["key"] for item in items] == ["kit", recent["id"]]


def test_a_snapshot_comes_in_pages_too(
    device: Phone, second_device: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pages, "MOST_ITEMS", 3)
    device.syncs(*device.writes.many(7))
    found, after, more = [], 0, True
    while more:
        page = second_device.get(f"/snapshot?after={after}").json
        found += [item["position"] for item in page["feed"]]
        after, more = page["cursor"], page["more"]
    assert found == list(range(1, 8))


def test_writers_at_once_get_positions_without_gaps(device: Phone, second_device: Phone) -> None:
    """Three sorts of writers, ten times each; every position once, none left out."""
    athlete_id = device.athlete_id
    app = device.browser.application

    def sends(phone: Phone) -> None:
        with app.test_client() as browser:
            token = phone.browser.get_cookie("undercroft-device").value
            browser.set_cookie("undercroft-device", token)
            for _ in range(10):
                entries = phone.writes.many(3)
                assert browser.post("/api/v1/sync", json=phone.asks(entries)).status_code == 200

    def publishes() -> None:
        for number in range(10):
            say(athlete_id, "sheet", f"s{number % 3}", {"load": number})

    threads = [
        threading.Thread(target=sends, args=(device,)),
        threading.Thread(target=sends, args=(second_device,)),
        threading.Thread(target=publishes),
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(positions(athlete_id)) == 70


def test_a_reader_among_writers_never_skips_a_position(device: Phone, second_device: Phone) -> None:
    """The reader asks again and again while another phone writes; in the end it has all."""
    app = device.browser.application
    entries = device.writes.many(60)

    def writes() -> None:
        browser = app.test_client()
        token = device.browser.get_cookie("undercroft-device").value
        browser.set_cookie("undercroft-device", token)
        for entry in entries:
            assert browser.post("/api/v1/sync", json=device.asks([entry])).status_code == 200

    writer = threading.Thread(target=writes)
    writer.start()
    seen: list[str] = []
    while writer.is_alive():
        seen += [item["key"] for item in second_device.reads_all()]
    writer.join()
    seen += [item["key"] for item in second_device.reads_all()]
    assert seen == [entry["id"] for entry in entries]


def test_no_position_is_given_to_an_athlete_who_does_not_exist(coach: AtDesk) -> None:
    with pytest.raises(UnknownAthlete):
        say("nobody", "kit", "kit", {})


def test_what_fails_under_the_lock_gives_its_position_back(device: Phone) -> None:
    database.connect()
    with suppress(ZeroDivisionError), athlete_lock(device.athlete_id):
        publish(device.athlete_id, "kit", "kit", {})
        raise ZeroDivisionError
    database.disconnect()
    assert say(device.athlete_id, "kit", "kit", {}) == 1
