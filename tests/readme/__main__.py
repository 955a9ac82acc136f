"""The pictures of the README, of the invented demo: python -m tests.readme"""

import base64
import os
import re
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, expect, sync_playwright
from tests.browser import hands
from tests.browser.chromium import FLAGS, LAPTOP, PHONE, executable
from tests.server_process import ServerProcess

from undercroft.cli import main as undercroft
from undercroft.commands.demo import DATA
from undercroft.demo.scenario import COACH_EMAIL

PICTURES = Path(__file__).parents[2] / "server" / "docs" / "pictures"
MOST_BYTES = 200_000


@click.command()
@click.option("--into", type=click.Path(path_type=Path), default=PICTURES, show_default=True)
def main(into: Path) -> None:
    """Fill a demo, look at it as athlete and coach, and keep what is seen, light and dark."""
    into.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="undercroft-readme-") as scratch:
        folder = Path(scratch)
        told = _demo(folder / "demo")
        server = ServerProcess(str(folder / "demo" / DATA), folder / "server.log")
        server.start()
        try:
            with _browser() as browser:
                _phone(browser, server.url, told["secret"], into)
                _desk(browser, server.url, told["password"], into)
        finally:
            server.stop()


def _demo(folder: Path) -> dict[str, str]:
    answer = CliRunner().invoke(undercroft, ["demo", "--folder", str(folder), "--no-serve"])
    assert answer.exit_code == 0, answer.output
    found = re.search(r"log in\s+(?P<email>\S+)  (?P<password>\S+)", answer.output)
    link = re.search(r"/pair#(?P<secret>\S+)", answer.output)
    assert found, answer.output
    assert link, answer.output
    return {**found.groupdict(), **link.groupdict()}


@contextmanager
def _browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=executable(), args=FLAGS, chromium_sandbox=os.geteuid() != 0
        )
        yield browser
        browser.close()


def _page(browser: Browser, size: dict[str, int], sharp: float) -> Page:
    context = browser.new_context(
        viewport=size,  # type: ignore[arg-type]
        device_scale_factor=sharp,
        locale="en-GB",
        reduced_motion="reduce",
    )
    return context.new_page()


def _phone(browser: Browser, url: str, secret: str, into: Path) -> None:
    page = _page(browser, PHONE, 2)
    page.goto(f"{url}/pair#{secret}")
    page.get_by_role("button", name=re.compile("^Yes, I am")).click()
    expect(page.get_by_role("button", name="Start", exact=True)).to_be_visible()
    _keep(page, into, "today")
    hands.begin(page)
    hands.skip_ramp(page)
    expect(page.get_by_role("button", name=hands.DONE)).to_be_visible()
    _keep(page, into, "set")


def _desk(browser: Browser, url: str, password: str, into: Path) -> None:
    page = _page(browser, LAPTOP, 1.5)
    hands.log_in(page, url, COACH_EMAIL, password)
    page.wait_for_load_state("networkidle")
    _keep(page, into, "squad")
    page.get_by_role("link", name="Blocks").click()
    page.get_by_role("link", name="First two weeks").first.click()
    working = page.get_by_text("working out the loads")
    expect(working).to_be_visible()
    expect(working).to_have_count(0, timeout=60_000)
    _keep(page, into, "writer")


def _keep(page: Page, into: Path, name: str) -> None:
    """In both schemes, as WebP: a tenth of the size of PNG."""
    session = page.context.new_cdp_session(page)
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        page.wait_for_timeout(400)
        shot = session.send("Page.captureScreenshot", {"format": "webp", "quality": 82})
        data = base64.b64decode(shot["data"])
        assert len(data) < MOST_BYTES, f"{name} is too large: {len(data)} bytes"
        (into / f"{name}-{scheme}.webp").write_bytes(data)
        click.echo(f"{name}-{scheme}.webp  {len(data) / 1000:.0f} kB")


main()
