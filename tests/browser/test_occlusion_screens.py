"""Every screen of occlusion work, on a usual and on the smallest phone, dark and light."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands, wraps
from tests.browser.chromium import PHONE, Handset, handset
from tests.browser.conftest import Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

SMALL = {"width": 320, "height": 568}
DAY_MS = 86_400_000


@pytest.fixture(params=["dark", "light"])
def scheme(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(params=[PHONE, SMALL], ids=["usual", "small"])
def held(
    playwright: Playwright, tmp_path: Path, scheme: str, request: pytest.FixtureRequest
) -> Iterator[Handset]:
    size: dict[str, Any] = request.param
    with handset(playwright, tmp_path / "held", viewport=size, dark=scheme == "dark") as one:
        yield one


def named(held: Handset, scheme: str, name: str) -> str:
    return f"wraps-{name}-{'small' if held.viewport is SMALL else 'usual'}-{scheme}"


def test_the_screening(server: ServerProcess, squad: Squad, held: Handset, scheme: str) -> None:
    wraps.ask(server, squad)
    page = held.switch_on()
    hands.pair(page, server.url, squad.secret)

    def seen(name: str) -> None:
        look(page, named(held, scheme, name))

    expect(page.get_by_role("heading", name="Your coach asks for a screening")).to_be_visible()
    seen("today-asked")
    wraps.tap(page, "See what it asks")
    seen("purpose")
    wraps.tap(page, "Begin")
    for place in range(9):
        expect(page.get_by_text(f"{place + 1} of 51")).to_be_visible()
        wraps.answer_one(page)
    seen("question")
    page.get_by_role("button", name="Yes", exact=True).click()
    expect(page.get_by_role("alert")).to_be_visible()
    seen("question-urgent")
    for key in ("When were you born", "Female or male", "How tall are you"):
        while not page.get_by_text(key).is_visible():
            shown = page.locator(".progress p").inner_text()
            wraps.answer_one(page)
            expect(page.locator(".progress p")).not_to_have_text(shown)
        seen(f"question-{key.split()[0].lower()}")
    wraps.answer_screening(page)
    seen("review")
    wraps.tap(page, "Record for your coach")
    expect(page.get_by_role("heading", name="Answered")).to_be_visible()
    seen("recorded")


def test_the_work(server: ServerProcess, squad: Squad, held: Handset, scheme: str) -> None:
    wraps.ask(server, squad)
    wraps.answer(server, squad)
    wraps.sign_and_send(server, squad)
    page = held.switch_on()
    page.clock.install()
    hands.pair(page, server.url, squad.secret)

    def seen(name: str) -> None:
        look(page, named(held, scheme, name))

    hands.begin(page)
    expect(page.get_by_text("Do you have a fever")).to_be_visible()
    seen("day-questions")
    wraps.answer_day(page)
    expect(page.get_by_role("button", name="It is on")).to_be_enabled()
    seen("wrap-on")
    wraps.wrap_on(page)
    seen("first-set")
    page.clock.fast_forward(21_000)
    expect(page.get_by_text("Numb, or tingling?")).to_be_visible()
    seen("numb-asked")
    wraps.record(page, "No")
    wraps.record_set(page)
    expect(page.get_by_role("timer", name="Rest")).to_be_visible()
    expect(page.get_by_text("how tight now?")).to_be_visible()
    seen("tightness-asked")
    page.clock.fast_forward(1_000)
    wraps.record(page, "5")
    seen("second-set-resting")
    wraps.record_set(page)
    expect(page.get_by_role("heading", name="Wrap off now")).to_be_visible()
    seen("wraps-off")
    wraps.record(page, "It is off")
    expect(page.get_by_role("timer", name="Break")).to_be_visible()
    seen("break")
    page.clock.fast_forward(181_000)
    wraps.wrap_on(page)
    page.clock.fast_forward(21_000)
    wraps.record(page, "Yes: off now")
    expect(page.get_by_role("heading", name="Off, and wait")).to_be_visible()
    seen("numb-off")
    wraps.record(page, "Still numb")
    expect(page.get_by_text("A limb went numb today.")).to_be_visible()
    seen("refused")
    page.get_by_role("button", name="Stop", exact=True).click()
    expect(page.get_by_role("button", name="Dizziness, or a cold sweat")).to_be_visible()
    seen("stop-signs")
    wraps.tap(page, "Short of breath at rest, or breath that hurts")
    seen("stopped")
    after(page, server)
    seen("today-after-check")
    wraps.tap(page, "Answer")
    seen("after-check")
    wraps.tap(page, "One limb swollen, warm or discoloured")
    wraps.tap(page, "Record 1 sign")
    expect(page.get_by_text("Do not rub the limb.")).to_be_visible()
    seen("after-urgent")
    page.goto(f"{server.url}/screening")
    expect(page.get_by_role("heading", name=re.compile("Closed|Open"))).to_be_visible()
    seen("screening-closed")


def after(page: Page, server: ServerProcess) -> None:
    page.clock.fast_forward(DAY_MS)
    page.goto(server.url)
    expect(page.get_by_role("heading", name="How is it now?")).to_be_visible()
