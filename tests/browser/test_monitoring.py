"""What the monitoring's plots show is what the server answers."""

import random
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.fixtures import athlete_data, kit_data
from tests.server_process import ServerProcess

from undercroft.demo.history import Trained, session_entries, sessions_in_order
from undercroft.domain.program.calendar import monday_of
from undercroft.services import athlete_page, athletes, devices, sending, sync
from undercroft.services.clock import DAY_MS, day_of, now_ms
from undercroft.store import database, revisions
from undercroft.store.feed import athlete_lock
from undercroft.store.migrate import epoch

pytestmark = pytest.mark.browser

MAXIMA = {one["lift"]: one["kg"] for one in athlete_data()["maxima"]}


@pytest.fixture
def trained(data: str, squad: Squad) -> str:
    """An athlete of the squad's coach, with two weeks behind her, measured and all sent."""
    now = now_ms()
    database.open_database(data)
    database.connect()
    athlete = athletes.add_athlete(squad.coach_id, "Tove Lind", now - 40 * DAY_MS).id
    athlete_page.save_document(athlete, {**athlete_data(), "name": "Tove Lind"})
    athlete_page.save_kit(athlete, kit_data())
    began = monday_of(day_of(now)) - timedelta(weeks=2)
    wanted = sending.Wanted([athlete], began)
    sending.send(squad.coach_id, squad.block_id, wanted, now - 15 * DAY_MS)
    _does_everything(athlete, now)
    database.close_all()
    return athlete


def _does_everything(athlete: str, now: int) -> None:
    with athlete_lock(athlete):
        devices.pair(athlete, "a phone", now - 15 * DAY_MS)
    (phone,) = devices.devices_of(athlete)
    who, chance = Trained(MAXIMA, 68, measures=True), random.Random(7)
    n = 0
    for sheet in sessions_in_order(revisions.sheets_of(athlete, 1)):
        evening = datetime.combine(date.fromisoformat(sheet["on"]), time(18), UTC)
        lines = session_entries(sheet, who, evening, n, chance)
        n += len(lines)
        sync.exchange(phone, sync.Asked(phone.id, epoch(), 0, lines), now, 1000)


def rows_of(page: Page, title: str) -> list[list[str]]:
    """The table under a plot, cell by cell, as it is read."""
    page.get_by_role("button", name=f"Table: {title}").click()
    group = page.get_by_role("group", name=title, exact=True)
    expect(group.get_by_role("table")).to_be_visible()
    return [row.locator("th, td").all_inner_texts() for row in group.locator("tbody tr").all()]


def number(text: str) -> float | None:
    plain = text.replace("−", "-").replace("+", "").removesuffix(" %")
    return None if plain in ("undefined", "not known yet", "—") else float(plain)


def asked(page: Page, server: ServerProcess, athlete: str, what: str) -> Any:
    answer = page.request.get(f"{server.url}/api/v1/desk/athletes/{athlete}/{what}")
    assert answer.ok, answer.text()
    return answer


def test_the_tables_under_the_plots_are_the_numbers_of_the_api(
    trained: str, server: ServerProcess, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.get_by_role("link", name="Tove Lind").first.click()
    page.get_by_role("link", name="Monitoring").click()

    weeks = asked(page, server, trained, "load").json()["weeks"]
    shown = [[number(cell) for cell in row[1:]] for row in rows_of(page, "Load of each week")]
    assert shown == [
        [
            one["load_au"],
            pytest.approx(one["day_mean_au"], abs=0.05),
            pytest.approx(one["day_sd_au"], abs=0.05),
            one["monotony"] and pytest.approx(one["monotony"], abs=0.005),
            one["strain_au"] and pytest.approx(one["strain_au"], abs=0.5),
            one["unrated_sessions"],
        ]
        for one in reversed(weeks)
    ]
    assert weeks[0]["monotony"] > 0

    work = asked(page, server, trained, "work").json()["weeks"]
    counts = [
        [number(cell) for cell in row[1:]] for row in rows_of(page, "Planned sets of each week")
    ]
    assert counts == [list(one["adherence"].values()) for one in reversed(work)]

    (pull,) = asked(page, server, trained, "speed").json()["exercises"]
    sets = pull["sessions"][-1]["sets"]
    course = rows_of(page, "Hex bar deadlift, set by set")
    assert [number(row[6]) for row in course] == [
        pytest.approx(one["mean_power_w"], abs=0.5) for one in sets
    ]
    assert [row[0].endswith("best") for row in course].index(True) + 1 == (
        pull["sessions"][-1]["course"]["best_set"]
    )
    look(page, "desk-monitoring-tables")


def test_the_file_beside_a_plot_is_the_same_table(
    trained: str, server: ServerProcess, laptop: Handset
) -> None:
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/athletes/{trained}/monitoring")
    with page.expect_download() as download:
        page.get_by_role("link", name="CSV: Tonnage of each week").click()
    assert download.value.suggested_filename == "tonnage.csv"
    lines = download.value.path().read_text(encoding="utf-8").splitlines()
    work = asked(page, server, trained, "work").json()["weeks"]
    assert [float(line.split(",")[1]) for line in lines[1:]] == [
        pytest.approx(one["tonnage_kg"], abs=0.001) for one in work
    ]
