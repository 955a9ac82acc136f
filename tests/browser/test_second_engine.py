"""The whole path in WebKit: the engine family of iPhones, not iOS Safari itself."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.browser import webkit_hands as hands
from tests.browser.chromium import LAPTOP, PHONE
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.hands import DONE, SYNC
from tests.browser.ledgers import kinds, stored
from tests.browser.looks import look_in_webkit
from tests.browser.webkit import WebKitHandset, virtual_display, webkit_handset
from tests.browser.webkit_page import WebKitPage
from tests.server_process import ServerProcess

pytestmark = [
    pytest.mark.browser,
    pytest.mark.filterwarnings("ignore:setting remote_server_addr"),  # selenium's word to itself
]

SETS_OF_MONDAY = 10
TAPS_OF_MONDAY = 13
"""Three of its sets are one-sided: a tap for each side."""

KILLS = 5

OUT_OF_REACH = """[...document.querySelectorAll("button, a[href], summary, textarea")]
    .map((one) => [one.ariaLabel ?? one.innerText, one.getBoundingClientRect()])
    .filter(([, box]) => box.width > 0)
    .filter(([, box]) => box.height < 48 || box.left < 0 || box.right > innerWidth)
    .map(([name]) => name)"""
"""What a thumb would miss: lower than 48 px, or beyond the edge of the screen."""

HEIGHTS = (
    "[...document.querySelectorAll('select, input[inputmode]')].map((one) => one.offsetHeight)"
)


@pytest.fixture(scope="module")
def display() -> Iterator[str]:
    with virtual_display() as name:
        yield name


@pytest.fixture
def handset(display: str, tmp_path: Path) -> Iterator[WebKitHandset]:
    with webkit_handset(display, tmp_path / "webkit", viewport=PHONE) as one:
        yield one


def opened(handset: WebKitHandset, server: ServerProcess) -> WebKitPage:
    """The app as it opens on a phone that was switched on again."""
    page = WebKitPage(handset.switch_on())
    page.open(server.url)
    page.sees(SYNC)
    return page


def test_a_session_done_without_a_server_arrives_once_as_it_was_tapped(
    server: ServerProcess, squad: Squad, handset: WebKitHandset
) -> None:
    page = WebKitPage(handset.switch_on())
    hands.pair(page, server.url, squad.secret)
    server.stop()

    page.open(server.url)
    hands.begin(page)
    tapped = [hands.record_as_planned(page) for _ in range(3)]
    page.reload()
    page.sees("Set 4 of 4. Show all sets")
    tapped += hands.record_everything(page)
    hands.finish(page)
    page.sees(re.compile(r"^10 sets and 2 more entries on this phone only, last sent today "))

    server.start()
    hands.send_now(page, server.url)
    arrived = stored(server, squad)
    done = {"session.started": 1, "set.done": TAPS_OF_MONDAY, "session.finished": 1}
    assert kinds(arrived) == {**done, "session.opened": 2}, "Monday's, and then Wednesday's"
    sets = [entry for entry in arrived if entry.kind == "set.done"]
    assert len({entry.set for entry in sets}) == SETS_OF_MONDAY
    assert [hands.said_on_the_button(entry) for entry in sets] == tapped


def test_a_browser_killed_right_after_a_confirmed_tap_loses_nothing(
    server: ServerProcess, squad: Squad, handset: WebKitHandset
) -> None:
    page = WebKitPage(handset.switch_on())
    hands.pair(page, server.url, squad.secret)
    server.stop()
    page.open(server.url)
    hands.begin(page)
    for tap in range(KILLS):
        hands.record_as_planned(page)
        handset.kill()
        page = opened(handset, server)
        page.sees(re.compile(rf"^Sync: .*\b{tap + 1} sets? "))
    server.start()
    hands.send_now(page, server.url)
    arrived = [entry for entry in stored(server, squad) if entry.kind == "set.done"]
    assert len({entry.set for entry in arrived}) == len(arrived) == KILLS


def test_the_screens_of_a_session_fit_the_phone_and_axe_finds_nothing(
    server: ServerProcess, squad: Squad, handset: WebKitHandset
) -> None:
    page = WebKitPage(handset.switch_on())
    assert page.ask("[innerWidth, innerHeight]") == [PHONE["width"], PHONE["height"]]

    def seen(name: str) -> None:
        assert page.ask(OUT_OF_REACH) == [], name
        look_in_webkit(page, f"webkit-{name}")

    page.open(f"{server.url}/pair#{squad.secret}")
    page.sees("Yes, I am Runa Tealdi")
    seen("pairing")
    hands.pair(page, server.url, squad.secret)
    seen("today")
    hands.begin(page)
    page.tap(hands.SKIP)
    record = page.wait_for(DONE).rect
    assert record["height"] >= 64
    assert record["y"] + record["height"] <= PHONE["height"], "it can be tapped without scrolling"
    seen("set")
    hands.record_as_planned(page)
    seen("set-rest")
    for place in ("sets", "stop", "sync", "back", "finish"):
        page.open(f"{server.url}/{place}")
        page.until("document.querySelector('main') !== null", f"{place} does not open")
        seen(place)


def test_a_list_on_the_desk_is_a_ruled_line_like_the_fields_beside_it(
    server: ServerProcess, squad: Squad, display: str, tmp_path: Path
) -> None:
    """WebKit had put its own button around every list, a head taller than the fields."""
    with webkit_handset(display, tmp_path / "laptop", viewport=LAPTOP) as laptop:
        page = WebKitPage(laptop.switch_on())
        hands.log_in(page, server.url, EMAIL, PASSWORD)
        page.open(f"{server.url}/desk/athletes/{squad.athlete_id}/person")
        page.sees("Save the athlete")
        page.until("document.querySelector('select') !== null", "there is no list")
        assert len(set(page.ask(HEIGHTS))) == 1
        look_in_webkit(page, "webkit-desk-person")
