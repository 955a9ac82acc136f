"""Screening at the desk: asked for, answered, read, signed; what a coach cannot open stays shut."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Playwright, expect
from tests.browser import hands
from tests.browser.answering import Answering, paired
from tests.browser.chromium import LAPTOP, PHONE, Handset, handset
from tests.browser.conftest import COACH, EMAIL, PASSWORD, Squad
from tests.browser.looks import look
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

SIGN = "I have read it"
TO_READ = re.compile("^read ?:|^I have read the other")


@pytest.fixture
def answering(playwright: Playwright, server: ServerProcess, squad: Squad) -> Answering:
    return paired(playwright, server.url, squad.secret)


@pytest.fixture
def page(laptop: Handset, server: ServerProcess, squad: Squad) -> Page:
    """The coach at Runa's screening, not asked for yet."""
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    return shown(page, server, squad)


def shown(page: Page, server: ServerProcess, squad: Squad) -> Page:
    page.goto(f"{server.url}/desk/athletes/{squad.athlete_id}/screening")
    expect(page.get_by_role("heading", level=1, name="Runa Tealdi")).to_be_visible()
    return page


def ask(page: Page) -> None:
    page.get_by_role("button", name="Ask for it").click()
    expect(page.get_by_text("not answered yet")).to_be_visible()


def tick_all(page: Page) -> None:
    """By keyboard, as somebody without a mouse does."""
    expect(page.get_by_role("button", name=SIGN)).to_be_visible()
    for box in page.get_by_role("checkbox", name=TO_READ).all():
        box.focus()
        page.keyboard.press("Space")
        expect(box).to_be_checked()


def test_a_coach_asks_reads_signs_and_sees_it_open(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers()
    shown(page, server, squad)
    sign = page.get_by_role("button", name=SIGN)
    expect(sign).to_be_disabled()
    tick_all(page)
    sign.click()
    expect(page.get_by_text("It is open until")).to_be_visible()
    expect(page.get_by_text(f"Signed by {COACH}").first).to_be_visible()
    expect(sign).to_be_hidden()


def test_a_counted_caution_is_signed_only_with_a_note(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers(smoking="yes")
    shown(page, server, squad)
    tick_all(page)
    sign = page.get_by_role("button", name=SIGN)
    expect(sign).to_be_disabled()
    expect(page.get_by_text("Still missing: a note")).to_be_visible()
    page.get_by_label("Note: how you weigh").fill("Two a week; talked about it.")
    sign.click()
    expect(page.get_by_text("It is open until")).to_be_visible()


def test_a_hard_stop_stays_locked_whatever_the_coach_signs(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers(clot="yes")
    shown(page, server, squad)
    tick_all(page)
    page.get_by_role("button", name=SIGN).click()
    expect(page.get_by_text(f"Signed by {COACH}").first).to_be_visible()
    expect(page.get_by_text("It is closed.")).to_be_visible()
    expect(page.get_by_text("You alone cannot open")).to_be_visible()


def test_the_coachs_own_name_is_refused_at_its_field(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers(clot="yes")
    shown(page, server, squad)
    page.get_by_text("Record a clearance").click()
    page.get_by_label("Clinician", exact=True).fill(COACH)
    page.get_by_label("Profession").select_option("doctor")
    page.get_by_label("Licence").fill("reg. 4711")
    page.get_by_label("Given on").fill("2026-02-02")
    page.get_by_label("Holds until").fill("2026-12-31")
    page.get_by_role("checkbox", name=re.compile("^a blood clot")).check()
    page.get_by_role("button", name="Record the clearance").click()
    field = page.get_by_label("Clinician", exact=True)
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(field).to_be_focused()
    expect(field).to_have_value(COACH)
    expect(page.get_by_text("name the licensed clinician").first).to_be_visible()


def test_withdrawing_the_signature_closes_the_work(
    page: Page, server: ServerProcess, squad: Squad, answering: Answering
) -> None:
    ask(page)
    answering.answers()
    shown(page, server, squad)
    tick_all(page)
    page.get_by_role("button", name=SIGN).click()
    expect(page.get_by_text("It is open until")).to_be_visible()
    told: list[str] = []
    page.once("dialog", lambda dialog: (told.append(dialog.message), dialog.accept()))
    page.get_by_role("button", name=re.compile("^Withdraw")).click()
    expect(page.get_by_text("It is closed.")).to_be_visible()
    assert "closed until it is signed" in told[0]


def curls() -> dict[str, Any]:
    """A week with curls, still without a wrap's tightness or a pattern."""
    one = {"key": "s1", "reps": 5, "load": {"basis": "kg", "kg": 6}}
    exercise = {
        "key": "curls",
        "exercise": "dumbbell-curl",
        "method": "occlusion",
        "details": {"limb": "upper-arm", "restriction": "wrap"},
        "warm_up": [],
        "sets": [one],
    }
    session = {"key": "mon", "name": "Arms", "day": 1, "exercises": [exercise]}
    week = {"key": "w1", "name": "Week 1", "sessions": [session]}
    return {"key": "arms", "name": "Arms", "weeks": [week]}


def opened(page: Page, server: ServerProcess, squad: Squad, answering: Answering) -> None:
    """Runa's occlusion work is open, and the maximum of her curls is known."""
    desk = f"{server.url}/api/v1/desk/athletes/{squad.athlete_id}"
    known = page.request.get(desk).json()
    maximum = {"lift": "dumbbell-curl", "kg": 30, "kind": "tested", "on": "2026-01-20"}
    pairs = [{"mass_kg": kg, "count": 2} for kg in (4, 6, 8)]
    document = {**known["document"], "maxima": [maximum]}
    page.request.post(f"{desk}/document", data={"document": document})
    page.request.post(f"{desk}/kit", data={"document": {**known["kit"], "dumbbells": pairs}})
    page.request.post(f"{desk}/screening/ask", data={})
    answering.answers()
    of = page.request.get(f"{desk}/screening").json()["latest"]["id"]
    assert page.request.post(f"{desk}/screening/sign", data={"of": of}).ok


def write(page: Page, server: ServerProcess) -> str:
    """Open the curls in the writer and fill them by the first exposure; the block's id."""
    answer = page.request.post(f"{server.url}/api/v1/desk/blocks", data={"document": curls()})
    block = str(answer.json()["id"])
    page.goto(f"{server.url}/desk/blocks/{block}")
    page.get_by_label("Sets by a pattern").select_option("first exposure")
    expect(page.get_by_text("tightness 5 of 10, one side after the other")).to_be_visible()
    return block


def train(answering: Answering) -> None:
    """Two sets with a wrap that is forgotten on the arm."""
    where = {"session": "mon", "revision": 2}
    arm = {"limb": "left-upper-arm"}
    keys = answering.keys_of("mon")
    writes = answering.writes
    answering.syncs(
        writes.entry("session.started", {}, **where),
        writes.entry("wrap.on", arm, at="2026-11-23T17:00:00Z", **where),
        *(
            writes.entry("set.done", {"load_kg": 6, "reps": reps, "side": side, "tightness": 5},
                         set=key, **where)
            for key, sides in zip(keys, ((15, 15), (14, 12)), strict=True)
            for side, reps in zip(("left", "right"), sides, strict=True)
        ),
        writes.entry("wrap.off", {**arm, "seconds": 960}, at="2026-11-23T17:16:00Z", **where),
        writes.entry("session.finished", {"rpe": 4, "minutes": 20}, **where),
    )  # fmt: skip


@pytest.fixture(params=["dark", "light"])
def scheme(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture(params=[LAPTOP, PHONE], ids=["wide", "narrow"])
def desk(
    playwright: Playwright, tmp_path: Path, scheme: str, request: pytest.FixtureRequest
) -> Iterator[Handset]:
    place = tmp_path / "desk"
    with handset(playwright, place, viewport=request.param, dark=scheme == "dark") as one:
        yield one


def test_how_it_looks(
    desk: Handset, server: ServerProcess, squad: Squad, answering: Answering, scheme: str
) -> None:
    page = desk.switch_on()
    wide = "wide" if desk.viewport is LAPTOP else "narrow"

    def seen(name: str) -> None:
        look(page, f"desk-screening-{name}-{wide}-{scheme}")

    hands.log_in(page, server.url, EMAIL, PASSWORD)
    shown(page, server, squad)
    expect(page.get_by_role("button", name="Ask for it")).to_be_visible()
    seen("ask")
    ask(page)
    seen("waiting")
    answering.answers(clot="not-sure", diabetes="yes", injury="yes", smoking="yes", systolic=150)
    answering.syncs(
        answering.writes.entry("after.check", {"hours": 24, "signs": ["dark-urine", "sore"]})
    )
    shown(page, server, squad)
    expect(page.get_by_role("alert")).to_be_visible()
    for form in ("Record a clearance", "Record a measured pressure"):
        page.get_by_text(form).click()
    page.get_by_role("checkbox", name=re.compile("an injury that is not over")).check()
    seen("answered")
    page.get_by_role("button", name="Record the clearance").click()
    expect(page.get_by_text("Not recorded.")).to_be_visible()
    seen("refused")
    tick_all(page)
    page.get_by_label("Note: how you weigh").fill("Two a week; talked about it.")
    page.get_by_role("button", name=SIGN).click()
    expect(page.get_by_text(f"Signed by {COACH}").first).to_be_visible()
    seen("signed")


def test_occlusion_work_is_written_by_a_pattern_sent_and_read_again(
    desk: Handset, server: ServerProcess, squad: Squad, answering: Answering, scheme: str
) -> None:
    page = desk.switch_on()
    wide = "wide" if desk.viewport is LAPTOP else "narrow"
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    opened(page, server, squad, answering)
    block = write(page, server)
    page.get_by_label(re.compile("^Loads for")).select_option(squad.athlete_id)
    expect(page.get_by_text("Worn:")).to_be_visible()
    look(page, f"desk-occlusion-writer-{wide}-{scheme}")
    expect(page.get_by_text(re.compile("^On the server,"))).to_be_visible()
    path = f"{server.url}/api/v1/desk/blocks/{block}/send"
    sent = page.request.post(path, data={"athletes": [squad.athlete_id]}).json()
    assert sent["refused"] == [], sent
    train(answering)
    page.goto(f"{server.url}/desk/athletes/{squad.athlete_id}")
    expect(page.get_by_text("16:00 min with the wrap on")).to_be_visible()
    expect(page.get_by_text(re.compile("6 kg × 12")).first).to_be_visible()
    expect(page.get_by_text("Next time")).to_be_visible()
    look(page, f"desk-occlusion-results-{wide}-{scheme}")
    page.goto(f"{server.url}/desk")
    expect(page.get_by_text("Wrap beyond its limit: left upper arm, 16 min")).to_be_visible()
    look(page, f"desk-occlusion-squad-{wide}-{scheme}")
