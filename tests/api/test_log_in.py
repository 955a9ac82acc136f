"""Log-in of coaches: what opens the desk, for how long, and how it is ended."""

import statistics
import time
from dataclasses import replace
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient
from tests.people import PASSWORD, AtDesk, Clock, enlist
from werkzeug.test import TestResponse

from undercroft.api import create_app
from undercroft.api.context import NAME
from undercroft.config import Settings
from undercroft.services import accounts
from undercroft.services.accounts import make_hasher
from undercroft.services.clock import DAY_MS, MINUTE_MS
from undercroft.store import database
from undercroft.store.models import Coach, CoachLogin

AGAIN = {"password": PASSWORD}


def log_in(
    client: FlaskClient, email: str, password: str = PASSWORD, address: str = "127.0.0.1"
) -> TestResponse:
    return client.post(
        "/api/v1/coach/log-in",
        json={"email": email, "password": password},
        environ_base={"REMOTE_ADDR": address},
    )


def test_the_right_password_opens_the_desk(coach: AtDesk) -> None:
    assert coach.get("/coach/me").json == {
        "id": coach.id,
        "name": "Ottilie Brandt",
        "email": "ottilie@example.org",
    }


def test_the_address_may_be_typed_in_any_case(coach: AtDesk, client: FlaskClient) -> None:
    assert log_in(client, " Ottilie@Example.org ").status_code == 200


def test_a_wrong_password_and_an_unknown_address_get_the_same_words(
    coach: AtDesk, client: FlaskClient
) -> None:
    wrong = log_in(client, coach.email, "not the password")
    unknown = log_in(client, "nobody@example.org")
    assert wrong.status_code == unknown.status_code == 401
    assert wrong.json == unknown.json
    assert "Set-Cookie" not in wrong.headers


def test_an_unknown_address_takes_as_long_as_a_wrong_password(
    sqlite_app: Flask, clock: Clock
) -> None:
    """Medians of five with real Argon2id; without care the ratio would be about a thousand."""
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    wiring = sqlite_app.extensions[NAME]
    sqlite_app.extensions[NAME] = replace(wiring, hasher=make_hasher())
    database.connect()
    Coach.update(password_hash=make_hasher().hash(PASSWORD)).execute()
    database.disconnect()

    def median(email: str) -> float:
        times = []
        for _ in range(5):
            clock.passes(16 * MINUTE_MS)
            start = time.perf_counter()
            assert log_in(sqlite_app.test_client(), email, "wrong").status_code == 401
            times.append(time.perf_counter() - start)
        return statistics.median(times)

    assert 1 / 2.5 < median(coach.email) / median("nobody@example.org") < 2.5


def test_passwords_are_kept_as_argon2id(sqlite_app: Flask, clock: Clock) -> None:
    enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    database.connect()
    kept = Coach.select().get().password_hash
    database.disconnect()
    assert kept.startswith("$argon2id$")
    assert PASSWORD not in kept


def test_the_token_itself_is_not_in_the_database(coach: AtDesk) -> None:
    token = coach.browser.get_cookie("undercroft-coach").value
    database.connect()
    row = CoachLogin.select().dicts().get()
    database.disconnect()
    assert len(token) >= 22, "128 bits are 22 characters of base64"
    assert token not in repr(row)


def test_a_log_in_ends_after_a_week_without_use(coach: AtDesk, clock: Clock) -> None:
    clock.passes(6 * DAY_MS)
    assert coach.get("/coach/me").status_code == 200
    clock.passes(7 * DAY_MS)
    assert coach.get("/coach/me").status_code == 401


def test_a_log_in_ends_after_thirty_days_however_much_it_is_used(
    coach: AtDesk, clock: Clock
) -> None:
    for _ in range(9):
        clock.passes(3 * DAY_MS)
        assert coach.get("/coach/me").status_code == 200
    clock.passes(3 * DAY_MS)
    assert coach.get("/coach/me").status_code == 401


def test_logging_out_ends_this_log_in_only(coach: AtDesk, client: FlaskClient) -> None:
    log_in(client, coach.email)
    assert coach.post("/coach/log-out").status_code == 204
    assert coach.get("/coach/me").status_code == 401
    assert client.get("/api/v1/coach/me").status_code == 200


def test_a_stolen_cookie_is_worthless_after_logging_out(coach: AtDesk, client: FlaskClient) -> None:
    client.set_cookie("undercroft-coach", coach.browser.get_cookie("undercroft-coach").value)
    coach.post("/coach/log-out")
    assert client.get("/api/v1/coach/me").status_code == 401


def test_log_ins_are_listed_with_their_last_use_and_can_be_revoked(
    coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    clock.passes(DAY_MS)
    client.post(
        "/api/v1/coach/log-in",
        json={"email": coach.email, "password": PASSWORD},
        headers={"User-Agent": "a phone on a train"},
    )
    train, desk = coach.get("/coach/log-ins").json["log_ins"]
    if train["this_one"]:
        train, desk = desk, train
    assert train["agent"] == "a phone on a train"
    assert train["last_used_at"] == "2026-02-03T02:40:00.000Z"
    assert desk["this_one"] is True
    assert coach.post(f"/coach/log-ins/{train['id']}/revoke", AGAIN).status_code == 204
    assert client.get("/api/v1/coach/me").status_code == 401


def test_another_coachs_log_in_cannot_be_revoked(coach: AtDesk, other_coach: AtDesk) -> None:
    theirs = other_coach.get("/coach/log-ins").json["log_ins"][0]["id"]
    assert coach.post(f"/coach/log-ins/{theirs}/revoke", AGAIN).status_code == 404
    assert other_coach.get("/coach/me").status_code == 200


def test_a_browser_left_open_is_not_enough_to_end_the_other_log_ins(
    coach: AtDesk, client: FlaskClient
) -> None:
    """Whoever sits down there could else shut the coach out everywhere (ASVS 5.0 7.5.2)."""
    log_in(client, coach.email)
    for one in coach.get("/coach/log-ins").json["log_ins"]:
        path = f"/coach/log-ins/{one['id']}/revoke"
        wrong = coach.post(path, {"password": "not it at all"})
        assert wrong.status_code == 422
        assert [each["path"] for each in wrong.json["errors"]] == ["password"]
        assert coach.post(path).status_code == 422
    assert client.get("/api/v1/coach/me").status_code == 200
    assert coach.get("/coach/me").status_code == 200


def test_on_https_the_cookie_is_bound_to_the_host(sqlite: Path, clock: Clock) -> None:
    settings = Settings(
        database=str(sqlite), origin="https://coach.example.org", cheap_passwords=True
    )
    app = create_app(settings, clock)
    database.connect()
    accounts.add_coach(make_hasher(cheap=True), "o@example.org", "Ottilie", PASSWORD, clock())
    database.disconnect()
    answer = app.test_client().post(
        "/api/v1/coach/log-in",
        json={"email": "o@example.org", "password": PASSWORD},
        base_url="https://coach.example.org",
    )
    cookie = answer.headers["Set-Cookie"]
    assert cookie.startswith("__Host-undercroft-coach=")
    for mark in ("Secure", "HttpOnly", "SameSite=Strict", "Path=/"):
        assert mark in cookie
    assert "Domain" not in cookie


def test_ten_wrong_passwords_close_the_door_for_the_rest_of_the_quarter_hour(
    coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    clock.passes(15 * MINUTE_MS - clock.now % (15 * MINUTE_MS))
    for _ in range(10):
        assert log_in(client, coach.email, "wrong").status_code == 401
    shut = log_in(client, coach.email)
    assert shut.status_code == 429
    assert 0 < int(shut.headers["Retry-After"]) <= 15 * 60 + 1
    clock.passes(15 * MINUTE_MS)
    assert log_in(client, coach.email).status_code == 200


def test_one_address_that_tries_without_end_locks_no_coach_out(
    coach: AtDesk, other_coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    """Its tries beyond the tenth count neither for the coaches it names nor for everybody."""
    clock.passes(15 * MINUTE_MS - clock.now % (15 * MINUTE_MS))
    answers = [
        log_in(client, email, "wrong", "203.0.113.7").status_code
        for email in [*(f"nobody{n}@example.org" for n in range(10)), *[coach.email] * 301]
    ]
    assert answers == [401] * 10 + [429] * 301
    for one in (coach, other_coach):
        assert log_in(client, one.email, address="198.51.100.4").status_code == 200


def test_three_hundred_tries_from_many_addresses_close_the_door_for_all(
    coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    clock.passes(15 * MINUTE_MS - clock.now % (15 * MINUTE_MS))
    for n in range(300):
        address = f"203.0.113.{n % 100}"
        assert log_in(client, f"{n}@example.org", "wrong", address).status_code == 401
    assert log_in(client, coach.email, address="198.51.100.4").status_code == 429


def test_where_tries_cannot_be_counted_nobody_gets_in(
    coach: AtDesk, client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> int:
        raise database.DatabaseFault

    monkeypatch.setattr("undercroft.services.limits.limits.count", fails)
    answer = log_in(client, coach.email)
    assert answer.status_code == 503
    assert "Set-Cookie" not in answer.headers


def test_another_password_ends_every_other_log_in(coach: AtDesk, app: Flask) -> None:
    elsewhere = app.test_client()
    log_in = {"email": coach.email, "password": PASSWORD}
    elsewhere.post("/api/v1/coach/log-in", json=log_in)
    changed = coach.post("/coach/password", {"old": PASSWORD, "new": "a barrel, a yoke, a sled"})
    assert changed.status_code == 204
    assert coach.get("/coach/me").status_code == 200
    assert elsewhere.get("/api/v1/coach/me").status_code == 401
    assert elsewhere.post("/api/v1/coach/log-in", json=log_in).status_code == 401
    fresh = {**log_in, "password": "a barrel, a yoke, a sled"}
    assert elsewhere.post("/api/v1/coach/log-in", json=fresh).status_code == 200


@pytest.mark.parametrize(
    ("old", "new", "at"),
    [("not it at all", "a barrel, a yoke, a sled", "old"), (PASSWORD, "short", "new")],
)
def test_a_password_is_not_changed_by_a_slip(coach: AtDesk, old: str, new: str, at: str) -> None:
    answer = coach.post("/coach/password", {"old": old, "new": new})
    assert answer.status_code == 422
    assert [one["path"] for one in answer.json["errors"]] == [at]


def test_logging_in_anew_ends_the_log_in_that_the_browser_had(
    coach: AtDesk, client: FlaskClient
) -> None:
    before = coach.browser.get_cookie("undercroft-coach").value
    assert log_in(coach.browser, coach.email).status_code == 200
    client.set_cookie("undercroft-coach", before)
    assert client.get("/api/v1/coach/me").status_code == 401
