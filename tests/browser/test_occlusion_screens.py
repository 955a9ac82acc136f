"""Every screen of occlusion work, small, usual and lying, dark and light, and with large text."""

import re
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands, wraps
from tests.browser.chromium import PHONE, Handset, handset
from tests.browser.conftest import COACH, Squad
from tests.browser.looks import Measuring
from tests.server_process import ServerProcess

from undercroft.domain.occlusion import Measured, Site
from undercroft.domain.program.methods import Limb, Side
from undercroft.services import athlete_page, screening
from undercroft.services.clock import day_of
from undercroft.store import athletes

pytestmark = pytest.mark.browser

DAY_MS = 86_400_000


@pytest.fixture
def held(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    with handset(playwright, tmp_path / "held", viewport=PHONE) as one:
        yield one


def test_the_screening(server: ServerProcess, squad: Squad, held: Handset) -> None:
    wraps.ask(server, squad)
    page = held.switch_on()
    hands.pair(page, server.url, squad.secret)
    look_at = Measuring(page, "screening")
    seen = look_at.measure

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
    look_at.finds_nothing()


def test_the_work(server: ServerProcess, squad: Squad, held: Handset) -> None:
    wraps.ask(server, squad)
    wraps.answer(server, squad)
    wraps.sign_and_send(server, squad)
    page = held.switch_on()
    page.clock.install()
    hands.pair(page, server.url, squad.secret)
    look_at = Measuring(page, "wraps")
    seen = look_at.measure

    hands.begin(page)
    expect(page.get_by_text("Do you have a fever")).to_be_visible()
    seen("day-questions")
    wraps.answer_day(page)
    expect(page.get_by_role("button", name="It is on")).to_be_enabled()
    seen("wrap-on", in_set=True)
    wraps.wrap_on(page)
    seen("first-set", in_set=True)
    page.clock.fast_forward(21_000)
    expect(page.get_by_text("Numb, or tingling?")).to_be_visible()
    seen("numb-asked", in_set=True)
    wraps.record(page, "No")
    wraps.record_set(page)
    expect(page.get_by_role("timer", name="Rest")).to_be_visible()
    expect(page.get_by_text("how tight now?")).to_be_visible()
    seen("tightness-asked")
    page.clock.fast_forward(1_000)
    wraps.record(page, "5")
    expect(page.get_by_text("how tight now?")).to_be_hidden()
    seen("second-set-resting", in_set=True)
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
    seen("screening closed")
    look_at.finds_nothing()


def after(page: Page, server: ServerProcess) -> None:
    page.clock.fast_forward(DAY_MS)
    page.goto(server.url)
    expect(page.get_by_role("heading", name="How is it now?")).to_be_visible()


ON_BOTH = [Site(Limb.UPPER_ARM, side) for side in Side]
CUFF = {"key": "cuff", "label": "Narrow cuff", "width_mm": 50, "material": "nylon"}


def with_a_cuff() -> dict[str, Any]:
    """The same work with a cuff on whose pressure has been measured."""
    (week,) = wraps.BLOCK["weeks"]
    session, _ = week["sessions"]
    (exercise,) = session["exercises"]
    details = {"limb": "upper-arm", "restriction": "cuff", "both_at_once": False}
    cuffed = {**exercise, "details": {**details, "pressure_percent": 50}}
    sessions = [{**session, "exercises": [cuffed]}]
    return {**wraps.BLOCK, "weeks": [{**week, "sessions": sessions}]}


def test_the_cuffs_and_the_limit(server: ServerProcess, squad: Squad, held: Handset) -> None:
    wraps.ask(server, squad)
    wraps.answer(server, squad)
    with wraps.at_the_desk(server) as now:
        on = day_of(now) - timedelta(days=7)  # before this week's first session, whatever today is
        coach = screening.Coach(squad.coach_id, COACH)
        for site in ON_BOTH:
            measured = Measured(140, on, "Maro Tellin", site, "seated", 50, "nylon")
            screening.measure(squad.athlete_id, measured, coach, now)
        row = athletes.athlete_with_coach(squad.athlete_id)
        athlete_page.save_kit(squad.athlete_id, {**row.kit, "cuffs": [CUFF]})
    wraps.sign_and_send(server, squad, with_a_cuff())
    page = held.switch_on()
    page.clock.install()
    hands.pair(page, server.url, squad.secret)
    look_at = Measuring(page, "cuffs")
    seen = look_at.measure

    hands.begin(page)
    wraps.answer_day(page)
    expect(page.get_by_text("70 mmHg")).to_be_visible()
    seen("cuff on", in_set=True)
    wraps.wrap_on(page)
    page.clock.fast_forward(21_000)
    wraps.record(page, "No")
    page.clock.fast_forward(850_000)
    seen("soon at the limit", in_set=True)
    page.clock.fast_forward(60_000)
    expect(page.get_by_text("The limit of 15:00 is reached")).to_be_visible()
    seen("limit", in_set=True)
    look_at.finds_nothing()
