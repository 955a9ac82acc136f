"""Fault 18: weeks offline, thousands of entries at once, and 429s on the way."""

import pytest
from peewee import OperationalError
from tests.people import AtDesk, Clock, Phone, statuses
from tests.storing import everything
from tests.sync.asking import ids

from undercroft.services.clock import MINUTE_MS


def test_18_three_weeks_offline_come_in_at_once(device: Phone, second_device: Phone) -> None:
    entries = device.writes.many(3000)
    for start in range(0, 3000, 500):
        device.syncs(*entries[start : start + 500])
    assert device.syncs()["stored_through"] == 3000
    assert [item["key"] for item in second_device.reads_all()] == ids(entries)


def test_18_on_the_way_a_429_stores_nothing_and_says_when_to_go_on(
    device: Phone, clock: Clock
) -> None:
    clock.passes(MINUTE_MS - clock.now % MINUTE_MS)
    for _ in range(120):
        device.syncs(device.writes.done("squat.1"))
    entry = device.writes.done("squat.2")
    before = everything()
    refused = device.sends(entry)
    assert refused.status_code == 429
    assert 0 < int(refused.headers["Retry-After"]) <= 61
    assert everything() == before
    assert device.sends().status_code == 200, "reading the feed is free"
    clock.passes(MINUTE_MS)
    assert device.syncs(entry)["stored_through"] == 121


def test_18_counting_that_fails_keeps_no_set_from_being_stored(
    device: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> int:
        raise OperationalError("no such table: rate_limit")

    monkeypatch.setattr("undercroft.store.limits.count", fails)
    assert statuses(device.syncs(device.writes.done("squat.1"))) == ["stored"]


def test_18_while_log_in_and_pairing_stay_shut_where_counting_fails(
    coach: AtDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> int:
        raise OperationalError("no such table: rate_limit")

    secret = coach.invites(coach.adds_athlete("Tove Lind"))
    monkeypatch.setattr("undercroft.store.limits.count", fails)
    look = coach.app.test_client().post("/api/v1/pairing/look", json={"secret": secret})
    assert look.status_code == 503
    body = {"email": coach.email, "password": "rope, pulley, chalk"}
    assert coach.app.test_client().post("/api/v1/coach/log-in", json=body).status_code == 503
