"""How to hang a rig, in words for the load sheet, and what to fetch for it."""

from collections import Counter
from collections.abc import Sequence

from undercroft.domain.mechanics.chain import HungChain
from undercroft.domain.mechanics.rig import HungBand
from undercroft.domain.program.methods import Side
from undercroft.domain.program.rig import Route

BAND_ROUTES = {
    Route.SINGLE: "from {anchor} to the hands' place on the bar",
    Route.DOUBLED: "round {anchor}, both ends on the bar",
    Route.INVERTED_V: "from the front peg over the sleeve to the back peg, {anchor}",
    Route.CHOKED: "looped through itself on {anchor}, the free end on the bar",
}
ON_THE_BODY = {
    Route.SINGLE: "from {anchor} to the body",
    Route.DOUBLED: "round {anchor}, both ends on the body",
    Route.INVERTED_V: "from the front peg over the body to the back peg, {anchor}",
    Route.CHOKED: "looped through itself on {anchor}, the free end on the body",
}
CHAIN_ROUTES = {Route.SINGLE: "hung straight", Route.DOUBLED: "doubled, both ends hung"}
PLACES = {Side.LEFT: "left", Side.RIGHT: "right", None: "in the middle"}


def how_to_hang(
    hung: Sequence[HungBand] | HungChain, body: bool = False
) -> tuple[str, tuple[str, ...]]:
    """One line on what hangs where and how, and the things to fetch.

    body: the bands hold the lifter and no bar.
    """
    if isinstance(hung, HungChain):
        return _chains(hung)
    places = [
        f"{words} {_together([one.law.label for one in hung if one.side is side])}"
        for side, words in PLACES.items()
        if any(one.side is side for one in hung)
    ]
    first = hung[0]
    routes = ON_THE_BODY if body else BAND_ROUTES
    route = routes[first.route].format(anchor=first.anchor.name)
    counted = Counter(one.law.label for one in hung)
    needs = [f"{n} × {label} (band)" for label, n in counted.items()]
    line = f"{'; '.join(places)}: {route}"
    return line[0].upper() + line[1:], (*needs, first.anchor.name)


def _chains(hung: HungChain) -> tuple[str, tuple[str, ...]]:
    label, a_side = hung.chain.label, hung.number // 2
    leader = f" under {hung.leader_m:g} m of line" if hung.leader_m else ""
    words = f"{a_side} × {label} on each side, {CHAIN_ROUTES[hung.route]}{leader}"
    return words, (f"{hung.number} × {label}",)


def _together(labels: Sequence[str]) -> str:
    return " and ".join(f"“{label}”" for label in labels)
