"""Every screen of the phone, small, usual and lying: nothing cut, nothing too small to tap."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands, wraps
from tests.browser.chromium import Handset, handset
from tests.browser.conftest import Squad
from tests.browser.looks import Measuring
from tests.server_process import ServerProcess

from undercroft.services import devices

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
    look_at = Measuring(page, "phone")
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
        seen(place.strip("/"))
    measuring(page, server.url)
    seen("measuring a band")
    weighing(page)
    seen("weighing a bar")
    look_at.finds_nothing()


def test_every_state_of_the_exchange_fits_and_can_be_read_and_tapped(
    server: ServerProcess, squad: Squad, held: Handset
) -> None:
    page = held.switch_on()
    page.clock.install()
    look_at = Measuring(page, "state")
    seen = look_at.measure
    hands.pair(page, server.url, squad.secret)
    page.goto(f"{server.url}/tell")
    page.evaluate(FULL)
    page.get_by_role("button", name="3, as usual").click()
    expect(page.get_by_text("This phone's storage is full.")).to_be_visible()
    seen("storage full")
    page.get_by_role("button", name=hands.SYNC).click()
    expect(page.get_by_role("heading", name="This phone")).to_be_visible()
    seen("storage full told")
    page.evaluate(ROOM)
    page.get_by_role("button", name="Try again").first.click()
    expect(page.get_by_text("This phone's storage is full.")).to_have_count(0)

    assert held.context is not None
    held.context.set_offline(True)
    page.clock.fast_forward(4 * DAY_MS)
    tell(page, server.url)
    page.clock.fast_forward(4 * DAY_MS)
    for place, told in (("/", "Hand over by file"), ("/sync", "Save the file")):
        page.goto(server.url + place)
        expect(page.get_by_role("button", name=told)).to_be_visible()
        seen(f"unsent for days {place}".replace("/", "on "))

    held.context.set_offline(False)
    page.goto(f"{server.url}/sync")
    page.get_by_role("button", name="Send and fetch now").click()
    expect(page.get_by_text("Set it right; nothing is lost.").first).to_be_visible()
    seen("wrong clock told")
    page.add_init_script(NEWER)
    for place in ("/", "/sync"):
        page.goto(server.url + place)
        expect(page.get_by_text("A newer version").first).to_be_visible()
        seen(f"newer version {place}".replace("/", "on "))
    with wraps.at_the_desk(server) as now:
        for phone in devices.devices_of(squad.athlete_id):
            devices.revoke(squad.athlete_id, phone.id, now)
    tell(page, server.url)
    for place in ("/", "/sync"):
        page.goto(server.url + place)
        expect(page.get_by_role("button", name="Pair again").first).to_be_visible()
        seen(f"revoked {place}".replace("/", "on "))
    look_at.finds_nothing()


DAY_MS = 86_400_000

FULL = """() => {
    window.add = IDBObjectStore.prototype.add;
    IDBObjectStore.prototype.add = () => { throw new DOMException("", "QuotaExceededError"); };
}"""
ROOM = "() => { IDBObjectStore.prototype.add = window.add; }"
"""As a phone refuses to store where nothing is left, and takes it again."""

NEWER = """Object.defineProperty(ServiceWorkerRegistration.prototype, "waiting", {
    get: () => ({ postMessage() {} }),
});"""
"""What the browser says where a newer app has been fetched."""


def tell(page: Page, url: str) -> None:
    page.goto(f"{url}/tell")
    hands.record(page, "4, fresh")
    expect(page.get_by_text("4, fresh: recorded for today.")).to_be_visible()


def weighing(page: Page) -> None:
    page.goto(page.url)
    bars = page.get_by_role("region", name="Bars")
    bars.locator("summary").first.click()
    page.get_by_role("button", name="Weigh it").click()
    page.get_by_role("button", name="With the bar: less by 0.1 kg").click()
    expect(page.get_by_text("So the bar weighs")).to_be_visible()


def measuring(page: Page, url: str) -> None:
    page.goto(f"{url}/kit")
    bands = page.get_by_role("region", name="Bands")
    bands.locator("summary").first.click()
    page.get_by_role("button", name="Measure it with a hanging scale").click()
    page.get_by_role("button", name="Stretched five times").click()
    page.get_by_role("button", name=re.compile("^The scale shows: more by 1 kg")).click()
    page.get_by_role("button", name="Add this reading").click()
    expect(page.get_by_text("124 cm: 1.0 kg")).to_be_visible()
