"""Devices, server, network and coach in any order that chance comes upon; then all is healed.

At the end each tap that a screen confirmed is on the server exactly once, and all devices and the
server fold to the same state.
"""

import shutil
import sqlite3
import tempfile
from contextlib import closing
from pathlib import Path
from random import Random
from typing import Any

from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
)
from tests.people import AtDesk, Clock, enlist
from tests.sync.simulated import SimulatedPhone
from tests.writing import Writer

from undercroft.api import create_app
from undercroft.config import Settings
from undercroft.documents.entries import read_entry
from undercroft.documents.folded import plain_fold
from undercroft.domain.ledger import Entry, fold
from undercroft.services import auditing, ledger
from undercroft.store import database, migrate
from undercroft.store.feed import athlete_lock, publish

FAULTS = ["request", "answer", "twice", "cut", "portal"]
DEVICES = 2


class Valley(RuleBasedStateMachine):
    """Two phones of one athlete, a coach, a server on a SQLite file, and a bad network."""

    pattern: Path

    @initialize(seed=st.integers(0, 2**32))
    def begin(self, seed: int) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="undercroft-valley"))
        self.file = self.folder / "undercroft.sqlite3"
        shutil.copy(self.pattern, self.file)
        self.clock = Clock()
        self.chance = Random(seed)
        settings = Settings(str(self.file), cheap_passwords=True, sync_per_minute=1_000_000)
        self.app = create_app(settings, self.clock)
        self.coach: AtDesk = enlist(self.app, self.clock, "Ottilie Brandt", "o@example.org")
        self.athlete_id = self.coach.adds_athlete("Runa Falk")
        self.phones = [self._paired() for _ in range(DEVICES)]
        self.backup: Path | None = None
        self.published: dict[tuple[str, str], Any] = {}

    def _paired(self) -> SimulatedPhone:
        phone = self.coach.pairs_phone(self.athlete_id)
        writer = Writer(random=self.chance)
        return SimulatedPhone(phone.browser, phone.id, phone.epoch, writer)

    which = st.integers(0, DEVICES - 1)

    @rule(which=which, reps=st.lists(st.integers(1, 9), min_size=1, max_size=5))
    def does_some_sets(self, which: int, reps: list[int]) -> None:
        phone = self.phones[which]
        for number, done in enumerate(reps):
            phone.records(phone.writer.done(f"squat.{number}", reps=done))

    @rule(which=which, pick=st.randoms(use_true_random=False))
    def corrects_something_it_knows_of(self, which: int, pick: Random) -> None:
        phone = self.phones[which]
        known = [e for e in phone.entries().values() if e["kind"] == "set.done"]
        if known:
            earlier = pick.choice(sorted(known, key=lambda e: str(e["id"])))
            phone.records(phone.writer.corrected(earlier, reps=pick.randint(1, 9)))

    @rule(which=which, ms=st.integers(-400 * 86_400_000, 400 * 86_400_000))
    def has_its_clock_moved(self, which: int, ms: int) -> None:
        self.phones[which].writer.clock_ms = max(0, 1_770_000_000_000 + ms)

    @rule(which=which, fault=st.sampled_from(FAULTS))
    def meets_a_fault(self, which: int, fault: str) -> None:
        self.phones[which].network.fault = fault
        self.phones[which].syncs(most=3)

    @rule(which=which, most=st.integers(1, 5))
    def syncs(self, which: int, most: int) -> None:
        self.phones[which].syncs(most)

    @rule(which=which, most=st.integers(1, 3))
    def sends_its_outbox_in_any_order(self, which: int, most: int) -> None:
        self.chance.shuffle(self.phones[which].outbox)
        self.phones[which].syncs(most)

    @rule(key=st.sampled_from(["w1.mon", "w1.wed"]), load=st.integers(50, 120))
    def coach_changes_a_sheet(self, key: str, load: int) -> None:
        database.connect()
        with athlete_lock(self.athlete_id):
            publish(self.athlete_id, "sheet", key, {"load": load})
        database.disconnect()
        self.published["sheet", key] = {"load": load}

    @rule()
    def server_starts_anew(self) -> None:
        database.close_all()
        database.open_database(str(self.file))

    @rule()
    def operator_takes_a_backup(self) -> None:
        self.backup = self.folder / "backup.sqlite3"
        with (
            closing(sqlite3.connect(self.file)) as here,
            closing(sqlite3.connect(self.backup)) as there,
        ):
            here.backup(there)
        self.published_then = dict(self.published)

    @precondition(lambda self: getattr(self, "backup", None) is not None)
    @rule()
    def operator_restores_it(self) -> None:
        database.close_all()
        for ending in ("-wal", "-shm"):
            self.file.with_name(self.file.name + ending).unlink(missing_ok=True)
        assert self.backup is not None
        shutil.copy(self.backup, self.file)
        database.open_database(str(self.file))
        database.connect()
        with database.writing():
            migrate.new_epoch()
        database.disconnect()
        self.published = dict(self.published_then)

    @invariant()
    def the_database_is_sound(self) -> None:
        if hasattr(self, "athlete_id"):
            database.connect()
            found = list(auditing.check_athlete(self.athlete_id))
            database.disconnect()
            assert not found

    def teardown(self) -> None:
        if not hasattr(self, "phones"):
            return
        try:
            self._all_is_well_in_the_end()
        finally:
            database.close_all()
            shutil.rmtree(self.folder)

    def _all_is_well_in_the_end(self) -> None:
        for _ in range(2):
            for phone in self.phones:
                phone.network.fault = ""
                phone.drains()
        database.connect()
        on_server = ledger.entries_of(self.athlete_id)
        database.disconnect()
        ids = [entry.id for entry in on_server]
        confirmed = [id_ for phone in self.phones for id_ in phone.kept]
        assert sorted(ids) == sorted(confirmed), "each confirmed tap is there exactly once"
        state = plain_fold(fold(on_server))
        for phone in self.phones:
            assert plain_fold(fold(map(_read, phone.entries().values()))) == state
            assert phone.changes == self.published
        assert self.coach.held(self.athlete_id) == []


def _read(raw: Any) -> Entry:
    entry = read_entry(raw)
    assert isinstance(entry, Entry)
    return entry


def test_whatever_happens_nothing_is_lost_or_doubled_and_all_agree(sqlite_pattern: Path) -> None:
    Valley.pattern = sqlite_pattern
    machine = type("ValleyOnFile", (Valley,), {"pattern": sqlite_pattern})
    machine.TestCase.settings = settings(
        max_examples=40,
        stateful_step_count=25,
        deadline=None,
        # Making a failing story shorter would take minutes; 25 steps can be read as they are.
        phases=[Phase.explicit, Phase.reuse, Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    test = machine.TestCase()
    test.runTest()
