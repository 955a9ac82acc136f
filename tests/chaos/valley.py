"""Two phones of one athlete, a coach, a server on a SQLite file, and everything that goes wrong.

The claim at the end: each tap that a screen confirmed counts on the server exactly once, or is
held there for the coach exactly once, or was on a phone that was wiped before it could send; and
all devices and the server fold to the same state.
"""

import shutil
import sqlite3
import tempfile
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

from tests.domain.folded import plain_fold
from tests.people import START_MS, AtDesk, Clock, enlist
from tests.sync.simulated import SimulatedPhone
from tests.writing import Writer

from undercroft.api import create_app
from undercroft.config import Settings
from undercroft.documents.entries import read_entry
from undercroft.domain.ledger import Entry, fold
from undercroft.services import auditing, ledger
from undercroft.services.clock import DAY_MS, HOUR_MS
from undercroft.store import database, migrate
from undercroft.store.feed import athlete_lock, publish

DEVICES = 2
ZONES = ("Z", "+01:00", "-03:30", "+05:45", "+14:00", "-11:00")
SESSIONS = ("w1.mon", "w1.wed")


@dataclass
class Counts:
    """What a story came to."""

    confirmed: int = 0
    stored: int = 0
    held: int = 0
    wiped: int = 0


@dataclass
class Kept:
    """A backup, and what the coach had published when it was taken."""

    file: Path
    published: dict[tuple[str, str], Any]


@dataclass
class Valley:
    """`pattern` is a SQLite file with all tables; `chance` decides what is random within a step."""

    pattern: Path
    chance: Random
    clock: Clock = field(default_factory=Clock)
    published: dict[tuple[str, str], Any] = field(default_factory=dict)
    backup: Kept | None = None
    gone: list[SimulatedPhone] = field(default_factory=list)
    revoked: list[SimulatedPhone] = field(default_factory=list)
    unreadable: set[str] = field(default_factory=set)
    wiped: set[str] = field(default_factory=set)

    def begin(self) -> None:
        self.folder = Path(tempfile.mkdtemp(prefix="undercroft-valley"))
        self.file = self.folder / "undercroft.sqlite3"
        shutil.copy(self.pattern, self.file)
        settings = Settings(str(self.file), cheap_passwords=True, sync_per_minute=1_000_000)
        self.app = create_app(settings, self.clock)
        self.app.logger.disabled = True
        self.coach: AtDesk = enlist(self.app, self.clock, "Ottilie Brandt", "o@example.org")
        self.athlete_id = self.coach.adds_athlete("Runa Falk")
        self.phones = [self._paired() for _ in range(DEVICES)]

    def end(self) -> None:
        database.close_all()
        shutil.rmtree(self.folder)

    def _paired(self) -> SimulatedPhone:
        """An hour later than whatever was last: pairing is limited by the hour."""
        self.clock.passes(HOUR_MS)
        phone = self.coach.pairs_phone(self.athlete_id)
        writer = Writer(random=self.chance, clock_ms=START_MS + self.chance.randrange(DAY_MS))
        return SimulatedPhone(phone.browser, phone.id, phone.epoch, writer)

    def does_sets(self, which: int, reps: list[int]) -> None:
        phone = self.phones[which]
        for number, done in enumerate(reps):
            session = self.chance.choice(SESSIONS)
            phone.records(phone.writer.done(f"squat.{number}", session=session, reps=done))

    def closes_a_session(self, which: int) -> None:
        phone = self.phones[which]
        body = {"rpe": 7, "minutes": 40}
        session = self.chance.choice(SESSIONS)
        phone.records(phone.writer.entry("session.finished", body, session=session))

    def corrects_something(self, which: int) -> None:
        phone = self.phones[which]
        known = [e for e in phone.entries().values() if e["kind"] == "set.done" and e["v"] == 1]
        if known:
            earlier = self.chance.choice(sorted(known, key=lambda e: str(e["id"])))
            phone.records(phone.writer.corrected(earlier, reps=self.chance.randint(1, 9)))

    def writes_what_this_server_cannot_read(self, which: int) -> None:
        """An entry of a newer app, of an unknown kind, or with a body that is wrong."""
        phone = self.phones[which]
        entry = phone.writer.done("squat.0")
        entry |= self.chance.choice(
            [{"v": 2}, {"kind": "sled.pushed"}, {"body": {"reps": "three"}}]
        )
        phone.records(entry)
        self.unreadable.add(entry["id"])

    def moves_its_clock(self, which: int) -> None:
        """By up to a year, and into another zone: a flight, a flat battery, a wrong hand."""
        writer = self.phones[which].writer
        writer.clock_ms = max(0, START_MS + self.chance.randint(-400, 400) * DAY_MS)
        year = self.chance.choice((2025, 2026, 2027))
        writer.at = f"{year}-03-29T02:30:00.000{self.chance.choice(ZONES)}"

    def syncs(self, which: int, most: int) -> None:
        self.phones[which].syncs(most)

    def syncs_in_any_order(self, which: int, most: int) -> None:
        self.chance.shuffle(self.phones[which].outbox)
        self.phones[which].syncs(most)

    def meets(self, which: int, fault: str) -> None:
        self.phones[which].network.fault = fault
        self.phones[which].syncs(most=self.chance.randint(1, 5))

    def is_wiped_and_paired_again(self, which: int) -> None:
        """What the server does not have is lost with the storage.

        That is the outbox, and after a restored backup what the phone had yet to send again.
        """
        old = self.phones[which]
        self.wiped |= old.kept.keys() - self._on_server()
        old.outbox.clear()
        self.gone.append(old)
        self.phones[which] = self._paired()

    def _on_server(self) -> set[str]:
        database.connect()
        stored = {entry.id for entry in ledger.entries_of(self.athlete_id)}
        database.disconnect()
        return stored | {one["sent"]["id"] for one in self.coach.held(self.athlete_id)}

    def is_revoked_and_paired_again(self, which: int) -> None:
        """It goes on sending what the server lacks, which is held; the coach accepts it."""
        old = self.phones[which]
        path = f"/desk/athletes/{self.athlete_id}/devices/{old.device}/revoke"
        assert self.coach.post(path).status_code == 204
        self.gone.append(old)
        self.revoked.append(old)
        self.phones[which] = self._paired()

    def coach_changes_a_sheet(self) -> None:
        key, body = self.chance.choice(SESSIONS), {"load": self.chance.randint(50, 120)}
        database.connect()
        with athlete_lock(self.athlete_id):
            publish(self.athlete_id, "sheet", key, body)
        database.disconnect()
        self.published["sheet", key] = body

    def server_starts_anew(self) -> None:
        database.close_all()
        database.open_database(str(self.file))

    def takes_a_backup(self) -> None:
        file = self.folder / "backup.sqlite3"
        with closing(sqlite3.connect(self.file)) as here, closing(sqlite3.connect(file)) as there:
            here.backup(there)
        self.backup = Kept(file, dict(self.published))

    def restores_it(self) -> None:
        """Yesterday's file comes back. Who paired or was revoked since has to do so again."""
        if self.backup is None or self.gone:
            return
        database.close_all()
        for ending in ("-wal", "-shm"):
            self.file.with_name(self.file.name + ending).unlink(missing_ok=True)
        shutil.copy(self.backup.file, self.file)
        database.open_database(str(self.file))
        database.connect()
        with database.writing():
            migrate.new_epoch()
        database.disconnect()
        self.published = dict(self.backup.published)

    def is_sound(self) -> None:
        database.connect()
        found = list(auditing.check_athlete(self.athlete_id))
        database.disconnect()
        assert not found, found

    def heals(self) -> None:
        """The network is whole, everybody sends, the coach accepts what can be read."""
        for phone in [*self.gone, *self.phones]:
            phone.network.fault = ""
        for phone in self.revoked:
            phone.drains()
        for _ in range(2):
            for phone in self.phones:
                phone.drains()
        for held in self.coach.held(self.athlete_id):
            if held["sent"].get("id") not in self.unreadable:
                path = f"/desk/athletes/{self.athlete_id}/held/{held['position']}/accept"
                assert self.coach.post(path).status_code in (200, 204)
        for phone in self.phones:
            phone.drains()

    def all_is_well(self) -> Counts:
        """Check the claim, and count."""
        database.connect()
        on_server = ledger.entries_of(self.athlete_id)
        database.disconnect()
        confirmed = {id_ for phone in [*self.gone, *self.phones] for id_ in phone.kept}
        due = confirmed - self.wiped
        stored = [entry.id for entry in on_server]
        held = [one["sent"]["id"] for one in self.coach.held(self.athlete_id)]
        assert len(set(stored)) == len(stored), "an entry counts twice"
        assert set(stored) == due - self.unreadable, "what counts is not what was tapped"
        assert set(held) == due & self.unreadable, "what is held is not"
        assert len(set(held)) == len(held), "an entry is held twice"
        state = plain_fold(fold(on_server))
        for phone in self.phones:
            known = [e for e in phone.entries().values() if e["id"] not in self.unreadable]
            assert plain_fold(fold(map(_read, known))) == state, "a phone folds to something else"
            assert phone.changes == self.published, "a phone has another sheet"
        return Counts(len(confirmed), len(stored), len(held), len(self.wiped))


def _read(raw: Any) -> Entry:
    entry = read_entry(raw)
    assert isinstance(entry, Entry), entry
    return entry
