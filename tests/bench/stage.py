"""An athlete with a paired phone on a real server, spoken to over one kept connection."""

import gzip
import json
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tests.bench.wire import Wire
from tests.conftest import make_tables
from tests.server_process import ServerProcess
from tests.writing import Writer

from undercroft.services import accounts, athletes, devices
from undercroft.services.clock import now_ms
from undercroft.store import database
from undercroft.store.migrate import epoch

BATCH = 500
SHORT_BYTES = 1_000
"""The app zips nothing shorter (`pwa/src/api/client.ts`)."""


@dataclass
class Paired:
    """A phone that sends and reads as the app does."""

    wire: Wire
    token: str
    device: str
    athlete: str
    epoch: str
    cursor: int = 0
    writes: Writer = field(default_factory=Writer)

    def sends(self, entries: Sequence[Any], delay_s: float = 0.0) -> bytes:
        """One exchange; `delay_s` stands for the way there and back."""
        time.sleep(delay_s)
        return self.asks(self.writes_down(entries))

    def writes_down(self, entries: Sequence[Any]) -> bytes:
        """The body of an exchange."""
        asked = {"device": self.device, "epoch": self.epoch, "cursor": self.cursor}
        return json.dumps({**asked, "entries": list(entries)}, separators=(",", ":")).encode()

    def asks(self, body: bytes) -> bytes:
        """The answer to a body, which goes out zipped where it is long."""
        headers = {
            "Content-Type": "application/json",
            "Sec-Fetch-Site": "same-origin",
            "Cookie": f"undercroft-device={self.token}",
        }
        if len(body) >= SHORT_BYTES:
            headers["Content-Encoding"] = "gzip"
            body = gzip.compress(body, 1)
        return self.wire.posts("/api/v1/sync", body, headers)

    def reads(self, answer: bytes) -> None:
        """Go on from where the answer ends."""
        self.cursor = json.loads(answer)["cursor"]

    def in_batches(self, entries: Sequence[Any], delay_s: float = 0.0) -> float:
        """Seconds for all of them, each batch confirmed before the next is sent.

        It goes on from each answer, as the app does, so that none asks again for all before.
        """
        start = time.perf_counter()
        for at in range(0, len(entries), BATCH):
            answer = json.loads(self.sends(entries[at : at + BATCH], delay_s))
            assert {one["status"] for one in answer["verdicts"]} <= {"stored", "duplicate"}
            self.cursor = answer["cursor"]
        return time.perf_counter() - start


@contextmanager
def stage(folder: Path, location: str) -> Iterator[Paired]:
    """A fresh database, served by a process of its own that writes its log in the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    make_tables(location)
    database.open_database(location)
    database.connect()
    now = now_ms()
    coach = accounts.add_coach(
        accounts.make_hasher(cheap=True), "o@example.org", "O", "anvil under wet heather", now
    )
    athlete = athletes.add_athlete(coach, "Runa Tealdi", now).id
    device, token = devices.pair(athlete, "bench", now)
    life = epoch()
    database.close_all()
    server = ServerProcess(location, folder / "server.log")
    server.start()
    try:
        yield Paired(Wire(server.port), token, device, athlete, life)
    finally:
        server.stop()
