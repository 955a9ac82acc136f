"""Phones that train by what was sent to them and keep sending, over HTTP, whoever answers."""

import json
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass, field
from http.client import HTTPException
from random import Random
from typing import Any

from tests.sync.network import Lost
from tests.sync.simulated import SimulatedPhone
from tests.writing import Writer


@dataclass
class Answer:
    """What a simulated phone reads of one."""

    status_code: int
    text: str

    @property
    def json(self) -> Any:
        return json.loads(self.text)


@dataclass
class Line:
    """A phone's way to the server: its browser and its network at once."""

    token: str
    address: str = ""

    def send(self, _browser: object, body: Any) -> Answer:
        """Raises Lost."""
        return self._ask("/sync", json.dumps(body).encode())

    def get(self, path: str) -> Answer:
        """`path` as the phone's browser has it. Raises Lost."""
        return self._ask(path.removeprefix("/api/v1"), None)

    def _ask(self, path: str, data: bytes | None) -> Answer:
        """A server that asks for patience gets it, as from the app."""
        for _ in range(40):
            answer = self._once(path, data)
            if answer.status_code != 503:
                return answer
            time.sleep(0.5)
        raise Lost

    def _once(self, path: str, data: bytes | None) -> Answer:
        headers = {
            "Content-Type": "application/json",
            "Cookie": f"undercroft-device={self.token}",
        }
        request = urllib.request.Request(f"{self.address}/api/v1{path}", data, headers)
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                return Answer(answer.status, answer.read().decode())
        except urllib.error.HTTPError as fault:
            return Answer(fault.code, fault.read().decode())
        except (urllib.error.URLError, OSError, HTTPException) as fault:
            raise Lost from fault


@dataclass
class Athletic:
    """One phone of an athlete, who does session after session, now and then correcting a set."""

    athlete_id: str
    phone: SimulatedPhone
    line: Line
    chance: Random
    ahead: Iterator[dict[str, Any]] = field(init=False)
    verdicts: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.ahead = self._trains()

    def sends_until_nobody_answers(self, most: int = 200) -> None:
        """A few taps, an exchange, a few taps; all taps are confirmed before they are sent."""
        for _ in range(most):
            for _ in range(self.chance.randint(1, 6)):
                self.phone.records(next(self.ahead))
            waiting = set(self.phone.outbox)
            try:
                self.phone.syncs()
            except Lost:
                return
            if waiting & set(self.phone.outbox):
                return
            self.verdicts |= waiting

    def drains(self) -> None:
        self.phone.drains()
        self.verdicts |= set(self.phone.kept)

    def _trains(self) -> Iterator[dict[str, Any]]:
        while True:
            for kind, key in sorted(self.phone.changes):
                if kind == "sheet":
                    yield from self._session(self.phone.changes[kind, key])

    def _session(self, sheet: dict[str, Any]) -> Iterator[dict[str, Any]]:
        writes = self.phone.writer
        where = {"session": sheet["session"], "revision": sheet["revision"]}
        yield writes.entry("session.started", {}, **where)
        for exercise in sheet["exercises"]:
            for one in exercise["sets"]:
                body = {"load_kg": 60, "reps": self.chance.randint(1, 9), "rir": 2}
                done = writes.entry("set.done", body, set=one["key"], **where)
                yield done
                if self.chance.random() < 0.1:
                    yield writes.corrected(done, reps=3) | where
        yield writes.entry("session.finished", {"rpe": 7, "minutes": 50}, **where)


def phone(athlete_id: str, device: str, token: str, epoch: str, chance: Random) -> Athletic:
    line = Line(token)
    writer = Writer(random=chance)
    simulated = SimulatedPhone(line, device, epoch, writer, network=line)  # type: ignore[arg-type]
    return Athletic(athlete_id, simulated, line, chance)
