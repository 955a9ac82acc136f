"""Log lines say how it went, and never what it was about."""

import json
import logging
from collections.abc import Callable, Iterator
from io import StringIO
from typing import Any

import pytest
from tests.people import PASSWORD, AtDesk, Phone

from undercroft.api import logs


@pytest.fixture
def lines() -> Iterator[Callable[[], list[dict[str, Any]]]]:
    """Turns logging on; call it for what has been said since, line by line."""
    said = StringIO()
    logs.send_to(said)

    def since() -> list[dict[str, Any]]:
        found = [json.loads(line) for line in said.getvalue().splitlines()]
        said.seek(0)
        said.truncate()
        return found

    yield since
    root = logging.getLogger("undercroft")
    root.handlers[:] = []
    root.propagate = True
    root.setLevel(logging.NOTSET)


def test_a_request_is_one_line_of_json(coach: AtDesk, athlete: str, lines: Any) -> None:
    lines()
    coach.get(f"/desk/athletes/{athlete}/devices")
    (line,) = lines()
    assert line["method"] == "GET"
    assert line["route"] == "/api/v1/desk/athletes/<athlete_id>/devices"
    assert line["status"] == 200
    assert set(line) == {"time", "level", "from", "method", "route", "status", "ms", "bytes"}


def test_no_line_holds_names_secrets_tokens_addresses_or_what_was_recorded(
    coach: AtDesk, athlete: str, device: Phone, lines: Any
) -> None:
    secret = coach.invites(athlete)
    client = coach.app.test_client()
    client.post("/api/v1/coach/log-in", json={"email": coach.email, "password": PASSWORD})
    client.post("/api/v1/pairing/look", json={"secret": secret})
    client.get(f"/pair/{secret}?secret={secret}")
    device.syncs(device.writes.entry("message", {"text": "my knee hurts"}))
    device.sends({"body": {"text": "my knee hurts"}})
    coach.get(f"/desk/athletes/{athlete}/held")
    told = json.dumps(lines())
    assert "/api/v1/sync" in told
    tokens = [
        browser.get_cookie(name).value
        for browser, name in (
            (coach.browser, "undercroft-coach"),
            (device.browser, "undercroft-device"),
        )
    ]
    private = [PASSWORD, coach.email, coach.name, "Runa", "knee", secret, athlete, *tokens]
    assert [words for words in private if words in told] == []


def test_a_fault_is_told_by_its_place(
    coach: AtDesk, lines: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: Any) -> None:
        raise RuntimeError("Runa has a sore knee")

    monkeypatch.setattr("undercroft.services.athletes.athletes_of", fails)
    coach.get("/desk/athletes")
    told = lines()
    assert "fault RuntimeError at" in told[-2]["message"]
    assert "knee" not in json.dumps(told)
    assert told[-1]["status"] == 500
