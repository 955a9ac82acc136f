"""The vocabulary of the tests: a database of either sort, the app on it, and the people who use it.

Everything that takes `database`, itself or through the app, runs twice: on SQLite and on a private
PostgreSQL cluster.
"""

import shutil
import uuid
from collections.abc import Iterator
from pathlib import Path

import psycopg
import pytest
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import settings
from tests import postgres
from tests.people import AtDesk, Clock, Phone, enlist

from undercroft.api import create_app
from undercroft.config import Settings
from undercroft.store import database as stored
from undercroft.store import migrate, rights
from undercroft.store.models import ALL

settings.register_profile("undercroft", deadline=None)
settings.load_profile("undercroft")
"""A machine that does other work besides is no stopwatch."""

ELSEWHERE = "192.0.2.7"
"""An address of nobody's, so that these log-ins are not counted with those that a test tries."""

ENGINES = ["sqlite", pytest.param("postgresql", marks=pytest.mark.postgres)]


def make_tables(location: str) -> None:
    stored.open_database(location)
    stored.connect()
    migrate.migrate()
    stored.close_all()


@pytest.fixture(scope="session")
def cluster() -> Iterator[str]:
    """A private PostgreSQL cluster: an address with %s for the database's name."""
    with postgres.cluster() as address:
        yield address


@pytest.fixture(scope="session")
def postgresql_tables(cluster: str) -> str:
    """A PostgreSQL database with all tables, to be emptied before each use."""
    location = cluster % "postgres"
    make_tables(location)
    return location


def _emptied(location: str) -> str:
    """Making a database for each test would take half a second; emptying one takes no time."""
    with psycopg.connect(location, autocommit=True) as connection:
        for table in reversed([table._meta.table_name for table in ALL]):
            connection.execute(f'DELETE FROM "{table}"')
        connection.execute("INSERT INTO meta VALUES ('epoch', %s)", (str(uuid.uuid4()),))
    return location


@pytest.fixture(scope="session")
def sqlite_pattern(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A SQLite file with all tables, to be copied."""
    path = tmp_path_factory.mktemp("pattern") / "pattern.sqlite3"
    make_tables(str(path))
    return path


@pytest.fixture(params=ENGINES)
def database(request: pytest.FixtureRequest, tmp_path: Path, sqlite_pattern: Path) -> Iterator[str]:
    """An empty database with all tables."""
    if request.param == "sqlite":
        path = tmp_path / "undercroft.sqlite3"
        shutil.copy(sqlite_pattern, path)
        location = str(path)
    else:
        location = _emptied(request.getfixturevalue("postgresql_tables"))
    yield location
    stored.close_all()


@pytest.fixture
def sqlite(tmp_path: Path, sqlite_pattern: Path) -> Iterator[Path]:
    """An empty SQLite file, for what only SQLite has."""
    path = tmp_path / "undercroft.sqlite3"
    shutil.copy(sqlite_pattern, path)
    yield path
    stored.close_all()


@pytest.fixture
def clock() -> Clock:
    """The server's clock, which stands still until it is moved."""
    return Clock()


@pytest.fixture
def settings(database: str) -> Settings:
    return Settings(database=database, cheap_passwords=True)


@pytest.fixture
def app(settings: Settings, clock: Clock) -> Flask:
    app = create_app(settings, clock)
    app.testing = False
    return app


@pytest.fixture
def sqlite_app(sqlite: Path, clock: Clock) -> Flask:
    """The app on SQLite only, for what no database has a part in."""
    return create_app(Settings(database=str(sqlite), cheap_passwords=True), clock)


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """Somebody who is neither logged in nor paired."""
    return app.test_client()


@pytest.fixture
def coach(app: Flask, clock: Clock) -> AtDesk:
    """A coach who is logged in."""
    return enlist(app, clock, "Ottilie Brandt", "ottilie@example.org")


@pytest.fixture
def other_coach(app: Flask, clock: Clock) -> AtDesk:
    """A coach to whom the athletes of `coach` are nobody's business."""
    return enlist(app, clock, "Casper Nyberg", "casper@example.org")


@pytest.fixture
def athlete(coach: AtDesk) -> str:
    """The id of an athlete of `coach`."""
    return coach.adds_athlete("Runa Falk")


@pytest.fixture
def reading_coach(app: Flask, clock: Clock, athlete: str) -> AtDesk:
    """A coach who may read of `athlete`."""
    coach = enlist(app, clock, "Marit Aune", "marit@example.org", ELSEWHERE)
    return _sharing(coach, athlete, "read")


@pytest.fixture
def writing_coach(app: Flask, clock: Clock, athlete: str) -> AtDesk:
    """A coach who may write for `athlete`."""
    coach = enlist(app, clock, "Joran Vik", "joran@example.org", ELSEWHERE)
    return _sharing(coach, athlete, "write")


def _sharing(coach: AtDesk, athlete: str, level: str) -> AtDesk:
    stored.connect()
    rights.give(athlete, coach.id, level, 1)
    stored.disconnect()
    return coach


@pytest.fixture
def device(coach: AtDesk, athlete: str) -> Phone:
    """A phone paired with `athlete`."""
    return coach.pairs_phone(athlete, "Runa's phone")


@pytest.fixture
def second_device(coach: AtDesk, athlete: str) -> Phone:
    """Another phone of the same athlete."""
    return coach.pairs_phone(athlete, "the old phone")


@pytest.fixture
def other_athlete(other_coach: AtDesk) -> str:
    return other_coach.adds_athlete("Birk Solheim")


@pytest.fixture
def other_device(other_coach: AtDesk, other_athlete: str) -> Phone:
    """A phone of another coach's athlete."""
    return other_coach.pairs_phone(other_athlete, "Birk's phone")


@pytest.fixture
def device_on_file(sqlite_app: Flask, clock: Clock) -> Phone:
    """A paired phone where the database is the SQLite file of `sqlite`."""
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    return coach.pairs_phone(coach.adds_athlete("Runa Falk"))
