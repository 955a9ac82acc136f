"""An athlete whose coach plans occlusion work, and what is tapped with a wrap on. All invented."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from typing import Any

from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.conftest import COACH, Squad
from tests.domain.occlusion.people import HEALTHY
from tests.fixtures import athlete_data, kit_data
from tests.server_process import ServerProcess

from undercroft.domain.ledger import Entry
from undercroft.domain.occlusion import Aim
from undercroft.services import athlete_page, blocks, devices, ledger, screening, sending, sync
from undercroft.services.clock import day_of, now_ms
from undercroft.services.tokens import new_id
from undercroft.store import database
from undercroft.store.feed import athlete_lock, last_position
from undercroft.store.migrate import epoch

LEFT, RIGHT = "left-upper-arm", "right-upper-arm"


def curls(key: str) -> dict[str, Any]:
    """A first exposure: twice 15 at a fifth of the maximum, one arm after the other."""
    load = {"basis": "kg", "kg": 6}
    return {
        "key": key,
        "exercise": "dumbbell-curl",
        "method": "occlusion",
        "rest": {"from_s": 30, "to_s": 30},
        "details": {
            "limb": "upper-arm",
            "restriction": "wrap",
            "both_at_once": False,
            "tightness": 5,
        },
        "warm_up": [],
        "sets": [{"key": f"{key}.{n}", "reps": 15, "load": load} for n in (1, 2)],
    }


def session(key: str, name: str, day: int) -> dict[str, Any]:
    return {"key": key, "name": name, "day": day, "exercises": [curls(key[0])]}


BLOCK = {
    "key": "arms",
    "name": "Arms",
    "weeks": [
        {
            "key": "w1",
            "name": "Week 1",
            "sessions": [session("mon", "First wrap", 1), session("thu", "Second wrap", 5)],
        }
    ],
}


@contextmanager
def at_the_desk(server: ServerProcess) -> Iterator[int]:
    """The services that the API calls, on the file of a server that may be running; the time."""
    database.open_database(server.database)
    database.connect()
    try:
        yield now_ms()
    finally:
        database.close_all()


def ask(server: ServerProcess, squad: Squad) -> None:
    """The coach asks for a screening; the kit has dumbbells, and a maximum of the curl is known."""
    with at_the_desk(server) as now:
        day = (day_of(now) - timedelta(days=10)).isoformat()
        known = {"lift": "dumbbell-curl", "kg": 30, "kind": "tested", "on": day}
        document = athlete_data()
        athlete_page.save_document(
            squad.athlete_id, {**document, "maxima": [*document["maxima"], known]}
        )
        pairs = [{"mass_kg": mass, "count": 2} for mass in (4, 6, 8, 20)]
        athlete_page.save_kit(squad.athlete_id, {**kit_data(), "dumbbells": pairs})
        screening.ask(squad.athlete_id, now)


def answer(server: ServerProcess, squad: Squad) -> None:
    """A screening in good health, as another phone of the athlete sends it."""
    with at_the_desk(server) as now:
        on = (day_of(now) - timedelta(days=10)).isoformat()
        entry = {
            "id": new_id(now),
            "v": 1,
            "n": 1,
            "kind": "screening.answered",
            "replaces": None,
            "at": f"{day_of(now)}T00:00:01.000Z",
            "revision": None,
            "session": None,
            "set": None,
            "body": {"answers": {**HEALTHY, "pressure-on": on}},
        }
        with athlete_lock(squad.athlete_id):
            phone, _ = devices.pair(squad.athlete_id, "an earlier phone", now)
        asked = sync.Asked(phone, epoch(), last_position(squad.athlete_id), [entry])
        sync.exchange(asked_by(squad, phone), asked, now, 1_000)


def asked_by(squad: Squad, phone: str) -> Any:
    return next(one for one in devices.devices_of(squad.athlete_id) if one.id == phone)


def sign_and_send(server: ServerProcess, squad: Squad, document: Any = BLOCK) -> None:
    """The coach reads the latest screening, signs it, and sends the block."""
    with at_the_desk(server) as now:
        told = ledger.entries_of(squad.athlete_id, kinds=("screening.answered",))
        signed = screening.Signed(told[-1].id, "", Aim.TRAINING)
        screening.sign(squad.athlete_id, signed, screening.Coach(squad.coach_id, COACH), now)
        block = blocks.add(squad.coach_id, document, now).id
        (sent,) = sending.send(squad.coach_id, block, sending.Wanted([squad.athlete_id]), now)
        assert [stop.what for stop in sent.stops] == []


def told(server: ServerProcess, squad: Squad, *kinds: str) -> list[Entry]:
    """What the server holds of these kinds, in the order in which it was taken in."""
    with at_the_desk(server):
        return ledger.entries_of(squad.athlete_id, kinds=kinds)


def tap(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).click()


def record(page: Page, name: str | re.Pattern[str]) -> None:
    """One tap, and the screen has confirmed that it is stored: only then may time fly."""
    sign = page.locator(".top-sync")
    before = sign.get_attribute("aria-label")
    exact = isinstance(name, str)
    page.get_by_role("button", name=name, exact=exact).click()
    expect(sign).not_to_have_attribute("aria-label", before or "")


def answer_day(page: Page, **other: str) -> None:
    """Each question of the day with its own tap; no, where nothing else is said."""
    questions = page.locator(".day-question")
    expect(questions.first).to_be_visible()
    for place in range(questions.count()):
        tap_in(questions.nth(place), other.get(f"q{place}", "No"))
    record(page, "These are my answers")


def tap_in(part: Any, name: str) -> None:
    part.get_by_role("button", name=name, exact=True).click()


def answer_screening(page: Page, upto: int | None = None) -> None:
    """No to every question, and the figures of somebody in good health."""
    while True:
        step = page.locator(".progress p, h2:has-text('Is this all right?')").first
        expect(step).to_be_visible()
        shown = step.inner_text()
        place = re.match(r"(\d+) of", shown)
        if place is None or (upto is not None and int(place[1]) > upto):
            return
        answer_one(page)
        expect(step).not_to_have_text(shown)


def answer_one(page: Page) -> None:
    date = page.locator("input[type=date]")
    no = page.get_by_role("button", name="No", exact=True)
    right = page.get_by_role("button", name=re.compile("is right$"))
    choice = page.get_by_role("button", name="I would rather not say")
    expect(no.or_(date).or_(right).or_(choice).first).to_be_visible()
    if date.is_visible():
        born = page.get_by_text("When were you born?").is_visible()
        date.fill("1996-05-01" if born else yesterday())
        tap(page, "That is the day")
    elif right.is_visible():
        right.click()
    elif choice.is_visible():
        choice.click()
    else:
        no.click()


def yesterday() -> str:
    return (day_of(now_ms()) - timedelta(days=1)).isoformat()


def wrap_on(page: Page) -> None:
    record(page, "It is on")
    expect(page.get_by_role("timer", name="Time with the wrap on")).to_be_visible()


def record_set(page: Page) -> None:
    record(page, hands.DONE)
