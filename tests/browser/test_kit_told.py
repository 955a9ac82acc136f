"""What an athlete finds different in the gym, from the phone to the coach's word and back."""

import re

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

from undercroft.store import athletes, database

pytestmark = pytest.mark.browser


def piece(page: Page, shelf: str, name: str) -> None:
    page.get_by_role("region", name=shelf).locator("summary").filter(has_text=name).first.click()


def kit_of(server: ServerProcess, squad: Squad) -> dict[str, list[dict[str, object]]]:
    database.open_database(server.database)
    database.connect()
    kit: dict[str, list[dict[str, object]]] = athletes.athlete_with_coach(squad.athlete_id).kit
    database.close_all()
    return kit


def test_a_plate_gone_a_bar_weighed_and_a_band_measured_come_to_the_coach(
    server: ServerProcess, squad: Squad, phone: Handset, laptop: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    page.get_by_role("button", name="Kit", exact=True).click()
    expect(page.get_by_text("The old forge cellar")).to_be_visible()
    look(page, "phone-kit")

    piece(page, "Plates", "20 kg")
    hands.record(page, "They are gone")
    expect(page.get_by_text("You said: 2 gone")).to_be_visible()

    piece(page, "Bars", "Steel bar")
    page.get_by_role("button", name="Weigh it").click()
    page.get_by_role("button", name="With the bar: less by 0.1 kg").click()
    expect(page.get_by_text("So the bar weighs 19.9 kg; until now 20 kg.")).to_be_visible()
    look(page, "phone-kit-weighing")
    hands.record(page, "Tell your coach")
    expect(page.get_by_text("You said: weighs 20 kg")).not_to_be_visible()

    piece(page, "Bands", "thin, marked L")
    page.get_by_role("button", name="Measure it with a hanging scale").click()
    page.get_by_role("button", name="Stretched five times").click()
    last = page.get_by_role("button", name="Tell your coach")
    expect(last).to_be_disabled()
    for _ in range(3):
        page.get_by_role("button", name="The scale shows: more by 1 kg").click()
        page.get_by_role("button", name="The scale shows: more by 1 kg").click()
        page.get_by_role("button", name="Add this reading").click()
        page.get_by_role("button", name="Length now: more by 10 cm").click()
    expect(page.get_by_text("124 cm: 2.0 kg")).to_be_visible()
    page.reload()
    expect(page.get_by_text("124 cm: 2.0 kg")).to_be_visible()
    expect(page.get_by_role("button", name="Throw these readings away")).to_be_visible()
    look(page, "phone-kit-measuring")
    hands.record(page, "Tell your coach")
    expect(page.get_by_text("You said: measured with 3 readings")).to_be_visible()
    hands.send_now(page, server.url)

    desk = laptop.switch_on()
    hands.log_in(desk, server.url, EMAIL, PASSWORD)
    expect(desk.get_by_text("Proposes 3 changes of the kit")).to_be_visible()
    desk.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/kit")
    expect(desk.get_by_text("2 plates of 20 kg gone; the kit has 6.")).to_be_visible()
    look(desk, "desk-kit-proposals")
    desk.get_by_role("button", name=re.compile("^Change the kit ?: Plate of 20 kg")).click()
    expect(desk.get_by_text("2 plates of 20 kg gone")).not_to_be_visible()
    desk.get_by_role("button", name=re.compile("^Set aside ?: Steel bar")).click()
    expect(desk.get_by_text("Weighs 19.9 kg")).not_to_be_visible()
    desk.get_by_role("button", name=re.compile("^Change the kit ?: thin, marked L")).click()
    expect(desk.get_by_text("Proposed from the phone")).not_to_be_visible()

    kit = kit_of(server, squad)
    assert kit["plates"][0]["count"] == 4
    assert kit["bars"][0]["mass_kg"] == 20
    assert len(kit["bands"][0]["readings"]) == 3  # type: ignore[arg-type]
    hands.send_now(page, server.url)
    page.goto(f"{server.url}/kit")
    plates = page.get_by_role("region", name="Plates")
    expect(plates.get_by_text("4 pieces").first).to_be_visible()
    expect(page.get_by_text("Your coach set aside: weighs 19.9 kg")).to_be_visible()
