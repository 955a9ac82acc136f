"""What an athlete's thumb does in WebKit: the verbs of `hands`, on a page that a driver steers."""

import json
import re

from tests.browser.hands import DONE, SIGN
from tests.browser.webkit_page import WebKitPage

from undercroft.domain.ledger import Entry

SKIP, OVER = "Skip warm-up", "Finish the session"


def pair(page: WebKitPage, url: str, secret: str) -> None:
    """Open the invitation, agree, and wait until the program is here and kept for later."""
    page.open(f"{url}/pair#{secret}")
    page.tap("Yes, I am Runa Tealdi")
    page.sees("Start")
    page.ask("navigator.serviceWorker.ready.then(() => true)")
    page.until("navigator.serviceWorker.controller !== null", "the worker does not hold the page")


def begin(page: WebKitPage) -> None:
    page.tap("Start")
    page.until("location.pathname.endsWith('/set')", "the session did not begin")


def record_as_planned(page: WebKitPage) -> str:
    """One tap on what the plan says, confirmed by the screen; what the button said."""
    if page.sees(SKIP, DONE) == SKIP:
        page.tap(SKIP)
    said, before = page.sees(DONE), page.ask(f"({SIGN})()")
    page.tap(DONE)
    page.until(f"({SIGN})() !== {json.dumps(before)}", "the sign did not count the entry")
    return said


def record_everything(page: WebKitPage) -> list[str]:
    """Every set of the session as planned, to the last one; what the buttons said."""
    said = []
    while page.sees(OVER, SKIP, DONE) != OVER:
        said.append(record_as_planned(page))
    return said


def said_on_the_button(entry: Entry) -> str:
    """What the button of a set with repetitions and a load said, from what arrived of it."""
    side = f", {entry.body['side']}" if "side" in entry.body else ""
    return f"Done{side}: {entry.body['reps']} reps at {entry.body['load_kg']} kg"


def finish(page: WebKitPage) -> None:
    page.tap(OVER)
    page.tap(re.compile("^7, very hard"))
    page.tap(OVER)
    page.until("document.body.innerText.includes('Done today')", "the session is not done")


def log_in(page: WebKitPage, url: str, email: str, password: str) -> None:
    page.open(f"{url}/desk")
    page.fill("Email", email)
    page.fill("Password", password)
    page.tap("Log in")
    page.sees("Log out")


def send_now(page: WebKitPage, url: str) -> None:
    """Ask the phone to send, and wait until it says that nothing is left."""
    page.open(f"{url}/sync")
    page.tap("Send and fetch now")
    page.sees(re.compile("^Sync: All sent"))
