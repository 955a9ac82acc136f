"""A week unfolded at the desk: seen as loads, put in, taken back, put in again, and saved."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser


def weeks(page: Page) -> Locator:
    """The rows of the writer's grid."""
    return page.get_by_role("table", name="Weeks and their sessions").get_by_role("row")


def open_last_week(page: Page, server: ServerProcess, squad: Squad) -> Locator:
    """The panel of the block's second and last week."""
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/blocks/{squad.block_id}")
    page.get_by_role("button", name=re.compile("^Week 2")).click()
    return opened(page)


def opened(page: Page) -> Locator:
    page.get_by_role("button", name="Unfold", exact=True).click()
    panel = page.get_by_role("group", name="Unfold Week 2", exact=True)
    expect(panel.get_by_label("Weeks in all")).to_be_focused()
    return panel


def squat_of(panel: Locator) -> Locator:
    return panel.get_by_role("group", name="Back squat, Monday")


def loads(panel: Locator, exercise: str) -> list[str]:
    """The first row of an exercise in the table: the cells of all weeks, as they are read."""
    table = panel.get_by_role("table", name="Loads by week and set")
    body = table.locator("tbody").filter(has_text=exercise).first
    return body.get_by_role("row").nth(1).get_by_role("cell").all_inner_texts()


def test_a_week_becomes_four_is_taken_back_and_is_saved_when_done_again(
    server: ServerProcess, squad: Squad, laptop: Handset
) -> None:
    page = laptop.switch_on()
    panel = open_last_week(page, server, squad)
    squat_of(panel).get_by_label("Rule").select_option(label="percentages by week")
    values = squat_of(panel).get_by_label("% of the maximum, week by week")
    values.fill("70, 75, 80, 60")
    expect(panel.get_by_role("columnheader", name="Week 5")).to_be_visible()
    expect(panel.get_by_role("cell", name=re.compile("5 reps · 60 %"))).to_be_visible()
    asks = [re.search(r"([\d.]+) %", cell) for cell in loads(panel, "Back squat")]
    assert [found and found[1] for found in asks] == ["70", "75", "80", "60"]
    assert all(re.match(r"[\d.]+ kg", cell) for cell in loads(panel, "Back squat"))

    panel.get_by_role("button", name="Put it in").click()
    expect(weeks(page)).to_have_count(5)
    expect(page.get_by_role("button", name="Unfold", exact=True)).to_be_focused()
    page.keyboard.press("Control+z")
    expect(weeks(page)).to_have_count(2)

    panel = opened(page)
    expect(squat_of(panel).get_by_label("% of the maximum")).to_have_value("70, 75, 80, 60")
    expect(panel.get_by_role("button", name="Put it in")).to_be_enabled()
    page.keyboard.press("Control+Enter")
    expect(weeks(page)).to_have_count(5)
    expect(page.get_by_text("On the server")).to_be_visible()
    page.reload()
    expect(weeks(page)).to_have_count(5)
    expect(weeks(page).last).to_contain_text("Week 5")


def test_a_rule_that_cannot_be_is_told_beside_its_exercise_and_nothing_goes_in(
    server: ServerProcess, squad: Squad, laptop: Handset
) -> None:
    page = laptop.switch_on()
    panel = open_last_week(page, server, squad)
    row = panel.get_by_role("group", name="Dumbbell row, Monday")
    row.get_by_label("Rule").select_option(label="add kilograms")
    row.get_by_label("More by").fill("-20")
    expect(row.get_by_text("set 1 would come to -15 kg in week 3 of the unfolding")).to_be_visible()
    expect(panel.get_by_role("button", name="Put it in")).to_be_disabled()
    page.keyboard.press("Escape")
    expect(panel).to_be_hidden()
    expect(weeks(page)).to_have_count(2)


def test_on_a_phone_the_table_scrolls_within_itself(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    panel = open_last_week(page, server, squad)
    table = panel.get_by_role("region", name="Loads by week")
    expect(table).to_be_visible()
    assert page.evaluate("() => document.documentElement.scrollWidth <= window.innerWidth")
    assert page.evaluate("() => window.innerWidth") == 390
    assert table.evaluate("(frame) => frame.scrollWidth > frame.clientWidth")
