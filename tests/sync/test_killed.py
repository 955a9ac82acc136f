"""Fault 8: the server killed by SIGKILL in the middle of a batch, before and after the commit.

Real processes on a real file; after each death the phone sends again what has no verdict. SIGKILL
says nothing about a loss of power: for that the database syncs its log on every commit.
"""

import random
import threading
import time
from pathlib import Path
from typing import Any

import pytest
from tests.kills.deaths import DEATHS
from tests.kills.servers import kill_servers
from tests.people import Clock, Phone
from tests.sync import processes
from tests.sync.asking import ids, positions, stored
from tests.sync.processes import AFTER_COMMIT, BEFORE_COMMIT, NoAnswer, Server

from undercroft.services.clock import now_ms


@pytest.fixture
def clock() -> Clock:
    """The processes go by the time of day, so the pairing must be of today."""
    return Clock(now_ms())


def cookie_of(phone: Phone) -> str:
    return f"undercroft-device={phone.browser.get_cookie('undercroft-device').value}"


def send_until_it_dies(
    server: Server, phone: Phone, outbox: list[dict[str, Any]], batch: int = 5
) -> None:
    """Send batch after batch; only a verdict takes an entry out of the outbox."""
    while outbox:
        try:
            answer = server.post("/sync", phone.asks(outbox[:batch]), cookie_of(phone))
        except NoAnswer:
            return
        settled = {verdict["id"] for verdict in answer["verdicts"]}
        outbox[:] = [entry for entry in outbox if entry["id"] not in settled]


def assert_nothing_lost_or_doubled(phone: Phone, entries: list[dict[str, Any]]) -> None:
    assert stored(phone) == ids(entries)
    positions(phone.athlete_id)


@pytest.mark.parametrize("when", [BEFORE_COMMIT, AFTER_COMMIT], ids=["before", "after"])
@pytest.mark.parametrize("on_call", [1, 2, 4])
def test_8_killed_around_a_commit_nothing_is_lost_or_doubled(
    database: str, device: Phone, when: str, on_call: int
) -> None:
    entries = device.writes.many(25)
    outbox = list(entries)
    dying = processes.start(database, when.format(on_call=on_call))
    send_until_it_dies(dying, device, outbox)
    assert dying.process.wait(timeout=20) == -9, "it died as it should"
    committed = on_call - 1 if when == BEFORE_COMMIT else on_call
    assert len(stored(device)) == 5 * committed
    assert len(outbox) == 25 - 5 * (on_call - 1)

    device.syncs(*outbox)
    assert_nothing_lost_or_doubled(device, entries)


def test_8_killed_at_any_moment_20_times_nothing_is_lost_or_doubled(
    sqlite: Path, device_on_file: Phone
) -> None:
    """At moments from the start of the first batch on; a seed that fails is to be added here."""
    chance = random.Random(8)
    entries = device_on_file.writes.many(10_000)
    outbox = list(entries)
    for _ in range(20):
        server = processes.start(str(sqlite))
        killer = threading.Timer(chance.uniform(0.01, 0.15), server.kill)
        killer.start()
        send_until_it_dies(server, device_on_file, outbox, batch=10)
        killer.join()
    server = processes.start(str(sqlite))
    send_until_it_dies(server, device_on_file, outbox, batch=500)
    server.stop()
    assert_nothing_lost_or_doubled(device_on_file, entries)


def test_8_three_phones_keep_sending_while_servers_die_at_every_place(
    database: str, tmp_path: Path
) -> None:
    """Many more: python -m tests.kills --server 200."""
    tally = kill_servers(database, tmp_path, kills=len(DEATHS), seed=8)
    assert set(tally.where) == set(DEATHS)
    assert tally.stored == tally.confirmed > 0


def test_a_graceful_stop_finishes_what_it_has_begun(sqlite: Path, device_on_file: Phone) -> None:
    """SIGTERM while a batch is being stored: the answer still comes, and the process ends well."""
    slow = (
        "import time\n"
        "from undercroft.store import entries\n"
        "original = entries.add_rows\n"
        "def add_rows(new): time.sleep(1.5); original(new)\n"
        "entries.add_rows = add_rows\n"
    )
    server = processes.start(str(sqlite), slow)
    entries = device_on_file.writes.many(3)
    answers: list[dict[str, Any]] = []
    sender = threading.Thread(
        target=lambda: answers.append(
            server.post("/sync", device_on_file.asks(entries), cookie_of(device_on_file))
        )
    )
    sender.start()
    time.sleep(0.5)
    said = server.stop()
    sender.join()
    assert server.process.returncode == 0
    assert "stopped" in said
    assert [v["status"] for v in answers[0]["verdicts"]] == ["stored"] * 3
    assert_nothing_lost_or_doubled(device_on_file, entries)
