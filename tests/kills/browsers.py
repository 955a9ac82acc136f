"""A browser killed right after its screen confirmed a tap, with the server there or not."""

import re
import time
from collections.abc import Callable
from dataclasses import dataclass
from random import Random

from playwright.sync_api import Page, expect
from tests.browser import hands
from tests.browser.chromium import Handset
from tests.browser.conftest import Squad
from tests.browser.ledgers import stored
from tests.domain.folded import plain_fold
from tests.server_process import ServerProcess

from undercroft.documents.entries import read_entry
from undercroft.domain.ledger import Entry, fold

ALL_SENT = re.compile("^Sync: All sent")

KEPT = """
() => new Promise((told, failed) => {
  const opening = indexedDB.open("undercroft");
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const all = opening.result.transaction("entries").objectStore("entries").getAll();
    all.onsuccess = () => { opening.result.close(); told(all.result.map((kept) => kept.entry)); };
  };
})
"""
"""What the phone itself has on disk."""


@dataclass
class Tally:
    """`answered`: kills while the server was there, and the phone sending."""

    kills: int = 0
    answered: int = 0
    stored: int = 0
    seconds: float = 0.0

    def lines(self) -> list[str]:
        return [
            f"Chromium: {self.kills} browsers killed right after a tap in {self.seconds:.0f} s",
            f"  {self.answered} of them while a server answered",
            f"  {self.stored} sets on the server, each once; phone and server fold to the same",
        ]


def kill_browsers(
    server: ServerProcess,
    squad: Squad,
    phone: Handset,
    kills: int,
    chance: Random | None = None,
    said: Callable[[], None] = lambda: None,
) -> Tally:
    """Raises AssertionError where a tap is lost or doubled.

    chance: whether the server is there at a kill; without it, it never is.
    """
    tally, start = Tally(), time.monotonic()
    hands.pair(phone.switch_on(), server.url, squad.secret)
    phone.switch_off()
    server.stop()
    for _ in range(kills):
        there = chance is not None and chance.random() < 0.5
        _be(server, there)
        _tap_and_die(phone, server, there)
        tally.kills += 1
        tally.answered += there
        said()
    _be(server, True)
    tally.stored = _claim(server, squad, phone, kills)
    tally.seconds = time.monotonic() - start
    return tally


def opened(phone: Handset, server: ServerProcess) -> Page:
    """The app as it opens on a phone that was switched on again."""
    page = phone.switch_on()
    page.goto(server.url)
    expect(page.get_by_role("button", name=hands.SYNC)).to_be_visible()
    return page


def _be(server: ServerProcess, there: bool) -> None:
    if there and server.process is None:
        server.start()
    elif not there:
        server.stop()


def _tap_and_die(phone: Handset, server: ServerProcess, there: bool) -> None:
    page = opened(phone, server)
    _comes_to_a_set(page)
    if there:
        expect(page.get_by_role("button", name=ALL_SENT)).to_be_visible()
    hands.record_as_planned(page)
    unsent = page.get_by_role("button", name=hands.SYNC).inner_text()
    phone.kill()
    if not there:
        page = opened(phone, server)
        expect(page.get_by_role("button", name=hands.SYNC)).to_have_text(unsent)
        phone.switch_off()


def _comes_to_a_set(page: Page) -> None:
    begin = page.get_by_role("button", name="Start", exact=True)
    over = page.get_by_role("button", name="Finish the session")
    ahead = page.get_by_role("button", name=hands.DONE)
    ramp = page.get_by_role("button", name="Skip warm-up")
    expect(begin.or_(over).or_(ahead).or_(ramp).first).to_be_visible()
    if over.is_visible():
        hands.finish(page)
    if begin.is_visible():
        hands.begin(page)
    hands.skip_ramp(page)


def _claim(server: ServerProcess, squad: Squad, phone: Handset, kills: int) -> int:
    """Each tap is on the server once, and the phone folds to the same."""
    page = opened(phone, server)
    hands.send_now(page, server.url)
    arrived = stored(server, squad)
    done = [entry for entry in arrived if entry.kind == "set.done"]
    assert len(done) == kills
    assert len({(e.session, e.set, e.body.get("side")) for e in done}) == kills
    kept = [read_entry(raw) for raw in page.evaluate(KEPT)]
    known = [entry for entry in kept if isinstance(entry, Entry)]
    assert len(known) == len(kept)
    assert plain_fold(fold(known)) == plain_fold(fold(arrived))
    return len(done)
