"""Every screen of the phone, small, usual and lying: nothing cut, nothing too small to tap."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.chromium import Handset, handset
from tests.browser.conftest import Squad
from tests.browser.looks import Measuring
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

PAGES = ("/tell", "/kit", "/back", "/sync", "/stop", "/pair", "/screening", "/after")


@pytest.fixture
def held(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    with handset(playwright, tmp_path / "held", viewport={"width": 390, "height": 844}) as one:
        yield one


def test_every_screen_fits_and_can_be_read_and_tapped(
    server: ServerProcess, squad: Squad, held: Handset
) -> None:
    page = held.switch_on()
    look_at = Measuring(page)
    seen = look_at.measure
    page.goto(f"{server.url}/pair#{squad.secret}")
    expect(page.get_by_role("button", name="Yes, I am Runa Tealdi")).to_be_visible()
    seen("pairing")
    hands.pair(page, server.url, squad.secret)
    seen("today")
    hands.begin(page)
    expect(page.get_by_role("button", name="Warm-up done")).to_be_visible()
    seen("warm-up", in_set=True)
    hands.skip_ramp(page)
    expect(page.get_by_role("button", name=hands.DONE)).to_be_visible()
    seen("set", in_set=True)
    hands.record_as_planned(page)
    expect(page.get_by_role("button", name=hands.DONE)).to_be_visible()
    seen("set at rest", in_set=True)
    page.goto(f"{server.url}/sets")
    expect(page.get_by_role("button", name="Finish the session")).to_be_visible()
    seen("all sets")
    page.goto(f"{server.url}/finish")
    page.get_by_role("button", name="7, very hard").click()
    seen("finish")
    page.get_by_role("button", name="Finish the session").click()
    expect(page.get_by_text("Done today")).to_be_visible()
    expect(page.get_by_role("region", name="Put the app on your home screen")).to_be_visible()
    seen("today after")
    for place in PAGES:
        page.goto(server.url + place)
        expect(page.get_by_role("main")).to_be_visible()
        seen(place)
    measuring(page, server.url)
    seen("measuring a band")
    look_at.finds_nothing()


def measuring(page: Page, url: str) -> None:
    page.goto(f"{url}/kit")
    bands = page.get_by_role("region", name="Bands")
    bands.locator("summary").first.click()
    page.get_by_role("button", name="Measure it with a hanging scale").click()
    page.get_by_role("button", name="Stretched five times").click()
    page.get_by_role("button", name=re.compile("^The scale shows: more by 1 kg")).click()
    page.get_by_role("button", name="Add this reading").click()
    expect(page.get_by_text("124 cm: 1.0 kg")).to_be_visible()
