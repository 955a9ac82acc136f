"""Every way in which a kit's bands or chains can hang for a lift.

Two bands of a pair have the same width and thickness and are neighbours in strength among those;
one goes left and one right, several pairs so that the sides come out as even as they can.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise, product

import numpy as np

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Anchor, Band, Chain
from undercroft.domain.mechanics.band import BandLaw, reach_words
from undercroft.domain.mechanics.chain import STRANDS as CHAIN_ROUTES
from undercroft.domain.mechanics.chain import HungChain, lies_still
from undercroft.domain.mechanics.chain import part_of as chain_part
from undercroft.domain.mechanics.curve import curve_of, force_at_n
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rig import HungBand, flat_length_m, pull
from undercroft.domain.mechanics.rig import part_of as band_part
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.methods import Side
from undercroft.domain.program.rig import Route
from undercroft.domain.program.wish import Point

ENDS = np.array([0.0, 1.0])


@dataclass(frozen=True, slots=True)
class Way:
    """What hangs and what it gives at the point meant.

    `apart_kg` is the difference of left and right there, `aside_kg` the most that all pull
    sideways; `still` says that it gives the same all the way.
    """

    hung: tuple[HungBand, ...] | HungChain
    kg: float
    pieces: int
    apart_kg: float = 0.0
    aside_kg: float = 0.0
    still: bool = False


@dataclass(frozen=True, slots=True)
class Held:
    """One band that can hang on an anchor by a route, alone, and what it gives.

    `place` is its place in the kit.
    """

    hung: HungBand
    sort: tuple[float, float]
    kg: float
    aside_kg: float
    place: int


@dataclass(frozen=True, slots=True)
class Scope:
    """What may be used: bands, anchors, routes, numbers a side; `all_bands` where none may stay."""

    bands: tuple[Band, ...]
    anchors: tuple[Anchor, ...]
    routes: tuple[Route, ...]
    per_side: tuple[int, ...]
    all_bands: bool = False


def band_ways(
    laws: Mapping[str, BandLaw], scope: Scope, path: Path, point: Point, assists: bool
) -> tuple[list[Way], list[str]]:
    """The ways that resist (or help) all the way, and why other bands cannot hang there.

    Raises LoadError where there are more ways than can be looked through.
    """
    ways: list[Way] = []
    refused: list[str] = []
    for anchor, route in product(scope.anchors, scope.routes):
        if route is Route.INVERTED_V and not anchor.offset_m:
            continue
        held = list(_held(laws, scope.bands, anchor, route, path, point, assists, refused))
        if scope.all_bands and len(held) < len(scope.bands):
            continue
        for way in _sets(held, anchor, scope):
            ways.append(way)
            if len(ways) > DEFAULT.most_rigs:
                wants = f"{DEFAULT.most_rigs} or fewer: name the anchor, the route or the bands"
                raise LoadError("ways of hanging these bands", f"over {len(ways) - 1}", wants)
    return ways, list(dict.fromkeys(refused))


def chain_ways(
    chains: Iterable[Chain],
    routes: Sequence[Route],
    per_side: Sequence[int],
    path: Path,
    point: Point,
    leaders_m: Sequence[float],
) -> list[Way]:
    """Chains alike on both sides, straight or doubled, under each leader line."""
    ways = []
    for chain, route, number, leader in product(chains, routes, per_side, leaders_m):
        if route in CHAIN_ROUTES and 2 * number <= chain.count:
            hung = HungChain(chain, route, 2 * number, leader)
            curve = curve_of((chain_part(hung, path),), path.range_m)
            kg = force_at_n(curve, point) / STANDARD_GRAVITY
            if kg:
                ways.append(Way(hung, kg, 2 * number, still=lies_still(hung, path)))
    return ways


def _held(
    laws: Mapping[str, BandLaw],
    bands: Iterable[Band],
    anchor: Anchor,
    route: Route,
    path: Path,
    point: Point,
    assists: bool,
    refused: list[str],
) -> Iterator[Held]:
    for place, band in enumerate(bands):
        hung = HungBand(laws[band.key], anchor, route)
        longest = float(np.max(flat_length_m(hung, path, ENDS)))
        name = f"{band.label}, {route.value}, {anchor.name}"
        if longest > hung.law.most_m:
            reach = f"{hung.law.most_m:.2f} m are the most: {reach_words(hung.law)}"
            refused.append(f"{name}: would be stretched to {longest:.2f} m; {reach}")
            continue
        found = pull(hung, path, ENDS)
        along = found.along_n * (-1 if assists else 1)
        if np.min(along) < 0:
            against = "resist where it should help" if assists else "help where it should resist"
            refused.append(f"{name}: would {against}")
        elif not np.any(along):
            refused.append(f"{name}: slack all the way")
        else:
            curve = curve_of((band_part(hung, path),), path.range_m)
            kg = force_at_n(curve, point) / STANDARD_GRAVITY
            aside = float(np.max(found.sideways_n)) / STANDARD_GRAVITY
            yield Held(hung, (band.width_mm, band.thickness_mm), kg, aside, place)


def _sets(held: list[Held], anchor: Anchor, scope: Scope) -> Iterator[Way]:
    """As many bands as are wished, in the middle or on both sides."""
    numbers = (len(held) // anchor.sides,) if scope.all_bands else scope.per_side
    for number in numbers:
        if anchor.sides == 1:
            yield from map(_middle, combinations(held, number))
        elif scope.all_bands:
            yield from [] if len(held) % 2 else [_both_sides(_neighbours(held)[::2])]
        else:
            for chosen in combinations(_pairs(held), number):
                used = [one.hung.law.key for pair in chosen for one in pair]
                if len(set(used)) == len(used):
                    yield _both_sides(chosen)


def _pairs(held: Iterable[Held]) -> list[tuple[Held, Held]]:
    """Neighbours in strength among bands of one width and thickness."""
    sorts: dict[tuple[float, float], list[Held]] = defaultdict(list)
    for one in held:
        sorts[one.sort].append(one)
    return [pair for alike in sorts.values() for pair in _neighbours(alike)]


def _neighbours(held: Iterable[Held]) -> list[tuple[Held, Held]]:
    return list(pairwise(sorted(held, key=lambda one: (abs(one.kg), one.hung.law.key))))


def _middle(chosen: Sequence[Held]) -> Way:
    return Way(
        hung=tuple(one.hung for one in chosen),
        kg=sum(one.kg for one in chosen),
        pieces=len(chosen),
        aside_kg=sum(one.aside_kg for one in chosen),
    )


def _both_sides(pairs: Sequence[tuple[Held, Held]]) -> Way:
    """The most uneven pair first, each next one turned so that it makes up for those before.

    Where either way is as even, the band that is written down first in the kit goes left.
    """
    hung: list[HungBand] = []
    apart = 0.0
    for pair in sorted(pairs, key=lambda pair: -abs(pair[1].kg - pair[0].kg)):
        left, right = sorted(pair, key=lambda one: one.place)
        if (left.kg - right.kg) * apart > 0:
            left, right = right, left
        apart += left.kg - right.kg
        hung += [_on(left.hung, Side.LEFT), _on(right.hung, Side.RIGHT)]
    held = [one for pair in pairs for one in pair]
    return Way(
        hung=tuple(hung),
        kg=sum(one.kg for one in held),
        pieces=len(hung),
        apart_kg=abs(apart),
        aside_kg=sum(one.aside_kg for one in held),
    )


def _on(hung: HungBand, side: Side) -> HungBand:
    return HungBand(hung.law, hung.anchor, hung.route, side)
