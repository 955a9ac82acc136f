"""Plots as they are drawn: each mark measured against the rules of its own axis."""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

READ = Path(__file__).with_name("read_plots.js")
SOURCES = Path(__file__).parents[2] / "pwa" / "src" / "coach"


@dataclass(frozen=True)
class Drawn:
    """Bars by their looks, with strokes across and figures; lines by look and place; dots."""

    label: str
    bars: list[dict[str, Any]]
    lines: dict[str, list[float]]
    dots: list[float]

    @property
    def heights(self) -> list[float]:
        return [sum(bar["parts"].values()) for bar in self.bars]


def drawn_in(place: Locator) -> list[Drawn]:
    """Every plot within, in order."""
    expect(place.get_by_role("img").first).to_be_visible()
    script = READ.read_text(encoding="utf-8").strip().removesuffix(";")
    return [Drawn(**one) for one in place.evaluate(script)]


def plotted(page: Page, title: str) -> Locator:
    return page.get_by_role("group", name=title, exact=True)


def about(numbers: list[float | None]) -> Any:
    """As near as the geometry of a drawing is exact."""
    return pytest.approx([0 if one is None else one for one in numbers], rel=1e-6, abs=1e-6)


def titles() -> set[str]:
    """Of every plot that the desk can draw, an exercise's name left out."""
    found = set()
    for file in SOURCES.rglob("*.tsx"):
        text = file.read_text(encoding="utf-8")
        for plot in re.findall(r"<Plotted\s+title=(?:\"|\{`)(.+?)(?:\"|`\})", text):
            found.add(re.sub(r"\$\{[^}]+\}", "…", plot))
    return found
