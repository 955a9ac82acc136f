"""Find the bands or chains for a share at a point of the lift, among what stands in a kit.

Ways are ranked by how far they are off the share (less than a point apart is no different), then by
how even left and right are, how little pulls sideways, how few pieces hang.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from undercroft.domain.errors import LoadError, positive, whole
from undercroft.domain.kit import Kit
from undercroft.domain.mechanics.band import BandLaw
from undercroft.domain.mechanics.chain import HungChain
from undercroft.domain.mechanics.chain import part_of as chain_part
from undercroft.domain.mechanics.curve import Curve, curve_of
from undercroft.domain.mechanics.curve import Part as CurvePart
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.remark import (
    Remark,
    about_bands,
    about_chains,
    about_range,
    about_share,
    sides_kg,
)
from undercroft.domain.mechanics.rig import HungBand
from undercroft.domain.mechanics.rig import part_of as band_part
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.mechanics.target import WORDS
from undercroft.domain.mechanics.ways import Scope, Way, band_ways, chain_ways
from undercroft.domain.mechanics.words import how_to_hang
from undercroft.domain.program.rig import Part, Route
from undercroft.domain.program.wish import Point

Hung = tuple[HungBand, ...] | HungChain

MOST_CHOICES = 6


@dataclass(frozen=True, slots=True)
class Search:
    """What is looked for, and with what.

    `kg` is what the rig should give at `point` (None: whatever the named things give), `load_kg`
    the whole load there, of which shares are reckoned. `routes` empty: any. `things` names bands,
    chains or anchors of the kit: named bands all hang, named anchors are the only ones used.
    """

    kg: float | None
    load_kg: float
    point: Point = Point.LOCKOUT
    part: Part = Part.BANDS
    assists: bool = False
    routes: tuple[Route, ...] = ()
    per_side: tuple[int, ...] = (1, 2)
    things: tuple[str, ...] = ()
    leaders_m: tuple[float, ...] = (0.0,)


@dataclass(frozen=True, slots=True, eq=False)
class Choice:
    """One way to hang it: `curve` is the rig's alone, `words` say how, `needs` what to fetch.

    `kg` is what it gives at the point, below zero where it helps, `off_kg` that less the wish;
    `sides_kg` are left and right where they differ most (None for chains, which are alike).
    """

    hung: Hung
    curve: Curve
    kg: float
    off_kg: float
    sides_kg: tuple[float, float] | None
    remarks: tuple[Remark, ...]
    words: str
    needs: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """Choices, best first, and why other things of the kit could not hang."""

    choices: tuple[Choice, ...]
    refused: tuple[str, ...]


def find(
    kit: Kit, laws: Mapping[str, BandLaw], path: Path, search: Search, most: int = MOST_CHOICES
) -> Found:
    """Rank what the kit can make. Raises LoadError for names and numbers that cannot be.

    `laws` are the kit's, from `laws_of`, worked out once.
    """
    _check(kit, search)
    refused: list[str] = []
    if search.part is Part.BANDS:
        ways, refused = band_ways(laws, _scope(kit, search), path, search.point, search.assists)
    else:
        ways = _chains(kit, search, path)
    ways.sort(key=lambda way: _rank(way, search))
    return Found(tuple(_choice(way, path, search) for way in ways[:most]), tuple(refused))


def _rank(way: Way, search: Search) -> tuple[bool, int, int, int, int, float]:
    """What changes nothing comes last."""
    step = DEFAULT.same_share * search.load_kg
    off = abs(way.kg - _wished(way, search))
    apart, aside = round(way.apart_kg / step), round(way.aside_kg / step)
    return way.still, round(off / step), apart, aside, way.pieces, off


def _wished(way: Way, search: Search) -> float:
    """What is wished, below zero where it should help; what it gives where nothing is wished."""
    if search.kg is None:
        return way.kg
    return -search.kg if search.assists else search.kg


def _choice(way: Way, path: Path, search: Search) -> Choice:
    wished = _wished(way, search)
    words, needs = how_to_hang(way.hung, path.body)
    return Choice(
        hung=way.hung,
        curve=curve_of(_parts(way.hung, path), path.range_m),
        kg=way.kg,
        off_kg=way.kg - wished,
        sides_kg=None if isinstance(way.hung, HungChain) else sides_kg(way.hung, path),
        remarks=(
            *_remarks(way.hung, path, search.load_kg),
            *about_share(way.kg, wished, search.load_kg, WORDS[search.point]),
            *about_range(path),
        ),
        words=words,
        needs=needs,
    )


def _parts(hung: Hung, path: Path) -> tuple[CurvePart, ...]:
    if isinstance(hung, HungChain):
        return (chain_part(hung, path),)
    return tuple(band_part(one, path) for one in hung)


def _remarks(hung: Hung, path: Path, load_kg: float) -> list[Remark]:
    if isinstance(hung, HungChain):
        return about_chains(hung, path)
    return about_bands(hung, path, load_kg)


def _scope(kit: Kit, search: Search) -> Scope:
    if not kit.anchors:
        raise LoadError(f"anchors of {kit.name}", "none", "a peg, post or beam with its height")
    bands = tuple(band for band in kit.bands if band.key in search.things)
    anchors = tuple(anchor for anchor in kit.anchors if anchor.key in search.things)
    return Scope(
        bands=bands or kit.bands,
        anchors=anchors or kit.anchors,
        routes=search.routes or tuple(Route),
        per_side=search.per_side,
        all_bands=bool(bands),
    )


def _chains(kit: Kit, search: Search, path: Path) -> list[Way]:
    named = [chain for chain in kit.chains if chain.key in search.things]
    routes = search.routes or (Route.SINGLE, Route.DOUBLED)
    if search.assists:
        raise LoadError("rig", "chains that help", "chains that resist, or bands from above")
    return chain_ways(
        named or kit.chains, routes, search.per_side, path, search.point, search.leaders_m
    )


def _check(kit: Kit, search: Search) -> None:
    positive("load of the day in kg", search.load_kg)
    if search.kg is not None:
        positive("what the rig should give in kg", search.kg)
    if search.point is Point.BAR:
        raise LoadError("point of the share", "the bar", "start, mean or lockout")
    for number in search.per_side:
        whole("pieces a side", number, least=1)
    _check_names(kit, search)


def _check_names(kit: Kit, search: Search) -> None:
    if search.part is Part.BANDS:
        known = [band.key for band in kit.bands]
        places = [anchor.key for anchor in kit.anchors]
    else:
        known, places = [chain.key for chain in kit.chains], []
    if not known:
        raise LoadError(f"{search.part.value} of {kit.name}", "none", "one at least, measured")
    for key in search.things:
        if key not in known + places:
            wants = f"one of {', '.join(known + places)}"
            raise LoadError(f"thing of the rig in {kit.name}", repr(key), wants)
