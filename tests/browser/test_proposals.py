"""The coach sees what was done, accepts one load of two, and the phone has it after a sync."""

import re
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad, squad_in
from tests.browser.looks import look
from tests.fixtures import athlete_data, block_data, kit_data
from tests.server_process import ServerProcess
from tests.writing import Writer

from undercroft.services import athlete_page, blocks, devices, sending, sync
from undercroft.services.clock import day_of, now_ms
from undercroft.store import database, revisions
from undercroft.store.feed import athlete_lock, last_position
from undercroft.store.migrate import epoch

pytestmark = pytest.mark.browser

IN_KILOGRAMS = {"back-squat": 85.5, "bench-press": 55.5}
ENOUGH = 1000


def mondays() -> Any:
    """A block of two Mondays, whose squats and presses are written in kilograms."""
    document = block_data()
    for week in document["weeks"]:
        week["sessions"] = week["sessions"][:1]
        for exercise in week["sessions"][0]["exercises"]:
            for one in exercise["sets"]:
                if exercise["exercise"] in IN_KILOGRAMS:
                    one["load"] = {"basis": "kg", "kg": IN_KILOGRAMS[exercise["exercise"]]}
                    one["rir"] = 3
    return document


def known_lately() -> Any:
    """Runa, with maxima of a fortnight ago: older ones would be worth little."""
    document = athlete_data()
    for maximum in document["maxima"]:
        maximum["on"] = (day_of(now_ms()) - timedelta(days=14)).isoformat()
    return document


@pytest.fixture
def squad(data: str) -> Squad:
    """Runa has done the first Monday with two repetitions more in reserve than planned."""
    known = squad_in(data)
    database.open_database(data)
    database.connect()
    athlete_page.save_document(known.athlete_id, known_lately())
    block = blocks.add(known.coach_id, mondays(), now_ms()).id
    sending.send(known.coach_id, block, sending.Wanted([known.athlete_id]), now_ms())
    does_monday(known.athlete_id)
    database.close_all()
    return known


def does_monday(athlete_id: str) -> None:
    with athlete_lock(athlete_id):
        device_id, _ = devices.pair(athlete_id, "an earlier phone", now_ms())
    (phone,) = [one for one in devices.devices_of(athlete_id) if one.id == device_id]
    sheet = revisions.sheets_of(athlete_id, 2)["w1-mon"]
    lines = easier(sheet)
    asked = sync.Asked(phone.id, epoch(), last_position(athlete_id), lines)
    verdicts = sync.exchange(phone, asked, now_ms(), ENOUGH)["verdicts"]
    assert {one["status"] for one in verdicts} == {"stored"}


def easier(sheet: dict[str, Any]) -> list[dict[str, Any]]:
    evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18), UTC)
    phone = Writer(at=evening.isoformat(timespec="milliseconds"), clock_ms=now_ms())
    where = {"session": sheet["session"], "revision": 2}
    lines = [phone.entry("session.started", {}, **where)]
    for exercise in sheet["exercises"]:
        for one in exercise["sets"]:
            body = {
                "load_kg": exercise["loads"][one["load"]]["kg"],
                "reps": one["target"]["reps"],
                "rir": one["target"].get("rir", 2) + 2,
            }
            lines.append(phone.entry("set.done", body, set=one["key"], **where))
    return [*lines, phone.entry("session.finished", {"rpe": 6, "minutes": 50}, **where)]


def next_loads(page: Page, server: ServerProcess, squad: Squad) -> Locator:
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/next")
    expect(page.get_by_role("heading", name="Next loads")).to_be_visible()
    return page.get_by_role("checkbox")


def test_one_load_of_two_is_accepted_and_is_on_the_phone_after_a_sync(
    server: ServerProcess, squad: Squad, phone: Handset, laptop: Handset
) -> None:
    pocket = phone.switch_on()
    hands.pair(pocket, server.url, squad.secret)

    page = laptop.switch_on()
    boxes = next_loads(page, server, squad)
    expect(boxes).to_have_count(2)
    squat = page.get_by_role("checkbox", name=re.compile("^Back squat, sets 1–4"))
    press = page.get_by_role("checkbox", name=re.compile("^Bench press"))
    expect(squat).to_have_accessible_description(
        re.compile("up: 5 reps at 5 in reserve, planned 3; stays at 81 % of the maximum")
    )
    look(page, "next-loads")
    page.emulate_media(color_scheme="light")
    look(page, "next-loads-light")
    label = page.get_by_role("listitem").filter(has=squat).locator(".load").inner_text()
    to_kg = label.removesuffix(" kg").split("→ ")[1]
    press.uncheck()
    page.get_by_role("button", name="Accept these 4 loads and send").click()
    expect(page.get_by_text("Sent as revision 3: 4 sets with another load.")).to_be_visible()
    expect(page.get_by_role("checkbox")).to_have_count(1)
    expect(page.get_by_role("checkbox", name=re.compile("^Bench press"))).to_be_visible()

    hands.send_now(pocket, server.url)
    pocket.goto(server.url)
    pocket.get_by_text("1 change from your coach").click()
    change = f"Week 2, Monday: back squat {to_kg} kg instead of 85.5 kg"
    expect(pocket.get_by_text(change)).to_be_visible()
    hands.begin(pocket)
    hands.skip_ramp(pocket)
    expect(pocket.get_by_role("button", name=hands.DONE)).to_be_visible()
    assert to_kg in pocket.locator("main").inner_text()


def test_a_stop_refuses_them_says_why_and_is_set_aside_in_writing(
    server: ServerProcess, squad: Squad, laptop: Handset
) -> None:
    database.open_database(server.database)
    database.connect()
    athlete_page.save_kit(squad.athlete_id, {**kit_data(), "supports": []})
    database.close_all()
    page = laptop.switch_on()
    expect(next_loads(page, server, squad)).to_have_count(2)
    page.get_by_role("button", name="Accept these 7 loads and send").click()
    expect(page.get_by_text(re.compile("^Not sent: the checks found"))).to_be_visible()
    anyway = page.get_by_role("button", name="Send these 7 loads all the same")
    expect(anyway).to_be_disabled()
    look(page, "next-loads-refused")
    for reason in page.get_by_label(re.compile("^Send all the same, because")).all():
        reason.fill("a spotter stands there")
    anyway.click()
    expect(page.get_by_text("Sent as revision 3: 7 sets with another load.")).to_be_visible()


def test_next_loads_on_a_coachs_phone(server: ServerProcess, squad: Squad, phone: Handset) -> None:
    page = phone.switch_on()
    expect(next_loads(page, server, squad)).to_have_count(2)
    look(page, "next-loads-phone")
    wide = page.evaluate("() => document.documentElement.scrollWidth")
    assert wide <= page.evaluate("() => innerWidth")


def test_what_changes_is_read_before_it_is_sent(
    server: ServerProcess, squad: Squad, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    database.open_database(server.database)
    database.connect()
    row = revisions.latest_revision(squad.athlete_id)
    assert row is not None
    fewer = mondays()
    fewer["weeks"][1]["sessions"][0]["exercises"][0]["sets"].pop()
    blocks.save(squad.coach_id, row.block, fewer, now_ms())
    database.close_all()
    page.goto(f"{server.url}/desk/blocks/{row.block}/send")
    page.get_by_label("Runa Tealdi").check()
    told = page.get_by_role("list", name="What changes for Runa Tealdi")
    expect(told).to_have_text("Week 2, Monday: back squat 3 × 5 instead of 4 × 5")
    look(page, "send-changes")
    page.get_by_role("button", name="Send to 1 athlete").click()
    expect(page.get_by_role("link", name=re.compile("^as sheets for paper"))).to_be_visible()


@pytest.mark.parametrize("paper", ["A4", "A5"])
def test_every_set_is_on_the_paper(
    server: ServerProcess, squad: Squad, laptop: Handset, tmp_path: Path, paper: str
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/sheets")
    page.get_by_label("Sessions").select_option(label="All of the block")
    page.get_by_label("Paper").select_option(label=paper)
    keys = [
        one["key"]
        for week in mondays()["weeks"]
        for exercise in week["sessions"][0]["exercises"]
        for one in exercise["sets"]
    ]
    expect(page.locator("[data-set]")).to_have_count(len(keys))
    look(page, f"paper-{paper}")
    page.emulate_media(media="print")
    printed = page.pdf(prefer_css_page_size=True)
    assert size_of(printed) == {"A4": (595, 842), "A5": (420, 595)}[paper]
    assert len(re.findall(rb"/Type /Page\b", printed)) >= len(mondays()["weeks"])
    assert cut_off(page) == []


def size_of(pdf: bytes) -> tuple[int, int]:
    """Width and height of its pages in points."""
    boxes = set(re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", pdf))
    ((width, height),) = boxes
    return round(float(width)), round(float(height))


def cut_off(page: Page) -> list[str]:
    """Cells whose words do not fit into them."""
    found: list[str] = page.evaluate(
        """() => [...document.querySelectorAll(".paper-sets td, .paper-sets th, .paper p")]
            .filter((each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0)
            .map((each) => each.textContent)"""
    )
    return found
