"""Every screen of the phone, small, usual and lying: nothing cut, nothing too small to tap."""

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.chromium import Handset, handset
from tests.browser.conftest import Squad
from tests.browser.looks import measure
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

SIZES = {"small": (320, 568), "usual": (390, 844), "lying": (844, 390)}
PAGES = ("/tell", "/kit", "/back", "/sync", "/stop", "/pair")

Seen = Callable[..., None]


@pytest.fixture
def held(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    with handset(playwright, tmp_path / "held", viewport={"width": 390, "height": 844}) as one:
        yield one


def seen_by(page: Page) -> tuple[Seen, list[str]]:
    """Measures the screen in every size and both schemes; what is wrong is gathered."""
    wrong: list[str] = []

    def seen(name: str, *, in_set: bool = False) -> None:
        for size, (width, height) in SIZES.items():
            page.set_viewport_size({"width": width, "height": height})
            for scheme in ("dark", "light"):
                page.emulate_media(color_scheme=scheme, reduced_motion="reduce")  # type: ignore[arg-type]
                where = f"{name}, {size}, {scheme}"
                wrong.extend(f"{where}: {what}" for what in measure(page, in_set=in_set))
        twice_the_text(page, name, wrong)

    return seen, wrong


def twice_the_text(page: Page, name: str, wrong: list[str]) -> None:
    """200 % text on the usual phone: what a person sets where reading is hard."""
    page.set_viewport_size({"width": 390, "height": 844})
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    found = measure(page, in_set=False, axe=False)
    wrong.extend(f"{name}, twice the text: {what}" for what in found)
    page.evaluate("document.documentElement.style.fontSize = ''")


def test_every_screen_fits_and_can_be_read_and_tapped(
    server: ServerProcess, squad: Squad, held: Handset
) -> None:
    page = held.switch_on()
    seen, wrong = seen_by(page)
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
    assert wrong == [], "\n".join(wrong)


def measuring(page: Page, url: str) -> None:
    page.goto(f"{url}/kit")
    bands = page.get_by_role("region", name="Bands")
    bands.locator("summary").first.click()
    page.get_by_role("button", name="Measure it with a hanging scale").click()
    page.get_by_role("button", name="Stretched five times").click()
    page.get_by_role("button", name=re.compile("^The scale shows: more by 1 kg")).click()
    page.get_by_role("button", name="Add this reading").click()
    expect(page.get_by_text("124 cm: 1.0 kg")).to_be_visible()
