"""What an athlete's thumb and a coach's hands do, by the names that screen readers hear."""

import re

from playwright.sync_api import Page, expect

DONE = re.compile("^Done")
SYNC = re.compile("^Sync: ")


def pair(page: Page, url: str, secret: str) -> None:
    """Open the invitation, agree, and wait until the program is here and kept for later."""
    page.goto(f"{url}/pair#{secret}")
    page.get_by_role("button", name="Yes, I am Runa Tealdi").click()
    expect(page.get_by_role("button", name="Start")).to_be_visible()
    wait_for_worker(page)


def wait_for_worker(page: Page) -> None:
    """Only a page that its worker controls can be opened without a network."""
    page.evaluate("() => navigator.serviceWorker.ready.then(() => true)")
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")


def begin(page: Page) -> None:
    page.get_by_role("button", name="Start").click()
    expect(page).to_have_url(re.compile("/set$"))


def skip_ramp(page: Page) -> None:
    """Go past the warm-up where there is one."""
    button = page.get_by_role("button", name="Skip warm-up")
    expect(button.or_(page.get_by_role("button", name=DONE))).to_be_visible()
    if button.is_visible():
        button.click()


def record_as_planned(page: Page) -> None:
    """One tap on what the plan says; comes back when the screen has confirmed it."""
    skip_ramp(page)
    record(page, DONE)


SIGN = "() => document.querySelector('[aria-label^=\"Sync: \"]')?.outerHTML"


def record(page: Page, name: str | re.Pattern[str]) -> None:
    """One tap that makes an entry; comes back when the sign of what is unsent has counted it."""
    before = page.evaluate(SIGN)
    page.get_by_role("button", name=name).click()
    page.wait_for_function(f"(before) => ({SIGN})() !== before", arg=before)


UNSENT = "() => Number(document.querySelector('.top-sync span')?.textContent ?? 0)"


def record_many(page: Page, name: str | re.Pattern[str], entries: int) -> None:
    """One tap that makes several entries, without a network; comes back when all are counted."""
    before = page.evaluate(UNSENT)
    page.get_by_role("button", name=name).click()
    page.wait_for_function(f"(due) => ({UNSENT})() === due", arg=before + entries)


def record_everything(page: Page) -> int:
    """Every set of the session as planned, to the last one; how many there were."""
    over = page.get_by_role("button", name="Finish the session")
    ahead = page.get_by_role("button", name=DONE)
    ramp = page.get_by_role("button", name="Skip warm-up")
    count = 0
    while True:
        expect(over.or_(ahead).or_(ramp).first).to_be_visible()
        if over.is_visible():
            return count
        record_as_planned(page)
        count += 1


def finish(page: Page, effort: str = "7, very hard") -> None:
    page.get_by_role("button", name="Finish the session").click()
    page.get_by_role("button", name=effort).click()
    page.get_by_role("button", name="Finish the session").click()
    expect(page.get_by_text("Done today")).to_be_visible()


def send_now(page: Page, url: str) -> None:
    """Ask the phone to send, and wait until it says that nothing is left."""
    page.goto(f"{url}/sync")
    page.get_by_role("button", name="Send and fetch now").click()
    expect(page.get_by_role("button", name=re.compile("^Sync: All sent"))).to_be_visible()


def log_in(page: Page, url: str, email: str, password: str) -> None:
    page.goto(f"{url}/desk")
    page.get_by_label("Email").fill(email)
    page.get_by_label("Password").fill(password)
    page.get_by_role("button", name="Log in").click()
    expect(page.get_by_role("heading", name="Squad")).to_be_visible()


def pair_by_code(page: Page, url: str, code: str) -> None:
    """Type the code into the app, as on a phone where links open elsewhere."""
    page.goto(url)
    page.get_by_label(re.compile("code", re.IGNORECASE)).fill(code)
    page.get_by_role("button", name=re.compile("look|go on|next|pair", re.IGNORECASE)).first.click()
    page.get_by_role("button", name="Yes, I am Runa Tealdi").click()
    expect(page.get_by_role("button", name="Start")).to_be_visible()
    wait_for_worker(page)
