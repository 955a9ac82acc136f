"""What would do where a kit's bands cannot hang for a lift: other loops, or another anchor."""

from collections.abc import Iterable
from itertools import product

import numpy as np

from undercroft.domain.kit import Anchor
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.rig import reach_m
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.rig import Route

ENDS = np.array([0.0, 1.0])

ROUTES = {
    Route.SINGLE: "single",
    Route.DOUBLED: "doubled",
    Route.INVERTED_V: "over the sleeve",
    Route.CHOKED: "choked",
}


def would_do(
    anchors: Iterable[Anchor], routes: Iterable[Route], path: Path, assists: bool
) -> tuple[str, ...]:
    """In words: loops that could hang on these anchors, or where one would have to be.

    A loop is slack up to its rest length and bears no more than 2.5 times of it (a textbook limit).
    """
    fit = [anchor for anchor in anchors if _pulls_the_right_way(anchor, path, assists)]
    if not fit:
        return (_other_anchor(path, assists),)
    ways = product(fit, routes)
    return tuple(_loop(anchor, route, path) for anchor, route in ways if _goes(anchor, route))


def _goes(anchor: Anchor, route: Route) -> bool:
    return route is not Route.INVERTED_V or anchor.offset_m > 0


def _pulls_the_right_way(anchor: Anchor, path: Path, assists: bool) -> bool:
    above = (path.height_m(ENDS) - anchor.height_m) * path.sign
    return bool(np.all(above <= 0 if assists else above >= 0))


def _other_anchor(path: Path, assists: bool) -> str:
    heights = path.height_m(ENDS)
    if assists == path.rises:
        return f"an anchor above {np.max(heights):.2f} m, the highest that the hands get"
    return f"an anchor below {np.min(heights):.2f} m, the lowest that the hands get"


def _loop(anchor: Anchor, route: Route, path: Path) -> str:
    flat = reach_m(anchor, route, path, ENDS)
    shortest, longest = float(np.min(flat)), float(np.max(flat))
    least = longest / DEFAULT.most_stretch
    taut = shortest > least
    span = f"{least:.2f} to {shortest if taut else longest:.2f} m"
    slack = "" if taut else ", slack for a part of the way"
    return f"on {anchor.name}, {ROUTES[route]}: a loop that lies {span} flat{slack}"
