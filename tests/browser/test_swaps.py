"""A band snaps in mid-session, without a network: it goes on without it, and the desk hears."""

import re
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import Squad
from tests.browser.ledgers import stored
from tests.browser.looks import look
from tests.server_process import ServerProcess

from undercroft.services import blocks, results, sending
from undercroft.services.clock import now_ms
from undercroft.store import database

pytestmark = pytest.mark.browser

BANDS = {"part": "bands", "share_percent": 25}


def three(exercise: str, key: str, percent: float, **more: Any) -> dict[str, Any]:
    """Three sets of five; with bands the share is meant at lockout."""
    point = {"point": "lockout"} if more else {}
    load = {"basis": "percent", "percent": percent, **point}
    sets = [{"key": f"{key}-{nth}", "reps": 5, "load": load} for nth in (1, 2, 3)]
    method = "speed" if more else "straight"
    return {"key": key, "exercise": exercise, "method": method, "warm_up": [], "sets": sets, **more}


@pytest.fixture
def banded(data: str, squad: Squad) -> None:
    """A session with bands in two of its three exercises, sent before the server starts."""
    exercises = [
        three("hex-bar-deadlift", "a", 70, rig=BANDS),
        three("back-squat", "b", 65, rig=BANDS),
        three("overhead-press", "c", 70),
    ]
    session = {"key": "day", "name": "With bands", "day": 1, "exercises": exercises}
    week = {"key": "w1", "name": "Week 1", "sessions": [session]}
    database.open_database(data)
    database.connect()
    document = {"key": "banded", "name": "Banded", "weeks": [week]}
    block = blocks.add(squad.coach_id, document, now_ms())
    assert block.faults == ()
    wanted = sending.Wanted([squad.athlete_id])
    (sent,) = sending.send(squad.coach_id, block.id, wanted, now_ms())
    database.close_all()
    assert sent.stops == []


def tap(page: Page, name: str) -> None:
    page.get_by_role("button", name=re.compile(name)).first.click()


def does_set(page: Page) -> None:
    hands.record(page, hands.DONE)


def test_a_band_that_snaps_is_not_asked_for_again(
    banded: None, server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    server.stop()
    hands.begin(page)
    does_set(page)
    tap(page, "^Swap ")
    tap(page, "^Broken: thin, marked L")
    look(page, "swap, a band is broken")
    tap(page, "^Hex bar deadlift, without bands")
    expect(page.get_by_role("heading", name="Hex bar deadlift, without bands")).to_be_visible()
    look(page, "swapped")
    does_set(page)
    does_set(page)
    expect(page.get_by_text("Broken: thin, marked L")).to_be_visible()
    look(page, "a band that broke is asked for again")
    tap(page, "^See what to do instead")
    tap(page, "^Back squat, without bands")
    does_set(page)
    tap(page, "^Swap ")
    tap(page, "^Front squat")
    expect(page.get_by_role("heading", name="Front squat")).to_be_visible()
    does_set(page)
    page.goto(f"{server.url}/sets")
    look(page, "all sets after swaps")
    server.start()
    hands.send_now(page, server.url)
    entries = [(e.kind, e.body) for e in stored(server, squad)]
    swaps = [body for kind, body in entries if kind == "exercise.swapped"]
    assert [body.get("missing") for body in swaps] == ["thin-left", None, None]
    (gone,) = [body for kind, body in entries if kind == "kit.changed"]
    assert (gone["change"]["kind"], gone["change"]["name"]) == ("gone", "thin-left")
    database.open_database(server.database)
    database.connect()
    (session,) = [s for s in results.results(squad.athlete_id).sessions if s.session == "day"]
    database.close_all()
    seen = {one.key: one for one in session.exercises}
    assert seen["a"].why_instead == "Broken: thin, marked L"
    assert [each.instead for each in seen["a"].sets] == [
        None,
        "Hex bar deadlift, without bands",
        "Hex bar deadlift, without bands",
    ]
    assert [each.instead for each in seen["b"].sets] == [
        "Back squat, without bands",
        "Front squat",
        None,
    ]
