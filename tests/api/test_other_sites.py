"""Nothing is changed because another site made the browser ask."""

import pytest
from flask import Flask
from tests.people import AtDesk, Clock

from undercroft.api import create_app
from undercroft.config import Settings

PATH = "/api/v1/desk/athletes"


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"Sec-Fetch-Site": "same-origin"}, 201),
        ({"Sec-Fetch-Site": "none"}, 201),
        ({"Sec-Fetch-Site": "same-site"}, 403),
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Sec-Fetch-Site": "cross-site", "Origin": "http://localhost"}, 403),
        ({"Origin": "http://localhost"}, 201),
        ({"Origin": "http://localhost.example.net"}, 403),
        ({"Origin": "https://localhost"}, 403),
        ({"Origin": "null"}, 403),
        ({}, 201),
    ],
)
def test_a_change_is_made_only_from_our_own_pages_or_from_no_browser(
    coach: AtDesk, headers: dict[str, str], status: int
) -> None:
    answer = coach.browser.post(PATH, json={"name": "Tove Lind"}, headers=headers)
    assert answer.status_code == status
    assert len(coach.get("/desk/athletes").json["athletes"]) == (1 if status == 201 else 0)


def test_behind_a_proxy_that_renames_the_host_the_public_origin_counts(
    sqlite: object, clock: Clock
) -> None:
    settings = Settings(database=str(sqlite), origin="https://coach.example.org")
    app: Flask = create_app(settings, clock)
    headers = {"Origin": "https://coach.example.org", "Host": "10.0.0.7:8000"}
    answer = app.test_client().post("/api/v1/unpair", json={}, headers=headers)
    assert answer.status_code == 401, "let through to the question who is asking"


def test_no_other_site_may_read_an_answer(coach: AtDesk) -> None:
    headers = {"Origin": "https://elsewhere.example.net"}
    answer = coach.browser.get(PATH, headers=headers)
    assert "Access-Control-Allow-Origin" not in answer.headers
    assert answer.headers["Cross-Origin-Resource-Policy"] == "same-origin"


def test_a_preflight_allows_nothing(coach: AtDesk) -> None:
    headers = {
        "Origin": "https://elsewhere.example.net",
        "Access-Control-Request-Method": "POST",
        "Access-Control-Request-Headers": "content-type",
    }
    answer = coach.browser.options(PATH, headers=headers)
    assert not [name for name, _ in answer.headers if name.startswith("Access-Control")]
