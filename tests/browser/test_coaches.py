"""Two coaches, one athlete: invited by a link, shown what may be done, handed over, erased."""

import re
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.chromium import LAPTOP, PHONE, Handset, handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad, squad_in
from tests.browser.looks import look
from tests.one_time import STEP_MS, code_at
from tests.server_process import ServerProcess

from undercroft.services import accounts
from undercroft.services.clock import now_ms
from undercroft.store import database

pytestmark = pytest.mark.browser

OTHER = "casper@example.org"


@pytest.fixture
def squad(data: str) -> Squad:
    """The usual squad, and a second coach with nobody in it."""
    made = squad_in(data)
    database.open_database(data)
    database.connect()
    accounts.add_coach(accounts.make_hasher(cheap=True), OTHER, "Casper Nyberg", PASSWORD, now_ms())
    database.close_all()
    return made


@pytest.fixture
def elsewhere(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    """The other coach's browser."""
    with handset(playwright, tmp_path / "elsewhere", viewport=LAPTOP) as one:
        yield one


def shown(page: Page, name: str) -> None:
    """A picture in each size and scheme, in each of which axe-core finds nothing."""
    schemes: tuple[Literal["dark", "light"], ...] = ("dark", "light")
    for size, (width, height) in {"laptop": (1280, 800), "phone": (390, 844)}.items():
        page.set_viewport_size({"width": width, "height": height})
        for scheme in schemes:
            page.emulate_media(color_scheme=scheme)
            look(page, f"coaches-{name}-{size}-{scheme}")
    page.set_viewport_size({"width": LAPTOP["width"], "height": LAPTOP["height"]})


def files_in(archive: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(archive) as kept:
        return {name: kept.read(name) for name in kept.namelist()}


def link_from(page: Page, button: str) -> str:
    page.get_by_role("button", name=button, exact=True).click()
    return page.locator(".made-link code").inner_text()


def test_a_second_coach_is_invited_reads_writes_and_is_gone(
    server: ServerProcess, squad: Squad, laptop: Handset, elsewhere: Handset
) -> None:
    mine, theirs = laptop.switch_on(), elsewhere.switch_on()
    page_of_runa = f"{server.url}/desk/athletes/{squad.athlete_id}"
    hands.log_in(mine, server.url, EMAIL, PASSWORD)
    mine.goto(f"{page_of_runa}/sharing")
    link = link_from(mine, "Make a link")
    shown(mine, "sharing")

    theirs.goto(link)
    expect(theirs).to_have_url(f"{server.url}/desk/join")
    theirs.get_by_label("Email").fill(OTHER)
    theirs.get_by_label("Password").fill(PASSWORD)
    theirs.get_by_role("button", name="Log in").click()
    expect(theirs.get_by_text("Ottilie Brandt shares with you, to read:")).to_be_visible()
    shown(theirs, "join")
    theirs.get_by_role("button", name="Accept").click()
    theirs.get_by_role("link", name="Runa Tealdi").click()
    expect(theirs.get_by_text("You may read; for a change, ask Ottilie Brandt.")).to_be_visible()

    for part, words in (
        ("person", ("Save the athlete", "Add a maximum")),
        ("kit", ("Save the kit",)),
        ("screening", ("Ask for it",)),
        ("phones", ("Make an invitation", "Make a code")),
        ("sharing", ("Make a link", "Erase for good")),
    ):
        theirs.goto(f"{page_of_runa}/{part}")
        expect(theirs.locator(".shared-note")).to_be_visible()
        expect(theirs.get_by_role("heading", level=2).first).to_be_visible()
        for name in words:
            button = theirs.get_by_role("button", name=name)
            assert not button.count() or button.is_disabled(), f"{part}: {name}"
    theirs.goto(f"{page_of_runa}/person")
    expect(theirs.get_by_label("Name", exact=True)).to_be_disabled()
    shown(theirs, "read-only")

    mine.reload()
    mine.get_by_role("button", name=re.compile("^Let write")).click()
    expect(mine.get_by_role("cell", name="read and write")).to_be_visible()
    theirs.goto(f"{page_of_runa}/person")
    expect(theirs.get_by_label("Name", exact=True)).to_be_enabled()

    mine.once("dialog", lambda dialog: dialog.accept())
    mine.get_by_role("button", name=re.compile("^Take back")).click()
    expect(mine.get_by_text("Nobody else has a right to Runa Tealdi.")).to_be_visible()
    theirs.reload()
    expect(theirs.get_by_text("there is no such athlete")).to_be_visible()
    theirs.goto(f"{server.url}/desk")
    expect(theirs.get_by_text("Nobody is in your squad yet")).to_be_visible()


def test_the_account_page_ends_log_ins_and_takes_another_password(
    server: ServerProcess, squad: Squad, laptop: Handset, elsewhere: Handset
) -> None:
    mine, lent = laptop.switch_on(), elsewhere.switch_on()
    hands.log_in(lent, server.url, EMAIL, PASSWORD)
    hands.log_in(mine, server.url, EMAIL, PASSWORD)
    mine.get_by_role("link", name="Ottilie Brandt").click()
    expect(mine.get_by_text("this one")).to_be_visible()
    shown(mine, "account")
    mine.get_by_role("button", name=re.compile("^Log out there")).click()
    mine.get_by_label("Your password").fill(PASSWORD)
    mine.get_by_role("main").get_by_role("button", name="Log out", exact=True).click()
    expect(mine.get_by_role("button", name=re.compile("^Log out there"))).to_have_count(0)
    lent.goto(f"{server.url}/desk/blocks")
    expect(lent.get_by_role("heading", name="Log in again")).to_be_visible()
    mine.get_by_label("The one you have").fill(PASSWORD)
    mine.get_by_label("The new one").fill("short")
    mine.get_by_role("button", name="Change the password").click()
    expect(mine.get_by_text("the password has 5 characters")).to_be_visible()
    mine.get_by_label("The new one").fill("a barrel, a yoke, a sled")
    mine.get_by_role("button", name="Change the password").click()
    expect(mine.get_by_text("Changed. You are logged out everywhere else.")).to_be_visible()


def test_a_log_in_asks_for_the_code_of_an_app_until_that_is_turned_off_again(
    server: ServerProcess, squad: Squad, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.get_by_role("link", name="Ottilie Brandt").click()
    page.get_by_role("button", name="Ask for a code").click()
    secret = page.locator(".invitation .secret").inner_text().replace(" ", "")
    page.get_by_label("Your password").fill(PASSWORD)
    page.get_by_label("Code that the app shows now").fill("000000")
    page.get_by_role("button", name="Ask for a code from now on").click()
    expect(page.get_by_text("this code cannot be used")).to_be_visible()
    shown(page, "factor-begun")
    page.get_by_label("Code that the app shows now").fill(code_at(secret, now_ms()))
    page.get_by_role("button", name="Ask for a code from now on").click()
    recovery = page.get_by_role("listitem").filter(has=page.locator("code"))
    expect(recovery).to_have_count(10)
    first = recovery.first.inner_text()
    shown(page, "factor-recovery")
    page.get_by_role("button", name="I have put them away").click()
    expect(page.get_by_text("10 recovery codes left.")).to_be_visible()

    page.get_by_role("button", name="Log out", exact=True).click()
    page.get_by_label("Email").fill(EMAIL)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Log in").click()
    expect(page.get_by_label("Code")).to_be_focused()
    shown(page, "factor-asked")
    page.get_by_label("Code").fill(code_at(secret, now_ms() + STEP_MS))
    page.get_by_role("button", name="Log in").click()
    expect(page.get_by_role("heading", name="Account")).to_be_visible()
    page.get_by_label("Your password").fill(PASSWORD)
    page.get_by_label("Code of the app, or a recovery code").fill(first)
    page.get_by_role("button", name="Let the password be enough").click()
    expect(page.get_by_role("button", name="Ask for a code")).to_be_visible()


def test_an_athlete_leaves_with_an_archive_and_is_erased(
    server: ServerProcess, squad: Squad, laptop: Handset, phone: Handset, tmp_path: Path
) -> None:
    held = phone.switch_on()
    hands.pair(held, server.url, squad.secret)
    hands.begin(held)
    hands.record_as_planned(held)
    hands.send_now(held, server.url)
    with held.expect_download() as own:
        held.get_by_role("link", name="Save the archive").click()
    assert own.value.suggested_filename.startswith("undercroft-archive-")

    mine = laptop.switch_on()
    hands.log_in(mine, server.url, EMAIL, PASSWORD)
    mine.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/sharing")
    with mine.expect_download() as saved:
        mine.get_by_role("link", name="Save the archive").click()
    assert files_in(saved.value.path()) == files_in(own.value.path())
    erase = mine.get_by_role("button", name="Erase for good")
    expect(erase).to_be_disabled()
    mine.get_by_label("to erase").fill("Runa Tealdi")
    erase.click()
    expect(mine.get_by_text("Nobody is in your squad yet")).to_be_visible()

    held.goto(f"{server.url}/sync")
    held.get_by_role("button", name="Send and fetch now").click()
    told = held.get_by_text("Ottilie Brandt has erased what the server had of you.")
    expect(told).to_be_visible()
    for scheme in ("dark", "light"):
        held.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        look(held, f"coaches-erased-phone-{scheme}")
    assert held.viewport_size == PHONE
    held.goto(server.url)
    hands.record_as_planned(held)
    held.goto(f"{server.url}/sync")
    expect(
        held.get_by_text("What this phone holds stays. 1 set on this phone only.")
    ).to_be_visible()
