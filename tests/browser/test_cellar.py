"""The whole path with the network gone and the server stopped: nothing lost, nothing doubled."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.chromium import PHONE, Handset, handset
from tests.browser.conftest import Squad
from tests.browser.ledgers import kinds, stored
from tests.kills.browsers import kill_browsers
from tests.server_process import ServerProcess

from undercroft.services import results
from undercroft.store import database

pytestmark = pytest.mark.browser

SETS_OF_MONDAY = 10
TAPS_OF_MONDAY = 13
"""Three of its sets are one-sided: a tap for each side."""


def sees_the_session_opened(page: Page, server: ServerProcess, squad: Squad) -> None:
    """The phone tells it by itself, a moment after Today was first on the screen."""
    for _ in range(100):
        if kinds(stored(server, squad))["session.opened"]:
            return
        page.wait_for_timeout(100)
    raise AssertionError("that the session was opened did not arrive")


def test_a_session_done_without_a_server_is_on_the_desk_once(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    sees_the_session_opened(page, server, squad)
    assert phone.context is not None
    phone.context.set_offline(True)
    server.stop()

    page.goto(server.url)
    hands.begin(page)
    for _ in range(3):
        hands.record_as_planned(page)
    page.reload()
    expect(page.get_by_role("button", name="Set 4 of 4. Show all sets")).to_be_visible()
    assert hands.record_everything(page) == TAPS_OF_MONDAY - 3
    hands.finish(page)
    waiting = r"^10 sets and 2 more entries on this phone only, last sent today \d\d:\d\d$"
    expect(page.get_by_role("button", name=re.compile(waiting))).to_be_visible()

    server.start()
    phone.context.set_offline(False)
    hands.send_now(page, server.url)
    arrived = stored(server, squad)
    done = {"session.started": 1, "set.done": TAPS_OF_MONDAY, "session.finished": 1}
    assert kinds(arrived) == {**done, "session.opened": 2}, "Monday's, and then Wednesday's"
    assert len({entry.set for entry in arrived if entry.kind == "set.done"}) == SETS_OF_MONDAY


def test_the_desk_reads_planned_beside_done_and_the_next_loads_have_moved(
    server: ServerProcess, squad: Squad, phone: Handset, laptop: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    hands.skip_ramp(page)
    page.get_by_role("button", name="In reserve: more").click()
    page.get_by_role("button", name="In reserve: more").click()
    hands.record_everything(page)
    hands.finish(page)
    hands.send_now(page, server.url)

    database.open_database(server.database)
    database.connect()
    done = results.results(squad.athlete_id).sessions
    database.close_all()
    (monday,) = [session for session in done if session.session == "w1-mon"]
    assert monday.state == "finished"
    sets = [one.done for exercise in monday.exercises for one in exercise.sets]
    assert len(sets) == SETS_OF_MONDAY
    assert all(one is not None and one.kind == "done" for one in sets)

    desk = laptop.switch_on()
    hands.log_in(desk, server.url, "ottilie@example.org", "rope, pulley, chalk")
    desk.get_by_role("link", name="Runa Tealdi").click()
    expect(desk.get_by_role("heading", name="Runa Tealdi")).to_be_visible()


def test_an_app_opened_without_any_network_is_at_the_right_place_at_once(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    hands.record_as_planned(page)
    phone.switch_off()
    server.stop()

    page = phone.switch_on()
    page.goto(server.url)
    expect(page.get_by_role("button", name="Set 2 of 4. Show all sets")).to_be_visible()
    server.start()


def test_a_browser_killed_right_after_a_confirmed_tap_loses_nothing_20_times(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    """More of them, also while the phone sends: python -m tests.kills --browser 50."""
    assert kill_browsers(server, squad, phone, kills=20).stored == 20


def test_two_phones_without_a_network_on_one_session_are_told_as_two_answers(
    server: ServerProcess, squad: Squad, phone: Handset, playwright: Playwright, tmp_path: Path
) -> None:
    with handset(playwright, tmp_path / "second", viewport=PHONE) as other:
        first = phone.switch_on()
        hands.pair(first, server.url, squad.secret)
        second = other.switch_on()
        hands.pair_by_code(second, server.url, squad.code)
        server.stop()
        for page in (first, second):
            page.goto(server.url)
            hands.begin(page)
            hands.skip_ramp(page)
        second.get_by_role("button", name="Reps: less").click()
        hands.record_as_planned(first)
        hands.record_as_planned(second)
        server.start()
        hands.send_now(first, server.url)
        hands.send_now(second, server.url)
    database.open_database(server.database)
    database.connect()
    (monday,) = [s for s in results.results(squad.athlete_id).sessions if s.session == "w1-mon"]
    database.close_all()
    done = monday.exercises[0].sets[0].done
    assert done is not None
    assert done.two_answers


def test_a_set_is_corrected_in_the_session_and_the_desk_has_the_correction_alone(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    hands.record_as_planned(page)
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name="Set 1 of 4. Show all sets")).to_be_visible()
    page.get_by_role("button", name="Reps: less").click()
    hands.record_as_planned(page)
    hands.send_now(page, server.url)
    database.open_database(server.database)
    database.connect()
    (monday,) = [s for s in results.results(squad.athlete_id).sessions if s.session == "w1-mon"]
    database.close_all()
    done = monday.exercises[0].sets[0].done
    assert done is not None
    assert done.reps == 4
    assert not done.two_answers
