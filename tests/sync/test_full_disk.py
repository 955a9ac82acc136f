"""Fault 20: the server's disk full."""

from pathlib import Path
from typing import Any

import psycopg
import pytest
from peewee import OperationalError
from tests.people import Phone, statuses
from tests.storing import everything
from tests.sync.asking import ids, positions, stored

from undercroft.store import database, sql
from undercroft.store.feed import publish


def limit_pages(most: int) -> None:
    """SQLite refuses to grow beyond so many pages, with the same words as for a full disk."""
    database.close_all()
    database.database.pragma("max_page_count", most, permanent=True)


def test_20_on_a_full_disk_a_batch_is_stored_whole_or_not_at_all(
    sqlite: Path, device_on_file: Phone
) -> None:
    phone = device_on_file
    limit_pages(sqlite.stat().st_size // 4096 + 30)
    entries = phone.writes.many(2000)
    taken: list[dict[str, Any]] = []
    refused = None
    for start in range(0, 2000, 100):
        answer = phone.sends(*entries[start : start + 100])
        if answer.status_code != 200:
            refused = answer
            break
        taken += entries[start : start + 100]
    assert refused is not None, "the disk was never full"
    assert refused.status_code == 503
    assert "disk is full, and nothing was stored" in refused.json["detail"]
    assert int(refused.headers["Retry-After"]) > 0
    assert stored(phone) == ids(taken)

    limit_pages(1_000_000)
    left = [entry for entry in entries if entry not in taken]
    for start in range(0, len(left), 500):
        phone.syncs(*left[start : start + 500])
    assert stored(phone) == ids(entries)


@pytest.mark.parametrize(
    "fault",
    [
        psycopg.errors.DiskFull("could not extend file: No space left on device"),
        psycopg.errors.LockNotAvailable("canceling statement due to lock timeout"),
        psycopg.errors.AdminShutdown("terminating connection due to administrator command"),
    ],
    ids=lambda fault: type(fault).__name__,
)
def test_20_a_database_that_gives_up_in_the_middle_stores_nothing(
    device: Phone, fault: Exception, monkeypatch: pytest.MonkeyPatch
) -> None:
    real, before = sql.run_many, everything()

    def gives_up(*given: Any) -> None:
        real(*given)
        raise OperationalError(*fault.args)

    monkeypatch.setattr("undercroft.store.entries.run_many", gives_up)
    entries = device.writes.many(3)
    answer = device.sends(*entries)
    assert answer.status_code == 503
    assert ("disk is full" in answer.json["detail"]) is ("space" in str(fault))
    assert everything() == before
    monkeypatch.undo()
    assert statuses(device.syncs(*entries)) == ["stored"] * 3


def test_20_a_disk_that_fills_up_while_replanning_stores_nothing_either(
    sqlite: Path, device_on_file: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    """SQLite then gives up the whole transaction, and not only what replanning did."""

    def fills_up(*_: object) -> None:
        sql.run("CREATE TABLE filler (text TEXT)")
        sql.run("INSERT INTO filler VALUES (?)", "x" * 1_000_000)

    monkeypatch.setattr("undercroft.services.replan.replan", fills_up)
    limit_pages(sqlite.stat().st_size // 4096 + 20)
    before = everything()
    entries = [*device_on_file.writes.many(2), _finished(device_on_file)]
    answer = device_on_file.sends(*entries)
    assert answer.status_code == 503
    assert everything() == before
    monkeypatch.undo()
    assert statuses(device_on_file.syncs(*entries)) == ["stored"] * 3


def test_a_fault_in_replanning_costs_no_entry(
    device: Phone, second_device: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(athlete_id: str, _: object) -> None:
        publish(athlete_id, "sheet", "w1.mon", {"half": "done"})
        sql.run("INSERT INTO nowhere VALUES (1)")

    monkeypatch.setattr("undercroft.services.replan.replan", fails)
    answer = device.syncs(_finished(device))
    assert statuses(answer) == ["stored"]
    assert [item["kind"] for item in second_device.reads_all()] == ["entry"]
    positions(device.athlete_id)


def _finished(device: Phone) -> dict[str, Any]:
    """The end of a session: only what closes one is replanned."""
    how_hard = {"rpe": 5, "minutes": 60}
    return device.writes.entry("session.finished", how_hard, session="w1.mon")
