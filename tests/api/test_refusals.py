"""Everything that goes wrong is a problem document (RFC 9457), and nothing of it is stored."""

import gzip
import json
import zlib
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from peewee import OperationalError
from tests.people import AtDesk, Phone
from tests.storing import everything
from werkzeug.test import TestResponse

LOG_IN = "/api/v1/coach/log-in"
JSON = "application/json"


def assert_problem(answer: TestResponse, status: int) -> dict[str, Any]:
    """The one shape; returns the document."""
    assert answer.status_code == status, answer.text
    assert answer.mimetype == "application/problem+json"
    problem = answer.json
    assert problem["status"] == status
    assert problem["type"].startswith("urn:undercroft:problem:")
    assert problem["title"]
    assert problem["detail"]
    assert set(problem) <= {"type", "title", "status", "detail", "errors"}
    for error in problem.get("errors", ()):
        assert set(error) == {"where", "path", "what", "right"}
    return dict(problem)


def test_an_unknown_address(client: FlaskClient) -> None:
    assert_problem(client.get("/api/v1/nothing"), 404)


def test_an_unknown_address_outside_the_api(client: FlaskClient) -> None:
    assert_problem(client.get("/assets/nothing.js"), 404)


def test_the_wrong_method(client: FlaskClient) -> None:
    answer = client.delete(LOG_IN)
    assert_problem(answer, 405)
    assert "POST" in answer.headers["Allow"]


def test_no_log_in(client: FlaskClient) -> None:
    problem = assert_problem(client.get("/api/v1/coach/me"), 401)
    assert problem["type"].endswith("log-in-needed")


@pytest.mark.parametrize("media", ["text/plain", "application/x-www-form-urlencoded", None])
def test_a_body_that_is_not_json_by_type(client: FlaskClient, media: str | None) -> None:
    assert_problem(client.post(LOG_IN, data="{}", content_type=media), 415)


def test_an_unknown_encoding(client: FlaskClient) -> None:
    headers = {"Content-Encoding": "br"}
    assert_problem(client.post(LOG_IN, data=b"{}", content_type=JSON, headers=headers), 415)


@pytest.mark.parametrize(
    "body",
    [
        pytest.param(b"", id="empty"),
        pytest.param(b'{"a":', id="cut"),
        pytest.param(b"\xff\xfe{}", id="no UTF-8"),
        pytest.param(b'{"a": NaN}', id="NaN"),
        pytest.param(b"[" * 5000, id="opened without end"),
        pytest.param(b"[" * 60 + b"]" * 60, id="nested too deep"),
        pytest.param(b"9" * 5000, id="a number without end"),
    ],
)
def test_a_body_that_cannot_be_read(client: FlaskClient, body: bytes) -> None:
    assert_problem(client.post(LOG_IN, data=body, content_type=JSON), 400)


def test_a_body_beyond_the_cap(client: FlaskClient) -> None:
    body = json.dumps({"email": "x" * 300_000, "password": "y"})
    assert_problem(client.post(LOG_IN, data=body, content_type=JSON), 413)


def test_a_small_body_that_inflates_beyond_the_cap(client: FlaskClient) -> None:
    """30 MB of blanks are 30 kB of gzip; no more than the cap is ever inflated."""
    bomb = gzip.compress(b" " * 30_000_000)
    assert len(bomb) < 40_000
    headers = {"Content-Encoding": "gzip"}
    assert_problem(client.post(LOG_IN, data=bomb, content_type=JSON, headers=headers), 413)


@pytest.mark.parametrize("cut", [1, 8, 30])
def test_a_gzip_body_that_was_cut_short(device: Phone, cut: int) -> None:
    body = gzip.compress(json.dumps(device.asks(device.writes.many(5))).encode())
    before = everything()
    answer = device.browser.post(
        "/api/v1/sync", data=body[:-cut], content_type=JSON, headers={"Content-Encoding": "gzip"}
    )
    assert_problem(answer, 400)
    assert everything() == before


def test_zlib_that_calls_itself_gzip(client: FlaskClient) -> None:
    headers = {"Content-Encoding": "gzip"}
    body = zlib.compress(b"{}")
    assert_problem(client.post(LOG_IN, data=body, content_type=JSON, headers=headers), 400)


@pytest.mark.parametrize(
    ("body", "path", "right"),
    [
        ({"name": 5}, "name", "text in quotes"),
        ({"name": ""}, "name", "1 to 80"),
        ({"name": "x" * 81}, "name", "1 to 80"),
        ({"name": "nul\x00"}, "name", "remove it"),
        ({"name": "\ud800"}, "name", "remove it"),
        ({}, "name", ""),
        ({"name": "Tove", "squad": 1}, "squad", ""),
        (["Tove"], "", ""),
    ],
)
def test_a_body_that_cannot_be_used_says_what_where_and_what_would_be_right(
    coach: AtDesk, body: Any, path: str, right: str
) -> None:
    before = everything()
    answer = coach.browser.post("/api/v1/desk/athletes", data=json.dumps(body), content_type=JSON)
    (error,) = assert_problem(answer, 422)["errors"]
    assert error["path"] == path
    assert error["what"]
    assert right in error["right"]
    assert everything() == before


@pytest.mark.parametrize("part", ["nobody", "%00", "a" * 5000, "..%2f..", "%ff"])
def test_an_id_that_names_nothing(coach: AtDesk, part: str) -> None:
    assert_problem(coach.get(f"/desk/athletes/{part}/devices"), 404)


def test_a_number_that_no_database_holds(coach: AtDesk, athlete: str) -> None:
    assert_problem(coach.post(f"/desk/athletes/{athlete}/held/{10**30}/accept"), 404)


@pytest.mark.parametrize("query", ["after=-1", "after=x", "after=1.5", "after=1e999", "before=3"])
def test_a_query_that_cannot_be_used(device: Phone, query: str) -> None:
    assert_problem(device.get(f"/snapshot?{query}"), 422)


def test_too_often_says_when_to_come_back(client: FlaskClient) -> None:
    for _ in range(21):
        answer = client.post("/api/v1/pairing/look", json={"code": "ABCDEFGH"})
    assert_problem(answer, 429)
    assert int(answer.headers["Retry-After"]) > 0


def test_a_fault_of_our_own_tells_nothing_of_what_was_in_hand(
    app: Flask, coach: AtDesk, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    def fails(*_: Any) -> None:
        raise RuntimeError("Runa has a sore knee")

    monkeypatch.setattr("undercroft.services.athletes.athletes_of", fails)
    problem = assert_problem(coach.get("/desk/athletes"), 500)
    assert "knee" not in json.dumps(problem)
    assert "knee" not in "".join(capfd.readouterr())


def test_a_database_that_is_gone_is_not_the_askers_fault(
    coach: AtDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: Any) -> None:
        raise OperationalError("server closed the connection unexpectedly")

    monkeypatch.setattr("undercroft.store.coaches.login_by_token", fails)
    answer = coach.get("/coach/me")
    assert_problem(answer, 503)
    assert answer.headers["Retry-After"]
