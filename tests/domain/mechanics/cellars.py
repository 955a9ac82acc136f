"""Invented cellars to find bands and chains in, and short ways to ask."""

from tests.domain.mechanics.things import PULL, cellar, true_band

from undercroft.domain.kit import Band, Chain, Kit
from undercroft.domain.mechanics.band import laws_of
from undercroft.domain.mechanics.find import Choice, Found, Search, find
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.remark import About


def pair(width_mm: float, name: str, right: float = 1.0) -> tuple[Band, Band]:
    """Two bands sold as a pair; the right one is so many times as strong."""
    return (
        true_band(width_mm, key=f"{name}-left"),
        true_band(width_mm, key=f"{name}-right", k=right),
    )


THREE_PAIRS = cellar(*pair(13, "thin"), *pair(22, "middle", 1.03), *pair(29, "wide", 1.12))


def found(kit: Kit, search: Search, path: Path = PULL, most: int = 200) -> Found:
    return find(kit, laws_of(kit), path, search, most)


def keys(choice: Choice) -> set[str]:
    assert isinstance(choice.hung, tuple)
    return {one.law.key for one in choice.hung}


def about(choice: Choice) -> set[About]:
    return {remark.about for remark in choice.remarks}


CHAINED = Kit(
    "cellar", "the cellar",
    chains=(
        Chain("heavy", "heavy chain", 1.6, mass_per_m_kg=5.8, count=2),
        Chain("light", "light chain", 1.6, diameter_mm=8, count=4),
    ),
)  # fmt: skip
