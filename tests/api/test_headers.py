"""Headers on every answer, whatever it is."""

import gzip
import json
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient
from tests.people import Clock, Phone

from undercroft.api import create_app
from undercroft.config import Settings

ADDRESSES = ["/", "/assets/missing.js", "/api/v1/health", "/api/v1/coach/me", "/api/v1/missing"]


@pytest.fixture
def browser(sqlite_app: Flask) -> FlaskClient:
    return sqlite_app.test_client()


@pytest.mark.parametrize("address", ADDRESSES)
def test_pages_may_load_only_from_here_and_be_framed_nowhere(
    browser: FlaskClient, address: str
) -> None:
    policy = browser.get(address).headers["Content-Security-Policy"].split("; ")
    rules = {name: rest for name, _, rest in (rule.partition(" ") for rule in policy)}
    assert rules.pop("default-src") == "'none'"
    assert rules.pop("object-src") == "'none'"
    assert rules.pop("frame-ancestors") == "'none'"
    assert rules.pop("base-uri") == "'none'"
    assert rules.pop("img-src") == "'self' data: blob:"
    assert rules.pop("require-trusted-types-for") == "'script'"
    assert rules.pop("trusted-types") == "undercroft"
    assert set(rules.values()) == {"'self'"}


@pytest.mark.parametrize("address", ADDRESSES)
def test_nothing_is_guessed_about_types_and_nothing_said_to_other_sites(
    browser: FlaskClient, address: str
) -> None:
    headers = browser.get(address).headers
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
    assert "camera=(self)" in headers["Permissions-Policy"]
    assert "screen-wake-lock=(self)" in headers["Permissions-Policy"]
    assert "geolocation=()" in headers["Permissions-Policy"]


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_answer_of_the_api_says_that_it_is_ours_and_is_kept_nowhere(
    browser: FlaskClient, address: str
) -> None:
    headers = browser.get(address).headers
    of_the_api = address.startswith("/api/")
    assert (headers.get("Undercroft") == "1") is of_the_api
    assert (headers.get("Cache-Control") == "no-store") is of_the_api


def test_https_is_asked_for_only_where_the_origin_is_https(
    browser: FlaskClient, sqlite: Path, clock: Clock
) -> None:
    assert "Strict-Transport-Security" not in browser.get("/").headers
    settings = Settings(database=str(sqlite), origin="https://coach.example.org")
    answer = create_app(settings, clock).test_client().get("/")
    assert answer.headers["Strict-Transport-Security"].startswith("max-age=63072000")


def test_long_answers_are_zipped_for_those_who_take_it(device: Phone, second_device: Phone) -> None:
    device.syncs(*device.writes.many(50))
    body = second_device.asks()
    zipped = second_device.browser.post(
        "/api/v1/sync", json=body, headers={"Accept-Encoding": "gzip"}
    )
    plain = second_device.browser.post("/api/v1/sync", json=body)
    assert zipped.headers["Content-Encoding"] == "gzip"
    assert "Accept-Encoding" in zipped.headers["Vary"]
    assert json.loads(gzip.decompress(zipped.data))["feed"] == plain.json["feed"]
    assert len(zipped.data) < len(plain.data) / 4
    assert "Content-Encoding" not in plain.headers


def test_the_server_does_not_say_what_it_is_made_of(browser: FlaskClient) -> None:
    assert "Server" not in browser.get("/").headers
