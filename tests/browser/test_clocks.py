"""The phone's clocks: hidden for ten minutes, set by an hour, and after the tab was killed."""

import time
from dataclasses import dataclass, field

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import Squad
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

MINUTE_MS = 60_000
HOUR_MS = 60 * MINUTE_MS

TURN = """(hidden) => {
    const state = hidden ? "hidden" : "visible";
    Object.defineProperty(document, "visibilityState", { value: state, configurable: true });
    document.dispatchEvent(new Event("visibilitychange"));
}"""
"""As a locked screen or another app in front does it; Playwright keeps its own pages in view."""


def told_ms(page: Page) -> float:
    """The time of day, as this phone believes."""
    now: float = page.evaluate("Date.now()")
    return now


@dataclass
class Rest:
    """A rest under way, and how long it truly is."""

    page: Page
    begun: float = field(default_factory=time.monotonic)
    skipped_ms: int = 0

    def truly_ms(self) -> float:
        return (time.monotonic() - self.begun) * 1000 + self.skipped_ms

    def wait(self, ms: int) -> None:
        """Time goes by, and the browser counts it."""
        self.page.clock.fast_forward(ms)
        self.skipped_ms += ms

    def sleep(self, ms: int) -> None:
        """Time goes by while the phone sleeps: the browser's own count stands still."""
        self.jump(ms)
        self.skipped_ms += ms

    def jump(self, ms: int) -> None:
        """Somebody changes the phone's clock."""
        before = told_ms(self.page)
        self.page.clock.set_system_time((before + ms) / 1000)
        assert abs(told_ms(self.page) - before - ms) < MINUTE_MS

    def is_right(self) -> None:
        """To the second: between what it was before the screen was read and what it was after."""
        self.page.clock.run_for(1_100)
        self.skipped_ms += 1_100
        least = int(self.truly_ms() / 1000) - 1
        clock = self.page.get_by_role("timer", name="Rest")
        expect(clock).to_be_visible()
        minutes, seconds = clock.locator(".rest-time").inner_text().split(":")
        shown = int(minutes) * 60 + int(seconds)
        assert least <= shown <= self.truly_ms() / 1000 + 0.1, (least, shown)


def test_a_rest_is_right_hidden_with_a_changed_clock_and_after_a_kill(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    page.clock.install()
    hands.pair(page, server.url, squad.secret)
    server.stop()
    hands.begin(page)
    hands.record_as_planned(page)
    rest = Rest(page)
    rest.wait(20_000)
    rest.is_right()

    for change in (HOUR_MS, -HOUR_MS):
        rest.jump(change)
        rest.is_right()
        page.reload()
        rest.is_right()

    page.evaluate(TURN, True)
    rest.wait(5 * MINUTE_MS)
    rest.sleep(5 * MINUTE_MS)
    page.evaluate(TURN, False)
    rest.is_right()
    page.evaluate(TURN, True)
    rest.jump(-HOUR_MS)
    page.evaluate(TURN, False)
    rest.is_right()

    told = told_ms(page)
    seen = time.monotonic()
    phone.kill()
    page = phone.switch_on()
    page.clock.install(time=told / 1000 + time.monotonic() - seen)
    rest.page = page
    page.goto(server.url)
    rest.is_right()

    told = told_ms(page)
    phone.kill()
    page = phone.switch_on()
    page.clock.install(time=(told - HOUR_MS) / 1000)
    page.goto(server.url)
    expect(page.get_by_text("This phone's clock was changed: go when ready")).to_be_visible()
    hands.record_as_planned(page)
    rest = Rest(page)
    rest.is_right()
    server.start()
