"""What a phone could not send reaches the desk by a file, and each set once."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.ledgers import kinds, stored
from tests.browser.looks import look
from tests.handing import hand_over_text
from tests.people import Phone
from tests.server_process import ServerProcess
from tests.writing import Writer

from undercroft.services import pairing
from undercroft.services.clock import now_ms
from undercroft.store import database

pytestmark = pytest.mark.browser


def trained_alone(server: ServerProcess, squad: Squad, phone: Handset) -> tuple[Page, int]:
    """A session done without a network; how many sets it told."""
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    assert phone.context is not None
    phone.context.set_offline(True)
    server.stop()
    page.goto(server.url)
    hands.begin(page)
    count = hands.record_everything(page)
    hands.finish(page)
    return page, count


def saves_file(page: Page, url: str, folder: Path) -> Path:
    page.goto(f"{url}/sync")
    with page.expect_download() as told:
        page.get_by_role("button", name="Save the file").click()
    path = folder / told.value.suggested_filename
    told.value.save_as(path)
    expect(page.get_by_text(re.compile("^Saved as undercroft-runa-tealdi-"))).to_be_visible()
    return path


def opens_phones(laptop: Handset, server: ServerProcess, squad: Squad) -> Page:
    desk = laptop.switch_on()
    hands.log_in(desk, server.url, EMAIL, PASSWORD)
    desk.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/phones")
    return desk


def takes_in(desk: Page, path: Path) -> None:
    desk.get_by_label("The file from the phone").set_input_files(path)
    desk.get_by_role("button", name="Take in").click()


def sets_once(server: ServerProcess, squad: Squad, count: int) -> None:
    arrived = stored(server, squad)
    assert kinds(arrived)["set.done"] == count
    assert kinds(arrived)["session.finished"] == 1
    assert len({entry.id for entry in arrived}) == len(arrived)


def another_invitation(server: ServerProcess, squad: Squad) -> str:
    database.open_database(server.database)
    database.connect()
    _, secret, _ = pairing.invite(squad.athlete_id, now_ms())
    database.close_all()
    return secret


def test_a_wiped_phone_is_restored_from_its_file_with_every_set_once(
    server: ServerProcess, squad: Squad, phone: Handset, laptop: Handset, tmp_path: Path
) -> None:
    page, count = trained_alone(server, squad, phone)
    path = saves_file(page, server.url, tmp_path)
    look(page, "phone-hand-over")
    server.start()
    assert phone.context is not None
    page.goto(f"{server.url}/manifest.webmanifest")
    page.evaluate("indexedDB.deleteDatabase('undercroft')")
    phone.context.clear_cookies()
    phone.context.set_offline(False)
    assert kinds(stored(server, squad))["set.done"] == 0

    desk = opens_phones(laptop, server, squad)
    desk.get_by_label("The file from the phone").set_input_files(path)
    expect(desk.get_by_text(re.compile(r"\d+ entries, 10 sets among them"))).to_be_visible()
    look(desk, "desk-hand-over")
    desk.get_by_role("button", name="Take in").click()
    expect(desk.get_by_text(re.compile("entries taken in"))).to_be_visible()
    sets_once(server, squad, count)

    page.goto(f"{server.url}/pair#{another_invitation(server, squad)}")
    page.get_by_role("button", name="Yes, I am Runa Tealdi").click()
    expect(page.get_by_role("button", name="Start")).to_be_visible()
    page.goto(f"{server.url}/back")
    expect(page.get_by_text("Back squat").first).to_be_visible()
    sets_once(server, squad, count)


def test_a_phone_that_finds_a_network_after_all_doubles_nothing(
    server: ServerProcess, squad: Squad, phone: Handset, laptop: Handset, tmp_path: Path
) -> None:
    page, count = trained_alone(server, squad, phone)
    path = saves_file(page, server.url, tmp_path)
    server.start()
    desk = opens_phones(laptop, server, squad)
    takes_in(desk, path)
    expect(desk.get_by_text(re.compile("entries taken in"))).to_be_visible()
    assert phone.context is not None
    phone.context.set_offline(False)
    hands.send_now(page, server.url)
    sets_once(server, squad, count)
    takes_in(desk, path)
    expect(desk.get_by_text(re.compile("were here before"))).to_be_visible()
    sets_once(server, squad, count)
    expect(page.get_by_text("Everything is sent.")).to_be_visible()


def test_what_a_phone_of_another_server_brings_is_let_in_at_once(
    server: ServerProcess, squad: Squad, laptop: Handset, tmp_path: Path
) -> None:
    writes = Writer()
    elsewhere = Phone(None, "elsewhere", squad.athlete_id, "another-epoch")  # type: ignore[arg-type]
    path = tmp_path / "handed.json"
    path.write_text(hand_over_text(elsewhere, "Runa Tealdi", writes.many(3)))
    desk = opens_phones(laptop, server, squad)
    desk.get_by_label("The file from the phone").set_input_files(path)
    expect(desk.get_by_text(re.compile("never paired that phone"))).to_be_visible()
    desk.get_by_role("button", name="Take in").click()
    expect(desk.get_by_text(re.compile("3 wait among the held entries"))).to_be_visible()
    assert stored(server, squad) == []
    desk.get_by_role("link", name="Held entries").click()
    desk.get_by_role("button", name="Let all 3 count").click()
    expect(desk.get_by_text("Nothing is held.")).to_be_visible()
    assert kinds(stored(server, squad))["set.done"] == 3
