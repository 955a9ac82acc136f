"""A coach looks for an exercise, and for what one cellar can do."""

import re

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser


@pytest.fixture
def desk(server: ServerProcess, squad: Squad, laptop: Handset) -> Page:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.get_by_role("link", name="Exercises").click()
    expect(page.get_by_role("heading", name="Exercises", exact=True)).to_be_visible()
    return page


@pytest.fixture
def handheld(server: ServerProcess, squad: Squad, phone: Handset) -> Page:
    """The desk on a phone, logged in."""
    page = phone.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    return page


def test_an_exercise_is_searched_and_read(desk: Page) -> None:
    desk.get_by_label("Name, muscle or implement").fill("landmine row")
    expect(desk.get_by_role("status").filter(has_text="exercise")).to_have_text(
        re.compile(r"2 exercises of \d+")
    )
    desk.get_by_role("link", name="Landmine row", exact=True).click()
    expect(desk.get_by_role("heading", name="Landmine row")).to_be_focused()
    expect(desk.get_by_text("Elbow to the hip")).to_be_visible()
    one = desk.get_by_role("region", name="For one athlete")
    expect(one).to_contain_text("Starts at")
    expect(one.get_by_role("definition").first).to_have_text(re.compile(r"^\d+ cm$"))
    look(desk, "desk-exercise")
    desk.get_by_role("link", name="Exercises").last.click()
    expect(desk.get_by_label("Name, muscle or implement")).to_have_value("landmine row")
    desk.get_by_role("button", name="Show all").click()
    expect(desk.get_by_role("rowheader").first).to_be_visible()


def test_what_this_kit_cannot_do_is_told_or_left_out(desk: Page) -> None:
    desk.get_by_label("Muscle", exact=True).select_option("calves")
    sled = desk.get_by_role("row", name=re.compile("^Calf raise in the leg press"))
    expect(sled).to_contain_text("lacks leg press")
    desk.get_by_label("Only what Runa Tealdi can do with this kit").check()
    expect(sled).to_be_hidden()
    expect(desk.get_by_role("row", name=re.compile("^Standing calf raise"))).to_contain_text(
        "all here"
    )
    look(desk, "desk-exercises-here")


def test_an_injury_flags_an_exercise_on_its_page(desk: Page, server: ServerProcess) -> None:
    """Runa's left wrist is stiff in the cold and keeps her from the power clean."""
    desk.goto(f"{server.url}/desk/exercises/power-clean")
    flagged = desk.get_by_role("listitem").filter(has_text="left wrist")
    expect(flagged).to_contain_text("stiff in the cold")
    expect(flagged.get_by_role("link", name="Runa Tealdi")).to_be_visible()
    one = desk.get_by_role("region", name="For one athlete")
    expect(one).to_contain_text("to be avoided: left wrist")


def test_an_own_exercise_is_written_offered_and_archived(
    desk: Page, server: ServerProcess, squad: Squad
) -> None:
    desk.get_by_role("link", name="Write your own").click()
    desk.get_by_label("Name", exact=True).fill("Back squat")
    desk.get_by_label("Works, with commas between").fill("glutes, upper back")
    desk.get_by_label("Cues, with semicolons between").fill("Hug it; Stand tall")
    desk.get_by_label("Hands start at").fill("20")
    desk.get_by_label("Range").fill("50")
    desk.get_by_role("button", name="Save the exercise").click()
    expect(desk.get_by_label("Name", exact=True)).to_be_focused()
    expect(desk.get_by_role("alert")).to_contain_text("'Back squat' is taken")
    look(desk, "desk-own-exercise-refused")
    desk.get_by_label("Name", exact=True).fill("Barrel lift")
    desk.get_by_role("button", name="Save the exercise").click()
    expect(desk.get_by_role("heading", name="Barrel lift")).to_be_visible()
    one = desk.get_by_role("region", name="For one athlete")
    expect(one.get_by_role("definition").first).to_have_text("34 cm")
    look(desk, "desk-own-exercise")
    own, blocks = desk.url, f"{server.url}/desk/blocks/{squad.block_id}"
    offered = desk.locator("datalist option").filter(has_text="Barrel lift")
    desk.goto(blocks)
    expect(offered).to_have_count(1)
    desk.goto(own)
    desk.get_by_role("button", name="Archive").click()
    expect(desk.get_by_text("the writer does not offer it")).to_be_visible()
    desk.goto(blocks)
    expect(offered).to_have_count(0)


def test_own_cues_stand_in_place_of_the_catalogues(desk: Page, server: ServerProcess) -> None:
    desk.goto(f"{server.url}/desk/exercises/back-squat")
    desk.get_by_text("Write your own cues").click()
    desk.get_by_label("One to a line").fill("Spread the floor")
    desk.get_by_role("button", name="Save the cues").click()
    expect(desk.get_by_role("listitem").filter(has_text="Spread the floor")).to_be_visible()
    desk.get_by_text("Change your cues").click()
    desk.get_by_role("button", name="Back to the catalogue’s").click()
    expect(desk.get_by_text("Brace before you unrack").first).to_be_visible()


def test_the_menu_of_a_narrow_desk_by_keyboard(handheld: Page) -> None:
    menu = handheld.get_by_role("button", name="Menu")
    link = handheld.get_by_role("link", name="Exercises")
    expect(link).to_be_hidden()
    menu.focus()
    handheld.keyboard.press("Enter")
    expect(menu).to_have_attribute("aria-expanded", "true")
    expect(handheld.get_by_role("button", name="Log out")).to_be_visible()
    look(handheld, "desk-menu")
    handheld.keyboard.press("Escape")
    expect(link).to_be_hidden()
    expect(menu).to_be_focused()
    handheld.keyboard.press("Enter")
    link.press("Enter")
    expect(handheld.get_by_role("heading", name="Exercises", exact=True)).to_be_visible()
    expect(link).to_be_hidden()
