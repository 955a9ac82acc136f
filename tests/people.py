"""Coaches at their desks, phones in cellars, and the clock they share."""

import gzip
import json
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from flask import Flask
from flask.testing import FlaskClient
from tests.writing import Writer
from werkzeug.test import TestResponse

from undercroft.services import accounts
from undercroft.store import database

PASSWORD = "rope, pulley, chalk"
START_MS = 1_770_000_000_000
"""A Monday in February 2026."""


@dataclass
class Clock:
    """Milliseconds since 1970 that move only when told to."""

    now: int = START_MS

    def __call__(self) -> int:
        return self.now

    def passes(self, ms: int) -> None:
        self.now += ms


@dataclass
class AtDesk:
    """A coach in a browser, logged in."""

    app: Flask
    browser: FlaskClient
    id: str
    name: str
    email: str

    def get(self, path: str) -> TestResponse:
        return self.browser.get(f"/api/v1{path}")

    def post(self, path: str, body: Any = None) -> TestResponse:
        return self.browser.post(f"/api/v1{path}", json={} if body is None else body)

    def sends_file(self, path: str, data: bytes) -> TestResponse:
        return self.browser.post(
            f"/api/v1{path}", data=data, content_type="application/octet-stream"
        )

    def adds_athlete(self, name: str) -> str:
        answer = self.post("/desk/athletes", {"name": name})
        assert answer.status_code == 201, answer.text
        return str(answer.json["id"])

    def invites(self, athlete_id: str) -> str:
        """The secret of a new invitation."""
        answer = self.post(f"/desk/athletes/{athlete_id}/invitations")
        assert answer.status_code == 201, answer.text
        return str(answer.json["url"].partition("#")[2])

    def offers(self, gives: str, *athletes: str, keeps: str | None = None) -> str:
        """The secret of a new link for another coach."""
        body = {"athletes": list(athletes), "gives": gives, "keeps": keeps}
        answer = self.post("/desk/offers", body)
        assert answer.status_code == 201, answer.text
        return str(answer.json["url"].partition("#")[2])

    def accepts(self, secret: str) -> dict[str, Any]:
        """What came of a link."""
        answer = self.post("/desk/offers/accept", {"secret": secret})
        assert answer.status_code == 200, answer.text
        return dict(answer.json)

    def pairs_phone(self, athlete_id: str, name: str = "a phone") -> "Phone":
        browser = self.app.test_client()
        body = {"secret": self.invites(athlete_id), "device_name": name}
        answer = browser.post("/api/v1/pairing/accept", json=body)
        assert answer.status_code == 201, answer.text
        return Phone(browser, answer.json["device"], athlete_id, answer.json["epoch"])

    def revokes(self, phone: "Phone") -> None:
        path = f"/desk/athletes/{phone.athlete_id}/devices/{phone.id}/revoke"
        assert self.post(path).status_code == 204

    def held(self, athlete_id: str) -> list[dict[str, Any]]:
        return list(self.get(f"/desk/athletes/{athlete_id}/held").json["held"])


@dataclass
class Phone:
    """A paired phone that writes entries and syncs them."""

    browser: FlaskClient
    id: str
    athlete_id: str
    epoch: str
    cursor: int = 0
    writes: Writer = field(default_factory=Writer)

    def get(self, path: str) -> TestResponse:
        return self.browser.get(f"/api/v1{path}")

    def post(self, path: str, body: Any) -> TestResponse:
        return self.browser.post(f"/api/v1{path}", json=body)

    def asks(self, entries: Sequence[Any] = ()) -> dict[str, Any]:
        """The body of a sync request."""
        return {
            "device": self.id,
            "epoch": self.epoch,
            "cursor": self.cursor,
            "entries": list(entries),
        }

    def sends(self, *entries: Any, zipped: bool = False) -> TestResponse:
        """Sync, whatever may come of it; remembers nothing."""
        raw = json.dumps(self.asks(entries)).encode()
        headers = {"Content-Encoding": "gzip"} if zipped else {}
        return self.browser.post(
            "/api/v1/sync",
            data=gzip.compress(raw) if zipped else raw,
            content_type="application/json",
            headers=headers,
        )

    def syncs(self, *entries: Any) -> dict[str, Any]:
        """Sync, which must succeed, and remember the cursor."""
        answer = self.sends(*entries)
        assert answer.status_code == 200, answer.text
        self.cursor = answer.json["cursor"]
        return dict(answer.json)

    def reads_all(self) -> list[dict[str, Any]]:
        """The feed from the cursor to its end."""
        items: list[dict[str, Any]] = []
        while True:
            answer = self.syncs()
            items += answer["feed"]
            if not answer["more"]:
                return items


def enlist(app: Flask, clock: Clock, name: str, email: str, address: str = "127.0.0.1") -> AtDesk:
    """A coach with an account, logged in from that address."""
    database.connect()
    hasher = accounts.make_hasher(cheap=True)
    coach_id = accounts.add_coach(hasher, email, name, PASSWORD, clock())
    database.disconnect()
    browser = app.test_client()
    answer = browser.post(
        "/api/v1/coach/log-in",
        json={"email": email, "password": PASSWORD},
        environ_base={"REMOTE_ADDR": address},
    )
    assert answer.status_code == 200, answer.text
    return AtDesk(app, browser, coach_id, name, email)


def statuses(answer: dict[str, Any]) -> list[str]:
    """The verdicts of a sync, in order."""
    return [verdict["status"] for verdict in answer["verdicts"]]
