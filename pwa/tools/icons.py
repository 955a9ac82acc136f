"""Draws the PNG icons from `public/icons/icon.svg` with the Chromium that the browser tests use.

Run from anywhere after a change of the drawing: `python pwa/tools/icons.py`.
"""

import shutil
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

ICONS = Path(__file__).parents[1] / "public" / "icons"
SLATE = "#1d2429"
# file, side in pixels, part of the side that the drawing takes; a mask may cut all outside 80 %
SIZES = (
    ("icon-192.png", 192, 1.0),
    ("icon-512.png", 512, 1.0),
    ("maskable-512.png", 512, 0.8),
    ("apple-touch-180.png", 180, 0.94),
)


def main() -> None:
    drawing = (ICONS / "icon.svg").read_text()
    executable = shutil.which("chromium") or shutil.which("chromium-browser")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=executable)
        page = browser.new_page()
        for name, side, part in SIZES:
            draw(page, drawing, ICONS / name, side, part)
        browser.close()


def draw(page: Page, drawing: str, target: Path, side: int, part: float) -> None:
    """Write one square PNG; where the drawing is inset, slate fills the whole square."""
    full_bleed = part < 1
    page.set_viewport_size({"width": side, "height": side})
    page.set_content(
        f"<style>*{{margin:0}} body{{background:{SLATE if full_bleed else 'transparent'}}}"
        f"svg{{display:block;width:{part:.0%};margin:{(1 - part) / 2:.1%}}}</style>{drawing}"
    )
    page.screenshot(path=target, omit_background=not full_bleed)


if __name__ == "__main__":
    main()
