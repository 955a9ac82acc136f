"""How a screen looks and reads: a picture of it, and what axe-core finds."""

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal

from playwright.sync_api import Page
from tests.browser.webkit_page import WebKitPage

ROOT = Path(__file__).parents[2]
AXE = ROOT / "pwa" / "node_modules" / "axe-core" / "axe.min.js"
SHOTS = Path(__file__).parent / "shots"

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
FIND = f"axe.run({{ runOnly: {{ type: 'tag', values: {RULES} }} }}).then((all) => all.violations)"

DRAWN = "new Promise((told) => requestAnimationFrame(() => requestAnimationFrame(told)))"
"""WebKit's driver takes what was drawn last, which may be the screen before."""


def look(page: Page, name: str) -> None:
    """Keep a picture under that name; fail where axe-core finds anything."""
    page.screenshot(path=picture(name), full_page=True)
    check(name, page.evaluate)


def look_in_webkit(page: WebKitPage, name: str) -> None:
    """The same for the window as it is, which WebKit's driver cannot make longer."""
    page.ask(DRAWN)
    assert page.driver.get_screenshot_as_file(str(picture(name)))
    check(name, page.ask)


MEASURE = Path(__file__).with_name("measure.js")


USUAL_TEXT = 16
"""Pixels, as browsers come."""

SIZES = {"small": (320, 568), "usual": (390, 844), "lying": (844, 390)}


@dataclass
class Measuring:
    """Screens of one phone, each drawn small, usual and lying, dark and light, and with large text.

    What is wrong is gathered, so that one run tells everything.
    """

    page: Page
    shots: str
    """What the names of the pictures begin with."""
    wrong: list[str] = field(default_factory=list)

    def measure(self, name: str, *, in_set: bool = False) -> None:
        for size, (width, height) in SIZES.items():
            self.page.set_viewport_size({"width": width, "height": height})
            self._in("dark", f"{name}, {size}, dark", in_set)
            self._keep(name, size, "dark")
            self._in("light", f"{name}, {size}, light", in_set)
        self._with_twice_the_text(name)

    def _keep(self, *what: str) -> None:
        """A picture of what is in the window."""
        self.page.screenshot(path=picture("-".join((self.shots, *what)).replace(" ", "-")))

    def finds_nothing(self) -> None:
        assert self.wrong == [], "\n".join(self.wrong)

    def _in(self, scheme: Literal["dark", "light"], where: str, in_set: bool) -> None:
        self.page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
        found = [*self._figures(in_set), *violations(self.page.evaluate)]
        self.wrong.extend(f"{where}: {what}" for what in found)

    def _with_twice_the_text(self, name: str) -> None:
        """As set in the browser by a person to whom reading is hard, on the usual phone."""
        width, height = SIZES["usual"]
        self.page.set_viewport_size({"width": width, "height": height})
        self._text(2 * USUAL_TEXT)
        found = self._figures(in_set=False)
        self.wrong.extend(f"{name}, twice the text: {what}" for what in found)
        self._keep(name, "large-text", "light")
        self._text(USUAL_TEXT)

    def _text(self, px: int) -> None:
        """The browser's own setting: what is laid out by the size of the text knows it, too."""
        browser = self.page.context.new_cdp_session(self.page)
        browser.send("Page.setFontSizes", {"fontSizes": {"standard": px, "fixed": px}})
        browser.detach()

    def _figures(self, in_set: bool) -> list[str]:
        """What is wrong with the screen as it is drawn now."""
        script = MEASURE.read_text(encoding="utf-8")
        found: list[str] = self.page.evaluate(script, {"inSet": in_set})
        return found


def picture(name: str) -> Path:
    SHOTS.mkdir(exist_ok=True)
    return SHOTS / f"{name}.png"


def check(name: str, ask: Callable[[str], Any]) -> None:
    """Fail where axe-core finds anything."""
    told = violations(ask)
    assert told == [], f"{name}: " + "; ".join(told)


def violations(ask: Callable[[str], Any]) -> list[str]:
    """Bring axe-core in by a question to the page where it is not there, and ask it."""
    assert AXE.exists(), "axe-core is missing; .ci/test installs it (npm ci in pwa/)"
    if not ask("Boolean(window.axe)"):
        ask(f"(() => {{ {AXE.read_text(encoding='utf-8')} }})()")
    found: list[dict[str, Any]] = ask(FIND)
    return [f"{one['id']}: {one['help']} at {_places(one)}" for one in found]


def _places(violation: dict[str, Any]) -> str:
    return ", ".join(str(node["target"]) for node in violation["nodes"][:3])
