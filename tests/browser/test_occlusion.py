"""Occlusion work with the server stopped: screening, lock, wear clock, wraps off, and after."""

import re

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands, wraps
from tests.browser.chromium import Handset
from tests.browser.conftest import Squad
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

DAY_MS = 86_400_000


def offline(phone: Handset, server: ServerProcess) -> None:
    assert phone.context is not None
    phone.context.set_offline(True)
    server.stop()


def online(phone: Handset, server: ServerProcess) -> None:
    assert phone.context is not None
    server.start()
    phone.context.set_offline(False)


def opened_work(server: ServerProcess, squad: Squad, phone: Handset) -> Page:
    """A phone that holds an open occlusion exercise, its server stopped, the clock in our hands."""
    wraps.ask(server, squad)
    wraps.answer(server, squad)
    wraps.sign_and_send(server, squad)
    page = phone.switch_on()
    page.clock.install()
    hands.pair(page, server.url, squad.secret)
    offline(phone, server)
    page.goto(server.url)
    return page


def test_a_screening_is_answered_offline_shown_whole_and_recorded_once(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    wraps.ask(server, squad)
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    expect(page.get_by_role("heading", name="Your coach asks for a screening")).to_be_visible()
    phone.switch_off()
    page = phone.switch_on()
    offline(phone, server)
    page.goto(server.url)
    wraps.tap(page, "See what it asks")
    wraps.tap(page, "Begin")
    wraps.answer_screening(page, upto=6)
    phone.kill()

    page = phone.switch_on()
    page.goto(server.url)
    wraps.tap(page, "Carry on")
    expect(page.get_by_text("7 of 51")).to_be_visible()
    wraps.answer_screening(page)
    expect(page.get_by_role("heading", name="No (44)")).to_be_visible()
    page.get_by_role("button", name=re.compile("Do you smoke")).click()
    wraps.tap(page, "Not sure")
    expect(page.get_by_role("heading", name="Yes, or not sure (1)")).to_be_visible()
    wraps.tap(page, "Record for your coach")
    expect(page.get_by_role("heading", name="Answered")).to_be_visible()

    online(phone, server)
    hands.send_now(page, server.url)
    (entry,) = wraps.told(server, squad, "screening.answered")
    given = entry.body["answers"]
    assert len(given) == 51
    assert (given["smoking"], given["clot"], given["systolic"]) == ("not-sure", "no", 120)


def test_a_session_with_a_wrap_on_reaches_the_ledger_as_it_was_tapped(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = opened_work(server, squad, phone)
    hands.begin(page)
    wraps.answer_day(page)
    wraps.tap(page, "How tight it feels: more")
    expect(page.get_by_role("button", name="Loosen it first: at most 5")).to_be_disabled()
    wraps.tap(page, "How tight it feels: less")
    wraps.wrap_on(page)
    page.clock.fast_forward(21_000)
    wraps.record(page, "No")
    page.reload()
    expect(page.get_by_role("timer", name="Time with the wrap on")).to_contain_text("0:2")
    wraps.record_set(page)
    page.clock.fast_forward(60_000)
    wraps.record(page, "6")
    expect(page.get_by_text("6 is too tight, at most 5. Loosen it now")).to_be_visible()
    page.clock.fast_forward(1_000)
    wraps.record(page, "4")
    expect(page.get_by_text("how tight now?")).to_be_hidden()
    wraps.tap(page, "Reps: less")
    wraps.record_set(page)
    expect(page.get_by_role("heading", name="Wrap off now")).to_be_visible()
    wraps.record(page, "It is off")
    expect(page.get_by_role("timer", name="Break")).to_be_visible()
    page.clock.fast_forward(181_000)
    wraps.wrap_on(page)
    page.clock.fast_forward(21_000)
    wraps.record(page, "No")
    for _ in range(2):
        wraps.record_set(page)
        page.clock.fast_forward(40_000)
    wraps.record(page, "It is off")
    hands.finish(page)

    online(phone, server)
    hands.send_now(page, server.url)
    on_off = wraps.told(server, squad, "wrap.on", "wrap.off")
    assert [(e.kind, e.body["limb"]) for e in on_off] == [
        ("wrap.on", wraps.LEFT),
        ("wrap.off", wraps.LEFT),
        ("wrap.on", wraps.RIGHT),
        ("wrap.off", wraps.RIGHT),
    ]
    assert 81 <= on_off[1].body["seconds"] <= 120
    sets = wraps.told(server, squad, "set.done")
    assert [(e.set, e.body["side"], e.body["reps"], e.body["tightness"]) for e in sets] == [
        ("m.1", "left", 15, 5),
        ("m.2", "left", 14, 4),
        ("m.1", "right", 15, 5),
        ("m.2", "right", 15, 5),
    ]
    checks = wraps.told(server, squad, "wrap.check")
    assert [e.body["numb"] for e in checks] == [False] * 4
    assert [e.body.get("tightness") for e in checks] == [None, 6, 4, None]


def test_the_limit_takes_the_screen_until_the_wrap_is_off(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = opened_work(server, squad, phone)
    hands.begin(page)
    wraps.answer_day(page)
    wraps.wrap_on(page)
    page.goto(f"{server.url}/sync")
    page.clock.fast_forward(901_000)
    expect(page.get_by_text("The limit of 15:00 is reached")).to_be_visible()
    page.keyboard.press("Escape")
    page.keyboard.press("Escape")
    page.reload()
    expect(page.get_by_role("heading", name="Wrap off now")).to_be_visible()
    wraps.record(page, "It is off")
    expect(page.get_by_role("timer", name="Break")).to_be_visible()


def test_numb_early_is_off_and_once_more_and_then_not_again_today(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = opened_work(server, squad, phone)
    hands.begin(page)
    wraps.answer_day(page)
    wraps.wrap_on(page)
    page.clock.fast_forward(21_000)
    wraps.record(page, "Yes: off now")
    expect(page.get_by_role("heading", name="Off, and wait")).to_be_visible()
    page.clock.fast_forward(30_000)
    wraps.record(page, "It cleared within the minute")
    page.clock.fast_forward(181_000)
    expect(page.get_by_text("Looser than before.")).to_be_visible()
    wraps.wrap_on(page)
    page.clock.fast_forward(21_000)
    wraps.record(page, "Yes: off now")
    expect(page.get_by_text("A limb went numb today.")).to_be_visible()
    wraps.record(page, "Leave it out today")
    expect(page.get_by_role("button", name="Finish the session")).to_be_visible()


def test_a_stop_sign_says_what_to_do_ends_the_session_and_takes_the_wrap_off(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = opened_work(server, squad, phone)
    hands.begin(page)
    wraps.answer_day(page)
    wraps.wrap_on(page)
    wraps.tap(page, "Something is wrong")
    wraps.tap(page, "Pain or pressure in the chest")
    expect(page.get_by_text("Call the emergency number now.")).to_be_visible()
    wraps.tap(page, "To Today")
    expect(page.get_by_text("Stopped today")).to_be_visible()
    online(phone, server)
    hands.send_now(page, server.url)
    (stopped,) = wraps.told(server, squad, "session.stopped")
    assert stopped.body["signs"] == ["chest-pain"]
    assert [e.kind for e in wraps.told(server, squad, "wrap.on", "wrap.off")] == [
        "wrap.on",
        "wrap.off",
    ]


def test_a_sign_after_a_day_locks_the_next_session_at_once_and_offline(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = opened_work(server, squad, phone)
    hands.begin(page)
    wraps.answer_day(page)
    for _ in range(2):
        wraps.wrap_on(page)
        wraps.record_set(page)
        page.clock.fast_forward(40_000)
        wraps.record(page, "No")
        wraps.record_set(page)
        wraps.record(page, "It is off")
        page.clock.fast_forward(181_000)
    hands.finish(page)
    page.clock.fast_forward(DAY_MS)
    page.goto(server.url)
    wraps.tap(page, "Answer")
    wraps.tap(page, "Dark urine, like tea or cola")
    wraps.tap(page, "Record 1 sign")
    expect(page.get_by_text("Get medical care today")).to_be_visible()
    expect(page.get_by_text("creatine kinase")).to_be_visible()
    page.clock.fast_forward(3 * DAY_MS)
    page.goto(server.url)
    wraps.tap(page, "I have read this")
    wraps.tap(page, "Answer")
    wraps.tap(page, "None of these")
    wraps.tap(page, "To Today")
    hands.begin(page)
    expect(page.get_by_text("After the work: dark urine")).to_be_visible()
    expect(page.get_by_role("button", name="It is on")).to_have_count(0)


def test_an_answer_of_the_day_closes_it_for_that_day(
    server: ServerProcess, squad: Squad, phone: Handset
) -> None:
    page = opened_work(server, squad, phone)
    hands.begin(page)
    wraps.answer_day(page, q5="Yes")
    expect(page.get_by_text("Have you drunk alcohol in the last 24 hours?")).to_be_visible()
    expect(page.get_by_text("What opens it: Another day.")).to_be_visible()
    page.reload()
    expect(page.get_by_text("What opens it: Another day.")).to_be_visible()
