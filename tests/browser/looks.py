"""How a screen looks and reads: a picture of it, and what axe-core finds."""

from pathlib import Path
from typing import Any

from playwright.sync_api import Page

ROOT = Path(__file__).parents[2]
AXE = ROOT / "pwa" / "node_modules" / "axe-core" / "axe.min.js"
SHOTS = Path(__file__).parent / "shots"

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def look(page: Page, name: str) -> None:
    """Keep a picture under that name; fail where axe-core finds anything."""
    assert AXE.exists(), "axe-core is missing; .ci/test installs it (npm ci in pwa/)"
    SHOTS.mkdir(exist_ok=True)
    page.screenshot(path=SHOTS / f"{name}.png", full_page=True)
    if not page.evaluate("() => Boolean(window.axe)"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    found: list[dict[str, Any]] = page.evaluate(
        "async (tags) => (await axe.run({ runOnly: { type: 'tag', values: tags } })).violations",
        RULES,
    )
    told = [f"{one['id']}: {one['help']} at {_places(one)}" for one in found]
    assert told == [], f"{name}: " + "; ".join(told)


def _places(violation: dict[str, Any]) -> str:
    return ", ".join(str(node["target"]) for node in violation["nodes"][:3])
