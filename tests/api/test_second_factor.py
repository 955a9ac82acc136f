"""A second factor at log-in: what its codes open, how often, and how a lost one is done without."""

from base64 import b32encode
from pathlib import Path

import pytest
from click.testing import CliRunner
from flask import Flask
from flask.testing import FlaskClient
from tests.one_time import STEP_MS, begun_factor, code_at, turns_factor_on
from tests.people import PASSWORD, AtDesk, Clock, enlist
from tests.storing import everything
from werkzeug.test import TestResponse

from undercroft.cli import main
from undercroft.services.clock import DAY_MS
from undercroft.services.limits import CODES, LOG_IN
from undercroft.services.second_factor import generator
from undercroft.store import database, limits

APPENDIX_B = [
    (59, "94287082"),
    (1111111109, "07081804"),
    (1111111111, "14050471"),
    (1234567890, "89005924"),
    (2000000000, "69279037"),
    (20000000000, "65353130"),
]
"""RFC 6238, appendix B, the rows of SHA-1: seconds since 1970 and eight figures, for this key."""
KEY = b32encode(b"12345678901234567890").decode()


@pytest.mark.parametrize(("seconds", "code"), APPENDIX_B)
def test_codes_are_those_of_the_standard(seconds: int, code: str) -> None:
    """Eight figures as published; the six of the log-in are their end."""
    assert generator(KEY, 8).generate_otp(seconds // 30) == code
    assert generator(KEY).generate_otp(seconds // 30) == code[2:]
    assert code_at(KEY, seconds * 1000) == code[2:]


@pytest.fixture
def secret(coach: AtDesk, clock: Clock) -> str:
    """That of a second factor which is on; its first code was used two minutes ago."""
    found = str(coach.post("/coach/second-factor/begin").json["secret"])
    turned_on = coach.post(
        "/coach/second-factor/on", {"password": PASSWORD, "code": code_at(found, clock.now)}
    )
    assert turned_on.status_code == 200
    clock.passes(LOG_IN.window_ms)
    return found


def log_in(
    client: FlaskClient, coach: AtDesk, code: str | None = None, password: str = PASSWORD
) -> TestResponse:
    body = {"email": coach.email, "password": password}
    return client.post(
        "/api/v1/coach/log-in", json=body if code is None else {**body, "code": code}
    )


def problem(answer: TestResponse) -> tuple[int, str, str]:
    return answer.status_code, answer.json["type"].rpartition(":")[2], answer.json["detail"]


def test_the_password_alone_opens_nothing_any_more(
    coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    asked = log_in(client, coach)
    assert problem(asked)[:2] == (401, "code-needed")
    assert "Set-Cookie" not in asked.headers
    assert log_in(client, coach, code_at(secret, clock.now)).status_code == 200
    assert client.get("/api/v1/coach/me").json["id"] == coach.id


def test_who_has_not_the_password_learns_nothing_of_the_factor(
    coach: AtDesk, other_coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    """Nor uses a code up."""
    right = code_at(secret, clock.now)
    without = problem(log_in(client, other_coach, None, "not the password"))
    for code in (None, "000000", right):
        assert problem(log_in(client, coach, code, "not the password")) == without
    assert log_in(client, coach, right).status_code == 200


def test_a_code_is_good_once(coach: AtDesk, client: FlaskClient, secret: str, clock: Clock) -> None:
    code = code_at(secret, clock.now)
    assert log_in(client, coach, code).status_code == 200
    again = log_in(client, coach, code)
    wrong = log_in(client, coach, "000000")
    assert again.status_code == 401
    assert problem(again) == problem(wrong)
    clock.passes(STEP_MS)
    assert log_in(client, coach, code_at(secret, clock.now)).status_code == 200


def test_the_code_that_turned_it_on_opens_nothing(coach: AtDesk, client: FlaskClient) -> None:
    proof = begun_factor(coach)
    assert coach.post("/coach/second-factor/on", proof).status_code == 200
    assert log_in(client, coach, proof["code"]).status_code == 401


@pytest.mark.parametrize(("steps", "status"), [(-2, 401), (-1, 200), (0, 200), (1, 200), (2, 401)])
def test_a_phones_clock_may_be_one_step_off(
    steps: int, status: int, coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    code = code_at(secret, clock.now + steps * STEP_MS)
    assert log_in(client, coach, code).status_code == status


def test_after_a_code_none_from_before_it_counts(
    coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    assert log_in(client, coach, code_at(secret, clock.now + STEP_MS)).status_code == 200
    assert log_in(client, coach, code_at(secret, clock.now)).status_code == 401


def test_a_code_may_be_typed_with_a_gap(
    coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    code = code_at(secret, clock.now)
    assert log_in(client, coach, f" {code[:3]} {code[3:]} ").status_code == 200


@pytest.mark.parametrize("code", ["٠١٢٣٤٥", "12345", "1234567", "-", "😀" * 10, "A" * 24])
def test_what_is_no_code_is_refused_in_the_words_of_a_wrong_one(
    code: str, coach: AtDesk, client: FlaskClient, secret: str
) -> None:
    assert problem(log_in(client, coach, code)) == problem(log_in(client, coach, "000000"))


def test_each_of_ten_recovery_codes_opens_the_desk_once(
    coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    codes = turns_factor_on(coach)
    assert len(set(codes)) == 10
    for code in codes:
        clock.passes(LOG_IN.window_ms)
        assert log_in(client, coach, code.lower()).status_code == 200
        again = log_in(client, coach, code)
        assert problem(again) == problem(log_in(client, coach, "000000"))
    assert client.get("/api/v1/coach/second-factor").json["recovery_codes_left"] == 0


def test_recovery_codes_are_kept_as_fingerprints(coach: AtDesk) -> None:
    codes = turns_factor_on(coach)
    kept = repr(everything())
    assert not [code for code in codes if code in kept]


def test_tries_with_codes_are_limited_like_log_ins(
    coach: AtDesk, client: FlaskClient, secret: str
) -> None:
    statuses = [log_in(client, coach, "000000").status_code for _ in range(LOG_IN.most + 2)]
    assert statuses == [401] * LOG_IN.most + [429] * 2


def test_whoever_has_the_password_gets_thirty_guesses_a_day_and_the_coach_a_way_in(
    coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    recovery = turns_factor_on(coach)[0]
    clock.passes(DAY_MS - clock.now % DAY_MS)
    refused = []
    for _ in range(CODES.most + 2):
        clock.passes(LOG_IN.window_ms // LOG_IN.most)
        refused.append(log_in(client, coach, "000000").status_code)
    assert refused == [401] * CODES.most + [429] * 2
    assert log_in(client, coach, recovery).status_code == 200


def test_where_tries_cannot_be_counted_no_code_opens_the_desk(
    coach: AtDesk, client: FlaskClient, secret: str, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    count = limits.count

    def fails(bucket: str, window: int) -> int:
        if bucket.startswith("code:"):
            raise database.DatabaseFault
        return count(bucket, window)

    monkeypatch.setattr("undercroft.services.limits.limits.count", fails)
    answer = log_in(client, coach, code_at(secret, clock.now))
    assert answer.status_code == 503
    assert "Set-Cookie" not in answer.headers


@pytest.mark.parametrize(
    ("slip", "at"), [({"password": "not it at all"}, "password"), ({"code": "000000"}, "code")]
)
def test_it_is_turned_on_by_password_and_code_together(
    slip: dict[str, str], at: str, coach: AtDesk, client: FlaskClient
) -> None:
    answer = coach.post("/coach/second-factor/on", {**begun_factor(coach), **slip})
    assert answer.status_code == 422
    assert [one["path"] for one in answer.json["errors"]] == [at]
    assert log_in(client, coach).status_code == 200


def test_turning_it_on_or_off_ends_every_other_log_in(
    coach: AtDesk, client: FlaskClient, clock: Clock
) -> None:
    log_in(client, coach)
    recovery = turns_factor_on(coach)
    assert client.get("/api/v1/coach/me").status_code == 401
    log_in(client, coach, recovery[0])
    assert client.get("/api/v1/coach/me").status_code == 200
    off = coach.post("/coach/second-factor/off", {"password": PASSWORD, "code": recovery[1]})
    assert off.status_code == 204
    assert client.get("/api/v1/coach/me").status_code == 401
    assert log_in(client, coach).status_code == 200


@pytest.mark.parametrize("slip", [{"password": "not it at all"}, {"code": "000000"}])
def test_it_is_turned_off_by_password_and_code_together(
    slip: dict[str, str], coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    proof = {"password": PASSWORD, "code": code_at(secret, clock.now)}
    assert coach.post("/coach/second-factor/off", {**proof, **slip}).status_code == 422
    assert log_in(client, coach).json["type"].endswith("code-needed")


def test_one_that_is_on_is_not_replaced_by_another(coach: AtDesk, secret: str) -> None:
    assert coach.post("/coach/second-factor/begin").status_code == 409
    seen = coach.get("/coach/second-factor").json
    assert seen["on_since"] is not None
    assert seen["recovery_codes_left"] == 10


def test_one_that_was_begun_asks_for_nothing(coach: AtDesk, client: FlaskClient) -> None:
    begun = coach.post("/coach/second-factor/begin").json
    assert begun["qr"].lstrip().startswith("<?xml")
    assert coach.get("/coach/second-factor").json == {"on_since": None, "recovery_codes_left": 0}
    assert log_in(client, coach).status_code == 200


def test_another_password_asks_for_a_code_as_well(
    coach: AtDesk, client: FlaskClient, secret: str, clock: Clock
) -> None:
    change = {"old": PASSWORD, "new": "a barrel, a yoke, a sled"}
    for wrong in ({}, {"code": "000000"}):
        answer = coach.post("/coach/password", {**change, **wrong})
        assert [one["path"] for one in answer.json["errors"]] == ["code"]
    code = code_at(secret, clock.now)
    assert coach.post("/coach/password", {**change, "code": code}).status_code == 204
    clock.passes(LOG_IN.window_ms)
    fresh = log_in(client, coach, None, "a barrel, a yoke, a sled")
    assert fresh.json["type"].endswith("code-needed")


def run(*words: str) -> tuple[int, str]:
    answer = CliRunner().invoke(main, [*words])
    return answer.exit_code, answer.output


def test_whoever_runs_the_server_turns_off_a_factor_that_was_lost(
    sqlite: Path, sqlite_app: Flask, clock: Clock
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    turns_factor_on(coach)
    asked = ("coach", "lost-factor", coach.email, "--database", str(sqlite))
    status, told = run(*asked)
    assert status == 0
    assert "Ottilie Brandt logs in with the password alone and is logged in nowhere" in told
    again = run(*asked)
    assert again[0] == 1
    assert "Ottilie Brandt has no second factor" in again[1]
    database.open_database(str(sqlite))
    assert coach.get("/coach/me").status_code == 401
    assert log_in(sqlite_app.test_client(), coach).status_code == 200


def test_a_forgotten_password_given_anew_leaves_the_factor_on(
    sqlite: Path, sqlite_app: Flask, clock: Clock
) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    turns_factor_on(coach)
    new = "anvil under wet heather"
    run("coach", "password", coach.email, "--database", str(sqlite), "--password", new)
    database.open_database(str(sqlite))
    answer = log_in(sqlite_app.test_client(), coach, None, new)
    assert answer.json["type"].endswith("code-needed")
