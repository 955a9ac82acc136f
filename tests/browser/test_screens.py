"""Every screen of phone and desk: a picture for a designer, and axe-core finds nothing."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.chromium import LAPTOP, PHONE, Handset, handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.desk_places import PLACES, place_of, screens
from tests.browser.looks import Measuring, look
from tests.server_process import ServerProcess

from undercroft.services import blocks, sending
from undercroft.services.clock import now_ms
from undercroft.store import database

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


WAITING = re.compile("^Fetching .* …$|^working out the loads …$")


def test_every_screen_of_the_desk_is_looked_at() -> None:
    """A new route needs a place in `desk_places.PLACES`, or nobody sees how it looks."""
    assert screens() == set(PLACES)


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
    for screen in PLACES:
        page.goto(f"{server.url}/desk/{place_of(screen, squad)}")
        title = page.get_by_role("heading", level=1)
        expect(title).to_be_visible()
        page.wait_for_load_state("networkidle")
        expect(page.get_by_text(WAITING)).to_have_count(0)
        assert (title.inner_text() == "No such page") is (screen == "nowhere")
        seen(screen)
    page.goto(f"{server.url}/desk/{place_of('writer', squad)}")
    page.locator(".exercise-more > summary").first.click()
    page.get_by_role("button", name="Find bands").click()
    expect(page.get_by_role("button", name="Take this one").first).to_be_visible()
    seen("find-bands")
    page.get_by_role("button", name="Unfold", exact=True).click()
    panel = page.get_by_role("group", name="Unfold Week 1", exact=True)
    squat = panel.get_by_role("group", name="Back squat, Monday")
    squat.get_by_label("Rule").select_option(label="wave")
    expect(panel.get_by_role("cell", name=re.compile("82.5 %")).first).to_be_visible()
    seen("unfold")


def trained(server: ServerProcess, squad: Squad, phone: Handset) -> Page:
    """One session done, so that the desk has something to read."""
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    hands.record_everything(page)
    hands.finish(page)
    hands.send_now(page, server.url)
    return page


def card(key: str, exercise: str, method: str, one: dict[str, Any], **more: Any) -> dict[str, Any]:
    sets = [{"key": f"{key}-{n}", **one} for n in (1, 2)]
    plan = {"key": key, "exercise": exercise, "method": method, "warm_up": [], "sets": sets}
    return {**plan, "rest": {"from_s": 90, "to_s": 120}, **more}


def percent(value: float, point: str = "bar") -> dict[str, Any]:
    return {"basis": "percent", "percent": value, "point": point}


CARDS = {
    "bands": card(
        "bands",
        "hex-bar-deadlift",
        "speed",
        {"reps": 3, "load": percent(85, "lockout")},
        rig={"part": "bands", "share_percent": 25},
    ),
    "chains": card(
        "chains",
        "back-squat",
        "speed",
        {"reps": 3, "load": percent(60)},
        rig={"part": "chains", "share_percent": 15},
    ),
    "landmine": card(
        "landmine",
        "landmine-press",
        "one-sided",
        {"reps": 6, "load": {"basis": "kg", "kg": 18, "in_hand": True}},
        details={"first": "left", "knee_down": "same"},
    ),
    "light-bar": card(
        "light-bar",
        "oscillating-bar-bench-press",
        "unstable-bar",
        {"reps": 10, "load": {"basis": "kg", "kg": 28}},
        details={"hanging": False},
    ),
    "stack-hold": card(
        "stack-hold",
        "pulldown",
        "hold",
        {"seconds": 20, "load": percent(50)},
        details={"position": 1.0},
        rig={"part": "bands", "share_percent": 20},
    ),
}


@pytest.fixture
def cards(data: str, squad: Squad) -> None:
    """A session with a load card of each sort, sent before the server starts."""
    database.open_database(data)
    database.connect()
    session = {"key": "cards", "name": "Cards", "day": 1, "exercises": list(CARDS.values())}
    week = {"key": "w1", "name": "Week 1", "sessions": [session]}
    document = {"key": "cards", "name": "Cards", "weeks": [week]}
    block = blocks.add(squad.coach_id, document, now_ms())
    assert block.faults == ()
    (sent,) = sending.send(squad.coach_id, block.id, sending.Wanted([squad.athlete_id]), now_ms())
    database.close_all()
    assert sent.stops == []


def test_the_load_cards(
    cards: None, server: ServerProcess, squad: Squad, held: Handset, scheme: str
) -> None:
    page = held.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    cards_seen = Measuring(page, "cards")
    for name in CARDS:
        page.goto(f"{server.url}/sets")
        title = page.get_by_role("heading", name=re.compile(NAMES[name]))
        here = page.locator("section").filter(has=title)
        chosen = here.get_by_role("button", name="Do this next")
        expect(here).to_be_visible()
        if chosen.count():
            chosen.click()
        else:
            page.goto(f"{server.url}/set")
        expect(page.get_by_role("heading", name=re.compile(NAMES[name]))).to_be_visible()
        expect(page.get_by_role("button", name=hands.DONE)).to_be_visible()
        look(page, f"card-{name}-{scheme}")
        if scheme == "dark":
            cards_seen.measure(f"card {name}", in_set=True)
            page.set_viewport_size(held.viewport)  # type: ignore[arg-type]
            page.emulate_media(color_scheme="dark")
    cards_seen.finds_nothing()


NAMES = {
    "bands": "Hex bar deadlift",
    "chains": "Back squat",
    "landmine": "Half-kneeling landmine press",
    "light-bar": "Bench press on the oscillating bar",
    "stack-hold": "Lat pulldown",
}
