"""The phone at a quarter of this machine's speed: offline start, and tap to durable record."""

import json
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, sync_playwright
from tests.bench.row import Row
from tests.browser import hands
from tests.browser.chromium import PHONE, handset
from tests.browser.conftest import database_in, squad_in
from tests.server_process import ServerProcess

SLOWER = 4
TAPS = 40
BREATH_S = 0.15
STARTS = 5

WATCH = """
() => {
  window.recorded = [];
  const writing = new Set();
  for (const name of ["put", "add"]) {
    const original = IDBObjectStore.prototype[name];
    IDBObjectStore.prototype[name] = function (...given) {
      if (this.name === "entries") writing.add(this.transaction);
      return original.apply(this, given);
    };
  }
  const opened = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...given) {
    const transaction = opened.apply(this, given);
    const { tapped } = window;
    transaction.addEventListener("complete", () => {
      if (writing.delete(transaction)) window.recorded.push(performance.now() - tapped);
    });
    return transaction;
  };
  document.addEventListener("click", () => { window.tapped = performance.now(); }, true);
}
"""
"""From the tap to the `complete` of the transaction that holds the entry, by the page's clock.

Listens before the app does, which draws the next set in the same task.
"""


def bench(folder: Path) -> Iterator[Row]:
    folder.mkdir(parents=True, exist_ok=True)
    location = database_in(folder)
    squad = squad_in(location)
    server = ServerProcess(location, folder / "server.log")
    server.start()
    with (
        sync_playwright() as playwright,
        handset(playwright, folder / "phone", viewport=PHONE) as one,
    ):
        page = one.switch_on()
        hands.pair(page, server.url, squad.secret)
        server.stop()
        _slow_down(page)
        starts = [_start(page, server.url) for _ in range(STARTS)]
        taps = _taps(page)
    context = f"slowest of {STARTS}, server stopped, {SLOWER}× slower"
    yield Row("offline start to a usable Today", max(starts), "s", 1, context)
    context = f"95th of {len(taps)} taps, {SLOWER}× slower"
    yield Row("tap to durable record", sorted(taps)[int(0.95 * len(taps))], "ms", 50, context)
    yield from _first_load()


def _slow_down(page: Page) -> None:
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


def _start(page: Page, url: str) -> float:
    """Seconds from the start of the navigation until the large button of Today can be tapped."""
    page.goto("about:blank")
    start = time.perf_counter()
    page.goto(url, wait_until="commit")
    page.get_by_role("button", name="Start").wait_for()
    return time.perf_counter() - start


def _taps(page: Page) -> list[float]:
    hands.begin(page)
    hands.skip_ramp(page)
    page.evaluate(WATCH)
    while True:
        recorded: list[Any] = page.evaluate("() => window.recorded")
        if len(recorded) >= TAPS:
            return [float(ms) for ms in recorded]
        for name in (hands.DONE, "Undo"):
            page.get_by_role("button", name=name).click()
            # What Playwright asks the page meanwhile would count as the app's own time.
            time.sleep(BREATH_S)


def _first_load() -> Iterator[Row]:
    pwa = Path(__file__).parents[2] / "pwa"
    script = (
        "import { measure } from './tools/size.js';"
        "console.log(JSON.stringify(measure('../server/undercroft/web')))"
    )
    said = subprocess.run(
        ["node", "--input-type=module", "-e", script], cwd=pwa, capture_output=True, check=True
    ).stdout
    measured = json.loads(said)
    context = f"{measured['desk'] / 1000:.1f} kB more for the desk, fetched only there"
    yield Row("the athlete's first load", measured["total"] / 1000, "kB gzip", 45, context)
