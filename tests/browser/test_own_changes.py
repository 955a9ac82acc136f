"""The coach writes for one athlete only; the block sent again leaves it as it is."""

import re

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

ONLY = "Changes for Runa Tealdi only"


def second_monday(page: Page, server: ServerProcess, squad: Squad) -> None:
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/blocks/{squad.block_id}")
    page.get_by_role("row", name=re.compile("^Week 2")).get_by_role("button").nth(1).click()
    page.get_by_label(ONLY).press("Space")
    expect(page.get_by_role("heading", name=re.compile("for Runa Tealdi only$"))).to_be_visible()
    expect(page.get_by_label(ONLY)).to_be_checked()


def test_a_line_for_one_athlete_is_marked_undone_written_again_and_outlasts_a_sending(
    server: ServerProcess, squad: Squad, laptop: Handset
) -> None:
    page = laptop.switch_on()
    second_monday(page, server, squad)
    marks = page.locator(".own-mark")
    percent = page.get_by_label(re.compile("^Percent, 4 sets of 5")).first
    before = float(percent.input_value())
    percent.press("ArrowDown")
    own = f"back squat {before - 2.5:g} % instead of {before:g} %"
    beneath = f"The block: 4 sets of 5 at {before:g} % of the maximum."
    expect(marks).to_have_text(re.compile(re.escape(beneath)))
    page.keyboard.press("Control+z")
    expect(marks).to_have_count(0)
    page.keyboard.press("Control+y")
    page.get_by_role("button", name="Leave out Bench press").press("Enter")
    expect(marks).to_have_count(2)
    listed = page.get_by_role("list", name="Own changes of Runa Tealdi")
    expect(listed.get_by_role("listitem")).to_have_count(2)
    look(page, "own-changes")
    marks.filter(has_text="Left out: Bench press").get_by_role("button").press("Enter")
    expect(listed.get_by_role("listitem")).to_have_count(1)

    page.get_by_label(ONLY).press("Space")
    expect(page.get_by_label(ONLY)).not_to_be_checked()
    expect(page.locator(".own-mark")).to_have_text(f"own Runa Tealdi: {own}.")
    expect(page.get_by_role("button", name="Monday: Squat and press own")).to_have_count(1)
    for revision in (2, 3):
        page.get_by_role("link", name="Send …").click()
        page.get_by_label("Runa Tealdi").check()
        page.get_by_text("1 own change of Runa Tealdi, kept").click()
        expect(page.get_by_role("list", name="Own changes of Runa Tealdi")).to_contain_text(own)
        page.get_by_role("button", name="Send to 1 athlete").click()
        expect(page.get_by_text(f"revision {revision}")).to_be_visible()
        page.goto(f"{server.url}/desk/blocks/{squad.block_id}")

    page.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/next")
    listed = page.get_by_role("list", name="Own changes of Runa Tealdi")
    expect(listed).to_contain_text(own)
    look(page, "own-changes-of-an-athlete")
    listed.get_by_role("button", name=re.compile("^Back to the block’s")).click()
    expect(page.get_by_text("None: Runa Tealdi gets the block as it is written.")).to_be_visible()
