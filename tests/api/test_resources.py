"""What a request takes it gives back, and addresses are believed only as far as configured."""

import gc
from dataclasses import replace
from pathlib import Path

import pytest
from flask import Flask
from tests.people import AtDesk, Clock, Phone

from undercroft.api import create_app
from undercroft.config import Settings
from undercroft.store import database as stored


def open_files() -> int:
    return len(list(Path("/proc/self/fd").iterdir()))


def test_fifty_exchanges_leave_no_file_open(device: Phone) -> None:
    device.syncs(device.writes.done("squat.1"))
    gc.collect()
    before = open_files()
    for _ in range(50):
        device.syncs(device.writes.done("squat.1"))
        device.get("/snapshot")
        device.browser.get("/")
    gc.collect()
    assert open_files() <= before


def test_fifty_refused_requests_leave_no_connection_taken(
    coach: AtDesk, device: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> None:
        raise RuntimeError

    monkeypatch.setattr("undercroft.services.taking.entries.add_rows", fails)
    for _ in range(50):
        assert device.sends(device.writes.done("squat.1")).status_code == 500
        assert coach.get("/desk/athletes/nobody/devices").status_code == 404
    assert len(stored.database.obj._in_use) == 0


def test_opening_and_closing_the_app_fifty_times_leaves_no_file_open(
    sqlite: Path, clock: Clock
) -> None:
    settings = Settings(database=str(sqlite), cheap_passwords=True)

    def once() -> None:
        app = create_app(settings, clock)
        assert app.test_client().get("/api/v1/ready").status_code == 200
        stored.close_all()

    once()
    gc.collect()
    before = open_files()
    for _ in range(50):
        once()
    gc.collect()
    assert open_files() <= before


def tries_from(app: Flask, forwarded: str) -> int:
    """How many guesses are let through that claim to come from such an address."""
    let_through = 0
    for number in range(25):
        answer = app.test_client().post(
            "/api/v1/pairing/look",
            json={"code": "ABCDEFGH"},
            headers={"X-Forwarded-For": forwarded.format(number)},
        )
        let_through += answer.status_code == 404
    return let_through


def test_a_forged_address_buys_no_more_guesses(settings: Settings, clock: Clock) -> None:
    clock.passes(600_000 - clock.now % 600_000)
    assert tries_from(create_app(settings, clock), "203.0.113.{}") == 20


def test_behind_one_proxy_the_address_that_it_saw_counts(settings: Settings, clock: Clock) -> None:
    clock.passes(600_000 - clock.now % 600_000)
    app = create_app(replace(settings, proxy_hops=1), clock)
    assert tries_from(app, "203.0.113.{}") == 25
    assert tries_from(app, "198.51.100.{}, 203.0.113.200") == 20
