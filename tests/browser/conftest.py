"""A squad on a real server, and phones and laptops that look at it."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Playwright, sync_playwright
from tests.browser.chromium import LAPTOP, PHONE, Handset, handset
from tests.conftest import make_tables
from tests.fixtures import athlete_data, block_data, kit_data
from tests.server_process import ServerProcess

from undercroft.services import accounts, athlete_page, athletes, blocks, pairing, sending
from undercroft.services.clock import now_ms
from undercroft.store import database

WEB = Path(__file__).parents[2] / "server" / "undercroft" / "web"
EMAIL, PASSWORD, COACH = "ottilie@example.org", "rope, pulley, chalk", "Ottilie Brandt"


@dataclass(frozen=True)
class Squad:
    """One coach and one athlete, Runa, to whom two weeks have been sent."""

    coach_id: str
    athlete_id: str
    block_id: str
    secret: str
    code: str


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as running:
        yield running


def database_in(folder: Path) -> str:
    """An empty database with all tables; fails where the app is not built."""
    assert (WEB / "index.html").exists(), "the app is not built; .ci/setup builds it"
    location = str(folder / "undercroft.sqlite3")
    make_tables(location)
    return location


def squad_in(location: str) -> Squad:
    """Made by the same services that the API calls, before a server starts."""
    now = now_ms()
    database.open_database(location)
    database.connect()
    coach = accounts.add_coach(accounts.make_hasher(cheap=True), EMAIL, COACH, PASSWORD, now)
    athlete = athletes.add_athlete(coach, "Runa Tealdi", now).id
    athlete_page.save_document(athlete, athlete_data())
    athlete_page.save_kit(athlete, kit_data())
    block = blocks.add(coach, block_data(), now).id
    sending.send(coach, block, sending.Wanted([athlete]), now)
    _, secret, _ = pairing.invite(athlete, now)
    code, _ = pairing.make_code(athlete, now)
    database.close_all()
    return Squad(coach, athlete, block, secret, code)


@pytest.fixture
def data(tmp_path: Path) -> str:
    return database_in(tmp_path)


@pytest.fixture
def squad(data: str) -> Squad:
    return squad_in(data)


@pytest.fixture
def server(data: str, squad: Squad, tmp_path: Path) -> Iterator[ServerProcess]:
    """The real server, running."""
    running = ServerProcess(data, tmp_path / "server.log")
    running.start()
    yield running
    running.stop()


@pytest.fixture
def phone(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    with handset(playwright, tmp_path / "phone", viewport=PHONE) as one:
        yield one


@pytest.fixture
def laptop(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    with handset(playwright, tmp_path / "laptop", viewport=LAPTOP) as one:
        yield one
