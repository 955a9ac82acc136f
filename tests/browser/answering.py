"""A phone that answers the screening over HTTP, for browser tests that look at the desk alone."""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any

from playwright.sync_api import APIRequestContext, Playwright
from tests.domain.occlusion.people import HEALTHY
from tests.writing import Writer


@dataclass
class Answering:
    """A paired phone without a screen."""

    asks: APIRequestContext
    device: str
    epoch: str
    writes: Writer = field(default_factory=Writer)

    def syncs(self, *entries: dict[str, Any]) -> None:
        body = {"device": self.device, "epoch": self.epoch, "cursor": 0, "entries": list(entries)}
        answer = self.asks.post("/api/v1/sync", data=body)
        assert answer.ok, answer.text()
        assert {one["status"] for one in answer.json()["verdicts"]} <= {"stored"}

    def answers(self, **changes: object) -> None:
        """Somebody in good health, but for the changes."""
        now = datetime.now(UTC)
        measured = {"pressure-on": (now - timedelta(days=5)).date().isoformat()}
        given = HEALTHY | measured | {key.replace("_", "-"): v for key, v in changes.items()}
        at = now.isoformat(timespec="milliseconds")
        self.syncs(self.writes.entry("screening.answered", {"answers": given}, at=at))

    def keys_of(self, session: str) -> list[str]:
        """Keys of the sets of a session's first exercise, as the phone was told them."""
        bodies = [one["body"] for one in self._feed() if one["kind"] == "sheet"]
        (sheet,) = [body for body in bodies if body["session"] == session]
        return [str(one["key"]) for one in sheet["exercises"][0]["sets"]]

    def _feed(self) -> list[dict[str, Any]]:
        found: list[dict[str, Any]] = []
        cursor, more = 0, True
        while more:
            body = {"device": self.device, "epoch": self.epoch, "cursor": cursor, "entries": []}
            answer = self.asks.post("/api/v1/sync", data=body).json()
            found += answer["feed"]
            cursor, more = answer["cursor"], answer["more"]
        return found


def paired(playwright: Playwright, url: str, secret: str) -> Answering:
    """Accept an invitation as a phone does."""
    asks = playwright.request.new_context(base_url=url)
    body = {"secret": secret, "device_name": "a phone"}
    answer = asks.post("/api/v1/pairing/accept", data=body)
    assert answer.ok, answer.text()
    known = answer.json()
    return Answering(asks, known["device"], known["epoch"])
