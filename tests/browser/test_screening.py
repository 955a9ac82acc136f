"""Screening at the desk: asked for, answered, read, signed; what a coach cannot open stays shut."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.answering import Answering, paired
from tests.browser.chromium import LAPTOP, PHONE, Handset, handset
from tests.browser.conftest import COACH, EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

SIGN = "I have read it"
TO_READ = re.compile("^read ?:|^I have read the other")


@pytest.fixture
def answering(playwright: Playwright, server: ServerProcess, squad: Squad) -> Answering:
    return paired(playwright, server.url, squad.secret)


@pytest.fixture
def page(laptop: Handset, server: ServerProcess, squad: Squad) -> Page:
    """The coach at Runa's screening, not asked for yet."""
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    return shown(page, server, squad)


def shown(page: Page, server: ServerProcess, squad: Squad) -> Page:
    page.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/screening")
    expect(page.get_by_role("heading", level=1, name="Runa Tealdi")).to_be_visible()
    return page


def ask(page: Page) -> None:
    page.get_by_role("button", name="Ask for it").click()
    expect(page.get_by_text("not answered yet")).to_be_visible()


def tick_all(page: Page) -> None:
    """By keyboard, as somebody without a mouse does."""
    expect(page.get_by_role("button", name=SIGN)).to_be_visible()
    for box in page.get_by_role("checkbox", name=TO_READ).all():
        box.focus()
        page.keyboard.press("Space")
        expect(box).to_be_checked()


def test_a_coach_asks_reads_signs_and_sees_it_open(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers()
    shown(page, server, squad)
    sign = page.get_by_role("button", name=SIGN)
    expect(sign).to_be_disabled()
    tick_all(page)
    sign.click()
    expect(page.get_by_text("It is open until")).to_be_visible()
    expect(page.get_by_text(f"Signed by {COACH}").first).to_be_visible()
    expect(sign).to_be_hidden()


def test_a_counted_caution_is_signed_only_with_a_note(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers(smoking="yes")
    shown(page, server, squad)
    tick_all(page)
    sign = page.get_by_role("button", name=SIGN)
    expect(sign).to_be_disabled()
    expect(page.get_by_text("Still missing: a note")).to_be_visible()
    page.get_by_label("Note: how you weigh").fill("Two a week; talked about it.")
    sign.click()
    expect(page.get_by_text("It is open until")).to_be_visible()


def test_a_hard_stop_stays_locked_whatever_the_coach_signs(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers(clot="yes")
    shown(page, server, squad)
    tick_all(page)
    page.get_by_role("button", name=SIGN).click()
    expect(page.get_by_text(f"Signed by {COACH}").first).to_be_visible()
    expect(page.get_by_text("It is closed.")).to_be_visible()
    expect(page.get_by_text("You alone cannot open")).to_be_visible()


def test_the_coachs_own_name_is_refused_at_its_field(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers(clot="yes")
    shown(page, server, squad)
    page.get_by_text("Record a clearance").click()
    page.get_by_label("Clinician", exact=True).fill(COACH)
    page.get_by_label("Profession").select_option("doctor")
    page.get_by_label("Licence").fill("reg. 4711")
    page.get_by_label("Given on").fill("2026-02-02")
    page.get_by_label("Holds until").fill("2026-12-31")
    page.get_by_role("checkbox", name=re.compile("^a blood clot")).check()
    page.get_by_role("button", name="Record the clearance").click()
    field = page.get_by_label("Clinician", exact=True)
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(field).to_be_focused()
    expect(field).to_have_value(COACH)
    expect(page.get_by_text("name the licensed clinician").first).to_be_visible()


def test_withdrawing_the_signature_closes_the_work(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers()
    shown(page, server, squad)
    tick_all(page)
    page.get_by_role("button", name=SIGN).click()
    expect(page.get_by_text("It is open until")).to_be_visible()
    told: list[str] = []
    page.once("dialog", lambda dialog: (told.append(dialog.message), dialog.accept()))
    page.get_by_role("button", name=re.compile("^Withdraw")).click()
    expect(page.get_by_text("It is closed.")).to_be_visible()
    assert "closed until it is signed" in told[0]


@pytest.fixture(params=["dark", "light"])
def scheme(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(params=[LAPTOP, PHONE], ids=["wide", "narrow"])
def desk(
    playwright: Playwright, tmp_path: Path, scheme: str, request: pytest.FixtureRequest
) -> Iterator[Handset]:
    place = tmp_path / "desk"
    with handset(playwright, place, viewport=request.param, dark=scheme == "dark") as one:
        yield one


def test_how_it_looks(
    desk: Handset, server: ServerProcess, squad: Squad, answering: Answering, scheme: str
) -> None:
    page = desk.switch_on()
    wide = "wide" if desk.viewport is LAPTOP else "narrow"

    def seen(name: str) -> None:
        look(page, f"desk-screening-{name}-{wide}-{scheme}")

    hands.log_in(page, server.url, EMAIL, PASSWORD)
    shown(page, server, squad)
    expect(page.get_by_role("button", name="Ask for it")).to_be_visible()
    seen("ask")
    ask(page)
    seen("waiting")
    answering.answers(clot="not-sure", diabetes="yes", injury="yes", smoking="yes", systolic=150)
    answering.syncs(
        answering.writes.entry("after.check", {"hours": 24, "signs": ["dark-urine", "sore"]})
    )
    shown(page, server, squad)
    expect(page.get_by_role("alert")).to_be_visible()
    for form in ("Record a clearance", "Record a measured pressure"):
        page.get_by_text(form).click()
    page.get_by_role("checkbox", name=re.compile("an injury that is not over")).check()
    seen("answered")
    page.get_by_role("button", name="Record the clearance").click()
    expect(page.get_by_text("Not recorded.")).to_be_visible()
    seen("refused")
    tick_all(page)
    page.get_by_label("Note: how you weigh").fill("Two a week; talked about it.")
    page.get_by_role("button", name=SIGN).click()
    expect(page.get_by_text(f"Signed by {COACH}").first).to_be_visible()
    seen("signed")
