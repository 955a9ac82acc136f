"""A phone's side of sync in Python, as small as it can be: outbox, verdicts, feed, snapshots.

It follows the same rules as `pwa/src/offline`: only a verdict for that id takes an entry out of the
outbox; whatever the server lacks is sent again from what was kept.
"""

from dataclasses import dataclass, field
from typing import Any

from flask.testing import FlaskClient
from tests.sync.network import Lost, Network
from tests.writing import Writer


@dataclass
class SimulatedPhone:
    """Everything that a phone keeps; `confirmed` is what its screen called saved."""

    browser: FlaskClient
    device: str
    epoch: str
    writer: Writer
    cursor: int = 0
    stored_through: int = 0
    kept: dict[str, dict[str, Any]] = field(default_factory=dict)
    outbox: list[str] = field(default_factory=list)
    seen: dict[str, dict[str, Any]] = field(default_factory=dict)
    changes: dict[tuple[str, str], Any] = field(default_factory=dict)
    network: Network = field(default_factory=Network)

    def records(self, entry: dict[str, Any]) -> None:
        """The tap is saved: kept for thirty days, and in the outbox."""
        self.kept[entry["id"]] = entry
        self.outbox.append(entry["id"])

    def syncs(self, most: int = 500) -> bool:
        """One exchange; True where there is nothing more to do."""
        batch = self.outbox[:most]
        body = {
            "device": self.device,
            "epoch": self.epoch,
            "cursor": self.cursor,
            "entries": [self.kept[id_] for id_ in batch],
        }
        try:
            answer = self.network.send(self.browser, body)
        except Lost:
            return False
        assert answer.status_code == 200, answer.text
        told = answer.json
        settled = {verdict["id"] for verdict in told["verdicts"]}
        self.outbox = [id_ for id_ in self.outbox if id_ not in settled]
        if told["epoch"] != self.epoch or told["cursor"] < self.cursor:
            self._begins_anew(told)
            return False
        self._takes(told["feed"], told["cursor"])
        self._sends_again(told["stored_through"])
        return not self.outbox and not told["more"]

    def drains(self) -> None:
        """Sync on a healed network until there is nothing more to do."""
        for _ in range(50):
            if self.syncs():
                return
        raise AssertionError("the outbox does not empty")

    def entries(self) -> dict[str, dict[str, Any]]:
        """All that the phone knows of the ledger: its own and what came by the feed."""
        return {**self.seen, **self.kept}

    def _begins_anew(self, told: dict[str, Any]) -> None:
        """By a snapshot; a revoked phone gets none, and still sends again what is lacking."""
        if told.get("revoked"):
            self.epoch = told["epoch"]
            self._sends_again(told["stored_through"])
        else:
            self._takes_a_snapshot()

    def _takes_a_snapshot(self) -> None:
        after, more = 0, True
        self.seen, self.changes = {}, {}
        while more:
            page = self.browser.get(f"/api/v1/snapshot?after={after}").json
            self._takes(page["feed"], page["cursor"])
            after, more = page["cursor"], page["more"]
        self.epoch = page["epoch"]
        self.stored_through = 0
        self._sends_again(page["stored_through"])

    def _takes(self, feed: list[dict[str, Any]], cursor: int) -> None:
        for item in feed:
            if item["kind"] == "entry":
                self.seen[item["key"]] = item["body"]
            else:
                self.changes[item["kind"], item["key"]] = item["body"]
        self.cursor = cursor

    def _sends_again(self, through: int) -> None:
        """Where the server has less than it once had, or lacks what has a verdict, send again."""
        if through < self.stored_through or not self.outbox:
            waiting = set(self.outbox)
            lacking = [
                id_
                for id_, entry in self.kept.items()
                if entry["n"] > through and id_ not in waiting
            ]
            self.outbox = lacking + self.outbox
        self.stored_through = through
