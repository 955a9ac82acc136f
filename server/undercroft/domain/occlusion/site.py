"""Where a wrap or cuff sits: a limb and its side, as entries name it."""

from collections.abc import Iterable
from dataclasses import dataclass

from undercroft.domain.program.methods import Limb, Side


@dataclass(frozen=True, slots=True, order=True)
class Site:
    """One limb of one side; written `left-thigh`."""

    limb: Limb
    side: Side

    def __str__(self) -> str:
        return f"{self.side}-{self.limb}"


ALL_SITES = frozenset(Site(limb, side) for limb in Limb for side in Side)


def sites_of(text: str) -> frozenset[Site]:
    """The sites that an entry's `limb` names: `left-thigh`, or `thigh` for both sides.

    A text that names no known limb counts for every limb, so that no wear goes uncounted.
    """
    found = {site for site in ALL_SITES if text in (str(site), str(site.limb))}
    return frozenset(found) or ALL_SITES


def is_arm(limb: Limb) -> bool:
    return limb is Limb.UPPER_ARM


def in_words(sites: Iterable[Site]) -> str:
    return ", ".join(sorted(f"{one.side} {one.limb.replace('-', ' ')}" for one in sites))
