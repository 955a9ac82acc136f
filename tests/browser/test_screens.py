"""Every screen of phone and desk: a picture for a designer, and axe-core finds nothing."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.chromium import LAPTOP, PHONE, Handset, handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser


@pytest.fixture(params=["dark", "light"])
def scheme(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def held(playwright: Playwright, tmp_path: Path, scheme: str) -> Iterator[Handset]:
    """A phone in a dark cellar or in daylight."""
    with handset(playwright, tmp_path / "held", viewport=PHONE, dark=scheme == "dark") as one:
        yield one


@pytest.fixture(params=[LAPTOP, PHONE], ids=["laptop", "phone"])
def desk(
    playwright: Playwright, tmp_path: Path, scheme: str, request: pytest.FixtureRequest
) -> Iterator[Handset]:
    """The coach's browser, on a laptop or on a train."""
    place = tmp_path / "desk"
    with handset(playwright, place, viewport=request.param, dark=scheme == "dark") as one:
        yield one


def test_the_phone(server: ServerProcess, squad: Squad, held: Handset, scheme: str) -> None:
    page = held.switch_on()

    def seen(name: str) -> None:
        look(page, f"phone-{name}-{scheme}")

    page.goto(f"{server.url}/pair#{squad.secret}")
    expect(page.get_by_role("button", name="Yes, I am Runa Tealdi")).to_be_visible()
    seen("pairing")
    hands.pair(page, server.url, squad.secret)
    seen("today")
    hands.begin(page)
    expect(page.get_by_role("button", name="Warm-up done")).to_be_visible()
    seen("set-warm-up")
    hands.skip_ramp(page)
    expect(page.get_by_role("button", name=hands.DONE)).to_be_visible()
    seen("set")
    hands.record_as_planned(page)
    seen("set-rest")
    page.goto(f"{server.url}/sets")
    expect(page.get_by_role("button", name="Finish the session")).to_be_visible()
    seen("all-sets")
    for place in ("stop", "sync", "back"):
        page.goto(f"{server.url}/{place}")
        expect(page.get_by_role("main")).to_be_visible()
        seen(place)
    page.goto(f"{server.url}/finish")
    page.get_by_role("button", name="7, very hard").click()
    seen("finish")
    page.get_by_role("button", name="Finish the session").click()
    expect(page.get_by_text("Done today")).to_be_visible()
    seen("today-after")


def test_a_phone_that_nobody_has_paired(server: ServerProcess, held: Handset, scheme: str) -> None:
    page = held.switch_on()
    page.goto(server.url)
    expect(page.get_by_label(re.compile("code", re.IGNORECASE))).to_be_visible()
    look(page, f"phone-typed-code-{scheme}")


def test_the_desk(
    server: ServerProcess, squad: Squad, desk: Handset, phone: Handset, scheme: str
) -> None:
    trained(server, squad, phone)
    page = desk.switch_on()
    wide = "wide" if desk.viewport is LAPTOP else "narrow"

    def seen(name: str) -> None:
        look(page, f"desk-{name}-{wide}-{scheme}")

    page.goto(f"{server.url}/desk")
    expect(page.get_by_label("Password")).to_be_visible()
    seen("log-in")
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    seen("squad")
    athlete, block = f"athletes/{squad.athlete_id}", f"blocks/{squad.block_id}"
    places = {
        "results": athlete,
        "person": f"{athlete}/person",
        "kit": f"{athlete}/kit",
        "phones": f"{athlete}/phones",
        "held": f"{athlete}/held",
        "blocks": "blocks",
        "take-in": "blocks/take-in",
        "writer": block,
        "send": f"{block}/send",
    }
    for name, path in places.items():
        page.goto(f"{server.url}/desk/{path}")
        expect(page.get_by_role("heading", level=1)).to_be_visible()
        page.wait_for_load_state("networkidle")
        seen(name)


def trained(server: ServerProcess, squad: Squad, phone: Handset) -> Page:
    """One session done, so that the desk has something to read."""
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    hands.record_everything(page)
    hands.finish(page)
    hands.send_now(page, server.url)
    return page
