"""A squad with work behind it, put back as it was before each round."""

import shutil
from dataclasses import dataclass
from pathlib import Path

from flask import Flask
from tests.api.roles import Scene
from tests.api.training import entries_of, finished, send, sheets
from tests.conftest import make_tables
from tests.fixtures import athlete_data, block_data, kit_data
from tests.people import START_MS, AtDesk, Clock, Phone, enlist

from undercroft.api import create_app
from undercroft.config import Settings
from undercroft.store import database, rights


@dataclass
class Stage:
    """The app on a file, the people of `scene`, and a copy of the file to go back to."""

    app: Flask
    clock: Clock
    scene: Scene
    file: Path
    kept: Path

    def put_back(self) -> None:
        database.close_all()
        for ending in ("-wal", "-shm"):
            self.file.with_name(self.file.name + ending).unlink(missing_ok=True)
        shutil.copy(self.kept, self.file)
        database.open_database(str(self.file))
        self.clock.now = START_MS


def set_up(folder: Path) -> Stage:
    """A coach and an athlete with a kit, two weeks sent and a session done; a stranger's squad."""
    file, clock = folder / "undercroft.sqlite3", Clock()
    make_tables(str(file))
    settings = Settings(database=str(file), cheap_passwords=True)
    app = create_app(settings, clock)
    coach = enlist(app, clock, "Ottilie Brandt", "ottilie@example.org")
    other = enlist(app, clock, "Casper Nyberg", "casper@example.org")
    athlete, theirs = coach.adds_athlete("Runa Falk"), other.adds_athlete("Birk Solheim")
    phone, lost = coach.pairs_phone(athlete), coach.pairs_phone(athlete, "a lost phone")
    coach.revokes(lost)
    _trains(coach, phone)
    coaches = (coach, *(_sharing(app, clock, athlete, level) for level in ("read", "write")), other)
    nobody = app.test_client()
    scene = Scene(*coaches, athlete, phone, other.pairs_phone(theirs), lost, nobody)
    database.close_all()
    kept = folder / "kept.sqlite3"
    shutil.copy(file, kept)
    return Stage(app, clock, scene, file, kept)


def _sharing(app: Flask, clock: Clock, athlete: str, level: str) -> AtDesk:
    """A coach with this right to the athlete."""
    coach = enlist(app, clock, f"Coach who may {level}", f"{level}@example.org")
    database.connect()
    rights.give(athlete, coach.id, level, clock())
    database.disconnect()
    return coach


def _trains(coach: AtDesk, phone: Phone) -> None:
    for name, document in (("document", athlete_data()), ("kit", kit_data())):
        coach.post(f"/desk/athletes/{phone.athlete_id}/{name}", {"document": document})
    block = coach.post("/desk/blocks", {"document": block_data()}).json["id"]
    send(coach, block, phone.athlete_id)
    monday = sheets(phone.reads_all())["w1-mon"]
    phone.syncs(*entries_of(phone, monday), finished(phone, monday))
