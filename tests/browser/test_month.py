"""A coach's month by keyboard alone: write, mend, send to thirty, read, decide, send again."""

import re
from dataclasses import dataclass

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD
from tests.browser.keyboard import Keyboard
from tests.browser.month import Month, month_in
from tests.browser.wraps import at_the_desk
from tests.server_process import ServerProcess

from undercroft.domain.ledger import Entry
from undercroft.services import ledger

pytestmark = pytest.mark.browser


@dataclass(frozen=True)
class Line:
    """An exercise as the coach types it: part of its name, its sets in shorthand, its method.

    Of a method or limb only the first letters are typed, as in any list of a browser.
    """

    exercise: str
    sets: str
    method: str = ""
    more: tuple[tuple[str, str], ...] = ()


FIRST_WRAP = (("Limb", "upper"), ("Tightness", "5"), ("Sides", "one"))

WEEK = {
    "Strength": [
        Line("back squat", "4x5 110kg rest 150-210"),
        Line("bench press", "1x3 1rir rest 120-180", "Top"),
        Line("half-kneeling landmine press", "3x6 18kg rest 60-90", "One"),
        Line("plank", "2x40s no load rest 45-60", "Hold"),
    ],
    "Speed": [
        Line("hex bar deadlift", "5x3 65% rest 75-90", "Speed"),
        Line("bench press on the oscillating bar", "3x10 30kg rest 60-90", "Unstable"),
        Line("farmer's carry", "3x30m 24kg rest 60-90", "Time"),
        Line("dumbbell curl", "2x15 6kg rest 30", "Occlusion", FIRST_WRAP),
    ],
    "Tempo and test": [
        Line("band pull-apart", "1x15 no load", "Warm-up"),
        Line("overhead press", "3x1 92% rest 180-240", "Maximum"),
        Line("front squat", "3x5 40kg rest 90-120", "Tempo"),
        Line("hex bar deadlift", "2x2+2+2 75% rest 150-180", "Cluster"),
    ],
}
"""Every method. Invented."""


@pytest.fixture
def squad(data: str) -> Month:
    return month_in(data)


def test_a_month_of_every_method_by_keyboard_alone(
    squad: Month, server: ServerProcess, laptop: Handset, phone: Handset
) -> None:
    page = laptop.switch_on()
    keys = Keyboard(page)
    log_in(keys, server)
    write_a_week(keys)
    mend_what_nobody_could_lift(keys)
    make_it_a_month(keys)
    send_to_all(keys)

    pocket = phone.switch_on()
    hands.pair(pocket, server.url, squad.secret)
    with at_the_desk(server):
        for hand in squad.hands:
            hand.syncs()
    see_it_with_all(keys)

    hands.begin(pocket)
    hands.record_as_planned(pocket)
    first = squad.hands[0]
    with at_the_desk(server):
        for hand in squad.hands[:5]:
            hand.does(spare=3)
    read_what_was_done(keys, first.name)
    accept_next_loads(keys)

    write_the_next_revision(keys)
    send_to_all(keys)
    go_on_with_the_old_one(pocket, server)
    with at_the_desk(server):
        assert [one.revision for one in sets_of(squad.runa)] == [1, 1]
        accepted, others = first.squat_kg("Week 2"), squad.hands[1].squat_kg("Week 2")
    assert accepted > others, "a load accepted for one athlete outlasts the next sending"


def sets_of(athlete_id: str) -> list[Entry]:
    return ledger.entries_of(athlete_id, kinds=("set.done",))


def log_in(keys: Keyboard, server: ServerProcess) -> None:
    keys.page.goto(f"{server.url}/desk")
    expect(keys.page.get_by_label("Email")).to_be_visible()
    keys.fill("Email", EMAIL)
    keys.fill("Password", PASSWORD)
    keys.press("Enter")
    expect(keys.page.get_by_role("heading", name="Squad")).to_be_visible()


def write_a_week(keys: Keyboard) -> None:
    page = keys.page
    keys.do("^Blocks$")
    expect(page.get_by_role("heading", name="Blocks")).to_be_visible()
    keys.fill("New block", "Cellar month")
    keys.press("Enter")
    expect(page.get_by_role("heading", name="Cellar month")).to_be_visible()
    keys.to("^Week 1")
    for name, lines in WEEK.items():
        keys.press("ArrowRight", "ArrowRight", "ArrowRight", "Enter")
        keys.fill("^Session$", name)
        keys.to("^First exercise$")
        for line in lines:
            write(keys, line)
        keys.to("day: ", back=True)


def write(keys: Keyboard, line: Line) -> None:
    """From the field of the next exercise back to it."""
    keys.write(line.exercise)
    keys.press("Enter")
    keys.arrive("Add sets")
    if line.method:
        keys.to("^Method$", back=True)
        keys.page.keyboard.type(line.method)
        keys.to("^Add sets$")
    keys.write(line.sets)
    keys.press("Enter")
    if line.more:
        keys.do("^rest ")
    for label, value in line.more:
        keys.fill(f"^{label}", value)
    if line.more:
        keys.to("^Add sets$", back=True)
    keys.press("Enter")
    keys.arrive("Next exercise")


def mend_what_nobody_could_lift(keys: Keyboard) -> None:
    """The squat was meant to be 85 kg."""
    found = keys.page.get_by_role("button", name=re.compile("^1 stop"))
    expect(found).to_be_visible()
    keys.press("F8")
    wrong = "4 sets of 5 with 110 kg"
    expect(keys.page.get_by_role("group", name=wrong)).to_contain_text("110.5 kg for 5")
    keys.fill(f"^Kilograms, {wrong}", "85", back=True)
    expect(found).to_be_hidden()


def make_it_a_month(keys: Keyboard) -> None:
    """The empty second week goes; the first goes on for four."""
    weeks = keys.page.get_by_role("table", name="Weeks and their sessions").get_by_role("row")
    keys.to("Monday: ", back=True)
    keys.press("ArrowDown", "ArrowLeft", "ArrowLeft", "Enter")
    keys.do("^Remove the week$")
    expect(weeks).to_have_count(1)
    keys.do("^Unfold$", back=True)
    keys.arrive("Weeks in all")
    keys.write("4")
    expect(keys.page.get_by_role("button", name="Put it in")).to_be_enabled()
    expect(keys.page.get_by_role("columnheader", name="Week 4")).to_be_visible()
    keys.press("Control+Enter")
    expect(weeks).to_have_count(4)


def send_to_all(keys: Keyboard) -> None:
    page = keys.page
    keys.press("Control+s")
    keys.do("^Send …$", back=True)
    expect(page.get_by_role("heading", name="Send")).to_be_visible()
    keys.to("^Everyone$")
    keys.press("Space")
    expect(page.get_by_text(re.compile("^ready: 12 load sheets"))).to_have_count(
        30, timeout=120_000
    )
    keys.do("^Send to 30 athletes$")
    expect(page.get_by_text("Sent to 30 athletes.")).to_be_visible(timeout=120_000)


def see_it_with_all(keys: Keyboard) -> None:
    keys.do("^Squad$", back=True)
    lines = keys.page.get_by_role("table", name=re.compile("^Athletes")).get_by_role("row")
    expect(lines.filter(has_text=re.compile("delivered|opened"))).to_have_count(30)


def read_what_was_done(keys: Keyboard, name: str) -> None:
    keys.do("^Blocks$", back=True)
    keys.do("^Squad$", back=True)
    keys.do(f"^{name}$")
    expect(keys.page.get_by_role("heading", name=name)).to_be_visible()


def accept_next_loads(keys: Keyboard) -> None:
    keys.do("^Next loads$")
    expect(keys.page.get_by_role("checkbox", name=re.compile("^Back squat"))).to_be_visible()
    keys.do("^Accept these .* and send$")
    expect(keys.page.get_by_text(re.compile("^Sent as revision 2:"))).to_be_visible()


def write_the_next_revision(keys: Keyboard) -> None:
    """The last week is to be lighter."""
    keys.do("^Blocks$", back=True)
    keys.do("^Cellar month$")
    keys.to("Monday: ")
    keys.press("ArrowDown", "ArrowDown", "ArrowDown", "Enter")
    keys.fill("^Kilograms, 4 sets of 5 with 85 kg", "70")
    expect(keys.page.get_by_role("group", name="4 sets of 5 with 70 kg")).to_be_visible()


def go_on_with_the_old_one(pocket: Page, server: ServerProcess) -> None:
    """What was sent meanwhile is for later; the session ends as it began."""
    hands.send_now(pocket, server.url)
    pocket.goto(f"{server.url}/set")
    expect(pocket.get_by_role("heading", name=re.compile("Back squat"))).to_be_visible()
    hands.record_as_planned(pocket)
    hands.send_now(pocket, server.url)
