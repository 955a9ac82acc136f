"""A coach shows how an exercise is done, and the athlete sees it where there is no network."""

import time
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import EMAIL, PASSWORD, Squad
from tests.browser.looks import Measuring, look
from tests.filming import clip, photo
from tests.server_process import ServerProcess

pytestmark = pytest.mark.browser

WORDS = "Side view: the bar stays over mid-foot."
FIELD = "A photo (JPEG, PNG, WebP) or a clip (MP4, MOV, WebM)"


@pytest.fixture
def desk(server: ServerProcess, squad: Squad, laptop: Handset) -> Page:
    """The page of the squat that opens Monday's session."""
    page = laptop.switch_on()
    hands.log_in(page, server.url, EMAIL, PASSWORD)
    page.goto(f"{server.url}/desk/exercises/back-squat")
    expect(page.get_by_role("heading", name="How it looks")).to_be_visible()
    return page


def shows(desk: Page, file: Path) -> None:
    desk.get_by_text("Add a photo or clip").or_(
        desk.get_by_text("Put another in its place")
    ).click()
    desk.get_by_label(FIELD).set_input_files(file)
    desk.get_by_label("In words").first.fill(WORDS)
    desk.get_by_role("button", name="Save it").click()


def on_disk(folder: Path, name: str, data: bytes) -> Path:
    (folder / name).write_bytes(data)
    return folder / name


def wait_until_kept(page: Page) -> None:
    """A promise is something, whatever comes of it: so the page is asked, and asked again."""
    kept = "async () => (await (await caches.open('pictures')).keys()).length"
    until = time.monotonic() + 20
    while not page.evaluate(kept):
        assert time.monotonic() < until, "no picture was kept"
        page.wait_for_timeout(50)


def test_a_photo_is_on_the_phone_when_the_server_is_not(
    desk: Page, server: ServerProcess, squad: Squad, phone: Handset, tmp_path: Path
) -> None:
    shows(desk, on_disk(tmp_path, "squat.jpg", photo()))
    expect(desk.get_by_role("img", name=WORDS)).to_be_visible()
    look(desk, "desk-picture")

    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    wait_until_kept(page)
    assert phone.context is not None
    phone.context.set_offline(True)
    server.stop()
    page.goto(server.url)
    hands.begin(page)
    page.get_by_role("button", name="How it looks").click()
    picture = page.get_by_role("img", name=WORDS)
    expect(picture).to_be_visible()
    page.wait_for_function("() => document.querySelector('.looks-box img')?.naturalWidth === 1280")
    look(page, "phone-picture")
    page.get_by_role("button", name="Back to the set").click()
    expect(picture).to_be_hidden()
    measured = Measuring(page, "pictures")
    look(page, "phone-set-with-a-picture")
    hands.skip_ramp(page)
    look(page, "phone-first-set-with-a-picture")
    measured.measure("set with a picture", in_set=True)
    measured.finds_nothing()


def test_a_clip_plays_without_a_network_and_stands_still_where_motion_is_unwanted(
    desk: Page, server: ServerProcess, squad: Squad, phone: Handset, tmp_path: Path
) -> None:
    shows(desk, on_disk(tmp_path, "squat.mov", clip("mov", seconds=1)))
    expect(desk.locator("figure video")).to_be_visible()

    page = phone.switch_on()
    hands.pair(page, server.url, squad.secret)
    wait_until_kept(page)
    server.stop()
    hands.begin(page)
    page.get_by_role("button", name="How it looks").click()
    film = page.locator(".looks-box video")
    expect(film).to_have_accessible_name(WORDS)
    ready = "(film) => film.readyState >= 2 && film.videoWidth === 320 && film.muted"
    page.wait_for_function(f"() => ({ready})(document.querySelector('.looks-box video') ?? {{}})")
    assert film.evaluate("(film) => film.paused"), "motion is unwanted here"
    page.get_by_role("button", name="Back to the set").click()
    page.emulate_media(reduced_motion="no-preference")
    page.get_by_role("button", name="How it looks").click()
    page.wait_for_function("() => document.querySelector('.looks-box video')?.paused === false")


def test_a_picture_that_is_not_here_is_told_in_words_and_fetched_when_asked_for(
    desk: Page, server: ServerProcess, squad: Squad, phone: Handset, tmp_path: Path
) -> None:
    """A phone that saves data asks for nothing by itself."""
    shows(desk, on_disk(tmp_path, "squat.jpg", photo()))
    expect(desk.get_by_role("img", name=WORDS)).to_be_visible()
    page = phone.switch_on()
    page.add_init_script(
        "Object.defineProperty(navigator, 'connection', { get: () => ({ saveData: true }) })"
    )
    hands.pair(page, server.url, squad.secret)
    hands.begin(page)
    page.get_by_role("button", name="How it looks").click()
    expect(page.get_by_text(WORDS)).to_be_visible()
    look(page, "phone-picture-away")
    server.stop()
    page.get_by_role("button", name="Fetch the photo").click()
    expect(page.get_by_text("No answer.")).to_be_visible()
    server.start()
    page.get_by_role("button", name="Fetch the photo").click()
    expect(page.get_by_role("img", name=WORDS)).to_be_visible()


def test_a_sending_that_fails_loses_neither_the_file_nor_the_words(
    desk: Page, server: ServerProcess, laptop: Handset, tmp_path: Path
) -> None:
    server.stop()
    shows(desk, on_disk(tmp_path, "squat.png", photo("PNG", (300, 200))))
    form = desk.get_by_role("group").filter(has=desk.get_by_label(FIELD))
    expect(form.get_by_role("alert")).to_contain_text(
        "The server does not answer. What you have typed is still here."
    )
    expect(desk.get_by_label("In words")).to_have_value(WORDS)
    server.start()
    form.get_by_role("button", name="Try again").click()
    expect(desk.get_by_role("img", name=WORDS)).to_be_visible()


def test_what_is_no_picture_is_refused_with_what_would_be_right(desk: Page, tmp_path: Path) -> None:
    shows(desk, on_disk(tmp_path, "squat.jpg", b"<svg xmlns='http://www.w3.org/2000/svg'/>"))
    refusal = desk.get_by_role("alert")
    expect(refusal).to_contain_text("neither a photo nor a clip")
    expect(refusal).to_contain_text("JPEG, PNG or WebP")
    look(desk, "desk-picture-refused")
