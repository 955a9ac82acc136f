"""One session with every method, done without a network: what arrives is what was tapped."""

import re
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands, wraps
from tests.browser.chromium import PHONE, Handset, handset
from tests.browser.conftest import Squad
from tests.browser.looks import Measuring
from tests.browser.test_cellar import stored
from tests.fixtures import fixture
from tests.server_process import ServerProcess

from undercroft.services import results
from undercroft.store import database

pytestmark = pytest.mark.browser


def exercises() -> list[dict[str, Any]]:
    """All of the fixture's; with a wrap on as much as somebody may do for the first time."""
    sessions = fixture("blocks", "every-method")["weeks"][0]["sessions"]
    found = [one for session in sessions for one in session["exercises"]]
    return [changed(one) for one in found]


def changed(one: dict[str, Any]) -> dict[str, Any]:
    if one["method"] == "occlusion":
        return wraps.curls("c")
    if one["key"] != "w-c":
        return one
    sets = [{**each, "reps": 2} for each in one["sets"]]
    return {**one, "sets": sets, "details": {**one["details"], "per_rep": True}}


@pytest.fixture
def every_method(server: ServerProcess, squad: Squad) -> None:
    """A session with each of them is sent to an athlete who was screened."""
    session = {"key": "all", "name": "Every method", "day": 1, "exercises": exercises()}
    week = {"key": "w1", "name": "Week 1", "sessions": [session]}
    wraps.ask(server, squad)
    wraps.answer(server, squad)
    wraps.sign_and_send(server, squad, {"key": "every", "name": "Every method", "weeks": [week]})


@dataclass(frozen=True)
class Thumb:
    """Taps on the Set screen of one phone."""

    page: Page
    url: str

    def find(self, name: str) -> None:
        """Have this exercise next."""
        self.page.goto(f"{self.url}/sets")
        title = self.page.get_by_role("heading", name=re.compile(name))
        here = self.page.locator("section").filter(has=title)
        expect(here).to_be_visible()
        chosen = here.get_by_role("button", name="Do this next")
        if chosen.count():
            chosen.click()
        else:
            self.page.goto(f"{self.url}/set")
        expect(self.page.get_by_role("heading", name=re.compile(name))).to_be_visible()

    def choose(self, name: str) -> None:
        """Have this exercise next, past its warm-up."""
        self.find(name)
        ramp = self.page.get_by_role("button", name="Skip warm-up")
        expect(ramp.or_(self.page.get_by_role("button", name="Skip this set"))).to_be_visible()
        if ramp.is_visible():
            ramp.click()
        expect(self.page.get_by_role("button", name="Skip this set")).to_be_visible()

    def tap(self, *names: str) -> None:
        """One tap on each, by how its name begins."""
        for name in names:
            self.page.get_by_role("button", name=re.compile(f"^{name}")).first.click()

    def record(self, *names: str) -> None:
        """The same where each tap makes an entry."""
        for name in names:
            hands.record(self.page, re.compile(f"^{name}"))

    def wait(self, seconds: int) -> None:
        self.page.clock.fast_forward(seconds * 1000)

    def reload_amid(self, clock: str) -> None:
        """The page is loaded again while a clock runs, which then has moved by that time alone."""
        timer = self.page.get_by_role("timer", name=clock)
        before, at = seconds_in(timer.inner_text()), time.monotonic()
        self.page.reload()
        expect(timer).to_be_visible()
        moved = abs(seconds_in(timer.inner_text()) - before)
        assert moved <= time.monotonic() - at + 1, (clock, moved)

    def shows(self, text: str) -> None:
        expect(self.page.get_by_text(text).first).to_be_visible(timeout=10_000)


def seconds_in(clock: str) -> int:
    """ "1:15" and "75" alike, whatever stands below it."""
    minutes, _, seconds = clock.split()[0].rpartition(":")
    return 60 * int(minutes or 0) + int(seconds)


def test_what_was_tapped_without_a_network_is_what_arrives(
    every_method: None, server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    hands.pair(phone.switch_on(), server.url, squad.secret)
    phone.switch_off()
    server.stop()
    page = phone.switch_on()
    page.clock.install()
    page.goto(server.url)
    hands.begin(page)
    thumb = Thumb(page, server.url)
    tap_everything(thumb)
    hands.finish(page)

    server.start()
    hands.send_now(page, server.url)
    entries = stored(server, squad)
    arrived = {
        (e.set, e.body.get("side")): told(e.body)
        for e in entries
        if e.kind in ("set.done", "set.skipped") and not is_corrected(e.id, entries)
    }
    assert {key: arrived[key] for key in TAPPED} == TAPPED
    assert 12 <= arrived["w-d-2", None]["seconds"] <= 60, "carried by the stopwatch"
    (test,) = [e for e in entries if e.kind == "max.tested"]
    assert (test.body["lift"], test.session) == ("overhead-press", "all")
    assert test.body["kg"] == max(kg for _, kg in loads_of(entries, "s-b", made=True))
    database.open_database(server.database)
    database.connect()
    (session,) = [s for s in results.results(squad.athlete_id).sessions if s.session == "all"]
    database.close_all()
    assert not any(one.done and one.done.two_answers for e in session.exercises for one in e.sets)


def is_corrected(entry_id: str, entries: list[Any]) -> bool:
    return any(other.replaces == entry_id for other in entries)


def told(body: Any) -> dict[str, Any]:
    """What a set says beside its load, which is the server's own."""
    return {
        key: value
        for key, value in body.items()
        if key not in ("load_kg", "side") and value is not None
    }


def loads_of(entries: list[Any], exercise: str, made: bool) -> list[tuple[str, float]]:
    done = [e for e in entries if e.kind == "set.done" and str(e.set).startswith(exercise)]
    return [(e.set, e.body["load_kg"]) for e in done if bool(e.body["reps"]) is made]


TAPPED: dict[tuple[str, str | None], dict[str, Any]] = {
    ("m-a-1", None): {"reps": 5, "rir": 3},
    ("m-a-2", None): {"reps": 3, "rir": 3},
    ("m-b-1", None): {"reps": 3, "rir": 1},
    ("m-c-1", "left"): {"reps": 6},
    ("m-c-1", "right"): {"reps": 5},
    ("m-d-1", None): {"seconds": 40},
    ("m-d-2", None): {"why": "no time"},
    ("w-a-1", None): {"reps": 3, "quality": 4},
    ("w-a-2", None): {"reps": 3, "velocities_m_s": [0.65, 0.65, 0.65]},
    ("w-a-3", None): {"reps": 3, "velocities_m_s": [0.55, 0.55, 0.55]},
    ("w-a-5", None): {"why": "more than 10 % slower than the best set"},
    ("w-b-1", None): {"reps": 10},
    ("w-c-1", None): {"reps": 2, "seconds": 20},
    ("w-d-1", None): {"distance_m": 25},
    ("f-a-1", None): {"reps": 6, "blocks": [2, 2, 2]},
    ("f-a-2", None): {"reps": 3, "blocks": [2, 1]},
    ("f-b-1", None): {"reps": 5},
    ("c.1", "left"): {"reps": 15, "tightness": 5},
    ("c.2", "left"): {"reps": 14, "tightness": 5},
    ("c.1", "right"): {"reps": 15, "tightness": 5},
    ("c.2", "right"): {"reps": 15, "tightness": 5},
    ("s-a-1", None): {"reps": 15},
    ("s-b-1", None): {"reps": 1},
    ("s-b-2", None): {"reps": 0},
    ("s-b-3", None): {"why": "the test ended with the attempt before"},
    ("s-c-1", None): {"reps": 5, "rir": 2},
    ("s-d-1", None): {"reps": 8},
}
"""What the taps below must have left behind, by set and side."""


def tap_everything(thumb: Thumb) -> None:
    straight(thumb)
    thumb.choose("^Bench press$")
    thumb.record("Done")
    one_sided(thumb)
    held(thumb)
    fast(thumb)
    thumb.choose("oscillating bar")
    thumb.record("Done")
    timed(thumb)
    in_blocks(thumb)
    to_a_beat(thumb)
    thumb.choose("pull-apart")
    thumb.record("Done")
    attempts(thumb)
    thumb.choose("Pull-up")
    thumb.shows("A1 then A2, round 1 of 2: now A1")
    thumb.record("Done")
    thumb.wait(12)
    thumb.page.reload()
    thumb.shows("A1 then A2, round 1 of 2: now A2")
    thumb.record("Done")
    thumb.reload_amid("Rest")
    with_a_wrap_on(thumb)
    thumb.page.goto(f"{thumb.url}/sets")


TAPS = "window.taps = 0; addEventListener('click', () => (window.taps += 1), true)"


def straight(thumb: Thumb) -> None:
    """A reload in the warm-up. As planned is one tap, other reps are two, a correction three."""
    thumb.find("Back squat")
    thumb.tap("Warm-up done")
    thumb.shows("Warm-up 2 of")
    thumb.page.reload()
    thumb.shows("Warm-up 2 of")
    thumb.tap("Skip warm-up")
    thumb.page.evaluate(TAPS)
    thumb.record("Done")
    assert thumb.page.evaluate("window.taps") == 1
    thumb.tap("Reps: less")
    thumb.record("Done")
    assert thumb.page.evaluate("window.taps") == 3
    thumb.tap("Correct", "Reps: less")
    thumb.record("Save")
    assert thumb.page.evaluate("window.taps") == 6
    thumb.wait(75)
    thumb.reload_amid("Rest")


def timed(thumb: Thumb) -> None:
    thumb.choose("carry")
    thumb.tap("Metres: less")
    thumb.record("Done")
    thumb.tap("Start the stopwatch")
    thumb.wait(12)
    thumb.reload_amid("Stopwatch")
    thumb.record("Stop: 30 m")


def to_a_beat(thumb: Thumb) -> None:
    """Six seconds a rep; the beat is silent until it is asked for, and goes on after a reload."""
    thumb.choose("Front squat")
    thumb.shows("4 s down, pause 1 s, 1 s up, no pause")
    thumb.tap("Beat the tempo")
    thumb.wait(13)
    thumb.shows("rep 3; tap to stop the beat")
    thumb.page.reload()
    beat = thumb.page.get_by_role("button", name=re.compile("rep [3-9]; tap to stop the beat"))
    beat.click()
    thumb.shows("Beat the tempo")
    thumb.record("Done")


def with_a_wrap_on(thumb: Thumb) -> None:
    """One arm after the other, with a reload while it is worn, in its rest and in the break."""
    page = thumb.page
    thumb.find("curl")
    wraps.answer_day(page)
    wraps.wrap_on(page)
    thumb.wait(21)
    thumb.reload_amid("Time with the wrap on")
    wraps.record(page, "No")
    wraps.record_set(page)
    thumb.wait(15)
    thumb.reload_amid("Rest")
    thumb.wait(15)
    wraps.tap(page, "Reps: less")
    wraps.record_set(page)
    wraps.record(page, "It is off")
    thumb.reload_amid("Break")
    thumb.wait(181)
    wraps.wrap_on(page)
    thumb.wait(21)
    wraps.record(page, "No")
    for _ in range(2):
        wraps.record_set(page)
        thumb.wait(31)
    wraps.record(page, "It is off")


def one_sided(thumb: Thumb) -> None:
    thumb.choose("landmine")
    thumb.shows("Left side, left knee down")
    thumb.record("Done, left")
    thumb.shows("Right side now, right knee down")
    thumb.record("Done, right")
    thumb.tap("Correct", "Reps: less")
    thumb.record("Save, right")


def held(thumb: Thumb) -> None:
    """The page is loaded again in the middle of a hold's clock."""
    thumb.choose("Plank")
    thumb.tap("Start the hold: 40 s")
    thumb.wait(12)
    thumb.reload_amid("Hold")
    thumb.wait(29)
    expect(thumb.page.get_by_role("button", name="Set 2 of 2. Show all sets")).to_be_visible()
    thumb.tap("Skip this set")
    thumb.record("No time")
    thumb.choose("pulldown")
    thumb.tap("Start rep 1 of 2: 20 s")
    thumb.wait(5)
    thumb.reload_amid("Hold")
    thumb.wait(16)
    thumb.tap("Start rep 2 of 2: 20 s")
    thumb.wait(21)
    expect(thumb.page.get_by_role("button", name="Set 2 of 2. Show all sets")).to_be_visible()


def fast(thumb: Thumb) -> None:
    thumb.choose("Hex bar deadlift")
    thumb.record("Quality 4 of 5")
    thumb.tap("Velocity instead", "Faster by 0.05", "Rep 2", "Rep 3")
    thumb.record("Done")
    thumb.page.reload()
    thumb.tap("Slower by 0.05", "Slower by 0.05", "Rep 2", "Rep 3")
    thumb.record("Done")
    thumb.shows("Your last set averaged 0.55 m/s, your best 0.65. The limit is 10 % slower.")
    hands.record_many(thumb.page, "End: skip 2 sets", entries=2)
    expect(thumb.page.get_by_role("heading", name="Hex bar deadlift")).not_to_be_visible()


def in_blocks(thumb: Thumb) -> None:
    """The page is loaded again between two blocks."""
    thumb.choose("^Deadlift")
    thumb.tap("Done, block 1 of 3: 2 reps")
    thumb.wait(5)
    thumb.reload_amid("Block rest")
    thumb.tap("Done, block 2 of 3: 2 reps")
    thumb.record("Done, block 3 of 3: 2 reps")
    thumb.tap("Done, block 1 of 3: 2 reps", "Block 2 of 3: less", "Done, block 2 of 3: 1 rep")
    thumb.record("End the set here: 2 [+] 1")


def attempts(thumb: Thumb) -> None:
    thumb.choose("Overhead press")
    thumb.shows("Attempt 1 of 3")
    thumb.record("Made")
    thumb.record("Missed")
    thumb.record("End the test")


SCREENS: dict[str, tuple[str, tuple[str, ...]]] = {
    "straight": ("Back squat", ()),
    "straight at rest": ("Back squat", ("Done",)),
    "correcting": ("Back squat", ("Correct",)),
    "skipping": ("^Bench press$", ("Skip this set",)),
    "one-sided": ("landmine", ()),
    "other side": ("landmine", ("Done, left",)),
    "hold": ("Plank", ()),
    "holding": ("Plank", ("Start the hold",)),
    "speed": ("Hex bar deadlift", ()),
    "speed slower": ("Hex bar deadlift", ("Quality 2", "Quality 2")),
    "velocity": ("Hex bar deadlift", ("Go on", "Velocity instead")),
    "unstable bar": ("oscillating bar", ()),
    "held reps": ("pulldown", ("Start rep 1",)),
    "timed": ("carry", ()),
    "stopwatch": ("carry", ("Start the stopwatch",)),
    "cluster": ("^Deadlift", ()),
    "cluster resting": ("^Deadlift", ("Done, block 1",)),
    "tempo": ("Front squat", ()),
    "beat": ("Front squat", ("Beat the tempo",)),
    "warm-up": ("pull-apart", ()),
    "test": ("Overhead press", ()),
    "next attempt": ("Overhead press", ("Made",)),
    "round": ("Pull-up", ()),
}
"""By exercise, and by the taps after which there is another thing to look at."""


@pytest.fixture
def held_phone(playwright: Playwright, tmp_path: Path) -> Iterator[Handset]:
    with handset(playwright, tmp_path / "looked-at", viewport=PHONE) as one:
        yield one


def test_every_set_screen_is_clean_and_large_enough_for_a_thumb(
    every_method: None, server: ServerProcess, squad: Squad, held_phone: Handset
) -> None:
    page = held_phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    thumb = Thumb(page, server.url)
    look_at = Measuring(page, "set")
    before = ""
    for name, (title, taps) in SCREENS.items():
        if not taps or title != before:
            thumb.choose(title)
        thumb.tap(*taps)
        before = title
        look_at.measure(name, in_set=True)
    look_at.finds_nothing()
