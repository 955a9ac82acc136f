"""A server killed again and again while three phones send; after each death the claim is checked.

The claim: what a phone has a verdict for is on disk, nothing is there twice, and in the end every
tap counts exactly once and all fold to the same.
"""

import signal
import threading
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

from tests.browser.conftest import squad_in
from tests.conftest import make_tables
from tests.domain.folded import plain_fold
from tests.fixtures import athlete_data, kit_data
from tests.kills.deaths import ANY_MOMENT, DEATHS, death
from tests.kills.forks import Forks, forks
from tests.kills.phones import Athletic, phone

from undercroft.documents.entries import read_entry
from undercroft.domain.ledger import Entry, fold
from undercroft.services import (
    athlete_page,
    athletes,
    auditing,
    devices,
    ledger,
    sending,
)
from undercroft.services.clock import now_ms
from undercroft.store import database
from undercroft.store.migrate import epoch

PLACES = tuple(DEATHS)

LONGEST_S = 30.0
"""So long a server may live that never comes to the place where it should die; the kill then counts
as one at any moment."""

LATEST_S = 2.0
"""Until then one that is killed from outside is dead."""


@dataclass
class Tally:
    """What came of it: where servers died, and whether what was under way then was on disk."""

    kills: int = 0
    where: Counter[str] = field(default_factory=Counter)
    under_way: Counter[tuple[str, str]] = field(default_factory=Counter)
    confirmed: int = 0
    stored: int = 0
    seconds: float = 0.0

    def add(self, where: str, under_way: Iterator[str]) -> None:
        self.kills += 1
        self.where[where] += 1
        self.under_way.update((where, how) for how in under_way)

    def lines(self, engine: str) -> list[str]:
        return [
            f"{engine}: {self.kills} servers killed in {self.seconds:.0f} s",
            f"  {self.confirmed} taps confirmed, {self.stored} on the server, each once",
            "  every device and the server fold to the same",
            *(self._line(where) for where in PLACES),
        ]

    def _line(self, where: str) -> str:
        kept, lost = (self.under_way[where, how] for how in ("kept", "not kept"))
        return (
            f"  {self.where[where]:4} × {where}:"
            f" {kept} batches under way were on disk, {lost} were not and were sent again"
        )


def kill_servers(
    location: str, folder: Path, kills: int, seed: int, said: Callable[[], None] = lambda: None
) -> Tally:
    """Kill so many processes on an empty database. Raises AssertionError where the claim fails."""
    chance, tally, start = Random(seed), Tally(), time.monotonic()
    phones = _squad(location, chance)
    with forks(location, folder / "server.log") as server:
        _all_drain(server, phones)
        before: set[str] = set()
        for number in range(kills):
            where = PLACES[number % len(PLACES)]
            died = _one_life(server, phones, where, chance)
            stored = _stored(location, phones)
            tally.add(died, _under_way(phones, before, stored))
            before = stored
            said()
        _all_drain(server, phones)
    tally.confirmed, tally.stored = _claim(location, phones)
    tally.seconds = time.monotonic() - start
    return tally


def _squad(location: str, chance: Random) -> list[Athletic]:
    """Two athletes with two weeks sent; the first has two phones."""
    make_tables(location)
    squad, now = squad_in(location), now_ms()
    with opened(location):
        other = athletes.add_athlete(squad.coach_id, "Birk Solheim", now).id
        athlete_page.save_document(other, athlete_data())
        athlete_page.save_kit(other, kit_data())
        sending.send(squad.coach_id, squad.block_id, sending.Wanted([other]), now)
        life, found = epoch(), []
        for athlete in (squad.athlete_id, squad.athlete_id, other):
            device, token = devices.pair(athlete, "a phone", now)
            found.append(phone(athlete, device, token, life, Random(chance.getrandbits(64))))
    return found


@contextmanager
def opened(location: str) -> Iterator[None]:
    """The database itself, asked behind the servers' backs."""
    database.open_database(location)
    database.connect()
    try:
        yield
    finally:
        database.close_all()


def _all_drain(server: Forks, phones: list[Athletic]) -> None:
    """Twice, so that each hears what the others had."""
    server.start()
    for one in [*phones, *phones]:
        one.line.address = server.url
        one.drains()
    server.stop()


def _one_life(server: Forks, phones: list[Athletic], where: str, chance: Random) -> str:
    """All phones send at once until the process is dead; returns where it died."""
    server.start(death(where, chance))
    patience = chance.uniform(0, LATEST_S) if where == ANY_MOMENT else LONGEST_S
    outside = threading.Event()

    def kill() -> None:
        outside.set()
        server.kill()

    killer = threading.Timer(patience, kill)
    senders = [threading.Thread(target=one.sends_until_nobody_answers) for one in phones]
    for thread in (killer, *senders):
        thread.start()
    for sender in senders:
        sender.join()
    assert server.status() == -signal.SIGKILL, "it died as it should"
    killer.cancel()
    return ANY_MOMENT if outside.is_set() else where


def _under_way(phones: list[Athletic], before: set[str], stored: set[str]) -> Iterator[str]:
    """What became of the batches that got no answer: kept or not, each of them wholly."""
    for one in phones:
        assert one.verdicts <= stored, "what had a verdict is gone"
        new = set(one.phone.outbox) - before
        if new:
            assert new <= stored or not new & stored, "half a batch is on disk"
            yield "kept" if new <= stored else "not kept"


def _stored(location: str, phones: list[Athletic]) -> set[str]:
    found = []
    with opened(location):
        for athlete_id in {one.athlete_id for one in phones}:
            assert list(auditing.check_athlete(athlete_id)) == []
            found += [entry.id for entry in ledger.entries_of(athlete_id)]
    assert len(set(found)) == len(found), "an entry is there twice"
    return set(found)


def _claim(location: str, phones: list[Athletic]) -> tuple[int, int]:
    """Every confirmed tap counts once; every device and the server fold to the same."""
    confirmed = {id_ for one in phones for id_ in one.phone.kept}
    stored = _stored(location, phones)
    assert stored == confirmed
    for one in phones:
        with opened(location):
            state = plain_fold(fold(ledger.entries_of(one.athlete_id)))
        assert plain_fold(fold(map(_read, one.phone.entries().values()))) == state
    return len(confirmed), len(stored)


def _read(raw: Any) -> Entry:
    entry = read_entry(raw)
    assert isinstance(entry, Entry), entry
    return entry
