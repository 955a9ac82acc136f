"""What an athlete tells outside of a session reaches the desk, a correction as one."""

import re

import pytest
from playwright.sync_api import expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.ledgers import stored
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser


def test_readiness_mass_message_and_pain_are_told_without_a_session(
    server: ServerProcess, squad: Squad, phone: Handset, laptop: Handset
) -> None:
    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    page.get_by_role("button", name="Tell your coach").click()
    hands.record(page, "4, fresh")
    expect(page.get_by_text("4, fresh: recorded for today.")).to_be_visible()
    hands.record(page, "5, ready for anything")
    expect(page.get_by_text("5, ready for anything: recorded for today.")).to_be_visible()
    mass = page.get_by_label("In kg, as the scale shows it")
    mass.fill("7,4")
    page.get_by_role("button", name="Record it").click()
    expect(page.get_by_text("Write what the scale shows, 20 kg to 400 kg.")).to_be_visible()
    mass.fill("71,4")
    hands.record(page, "Record it")
    expect(page.get_by_text("71.4 kg recorded for today.")).to_be_visible()
    page.get_by_label("To Ottilie Brandt").fill("Can we move Friday?")
    hands.record(page, "Send it")
    expect(page.get_by_text(re.compile("on this phone, goes with"))).to_be_visible()
    page.get_by_role("button", name="knee").click()
    page.get_by_role("button", name="3", exact=True).last.click()
    expect(page.get_by_text("Recorded: knee, 3 of 10.")).to_be_visible()
    hands.send_now(page, server.url)

    told = [one for one in stored(server, squad) if one.kind != "session.opened"]
    first, second, *others = told
    assert (first.kind, second.kind, second.replaces) == ("readiness", "readiness", first.id)
    assert {one.kind: dict(one.body) for one in others} == {
        "body_mass": {"kg": 71.4},
        "message": {"text": "Can we move Friday?"},
        "pain.reported": {"where": "knee", "level": 3},
    }
    desk = laptop.switch_on()
    hands.log_in(desk, server.url, EMAIL, PASSWORD)
    expect(desk.get_by_text("Wrote: Can we move Friday?")).to_be_visible()
    desk.goto(f"{server.url}/desk/athletes/{squad.athlete_id}")
    expect(desk.get_by_role("heading", name="Messages")).to_be_visible()
    page.goto(f"{server.url}/tell")
    expect(page.get_by_text(re.compile("with your coach"))).to_be_visible()
