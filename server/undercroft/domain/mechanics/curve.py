"""The force curve: a sum of parts over s from 0 (start) to 1 (end of the lift), in newtons.

Parts that stay the same (bar, plates, a dumbbell) and parts that follow the path (bands, chains, a
lever) are alike here; each knows its doubt, and those of all parts add as the root of summed
squares. Doubts that rest on one assumption (bands that nobody measured) go the same way together
and add up straight before that.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from undercroft.domain.errors import LoadError, not_negative, positive
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rubber import Floats
from undercroft.domain.program.wish import Point

GAUSS_NODES, GAUSS_WEIGHTS = np.polynomial.legendre.leggauss(8)
"""Exact for polynomials up to degree 15 between two kinks."""

PLACE = {Point.START: np.zeros(1), Point.LOCKOUT: np.ones(1)}


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """One source of resistance; forces and doubts in N at many s, helping forces below zero.

    `varies` tells bands, chains and levers from what stays the same, `kinks` are the s where the
    force bends, `common` says that the doubt rests on an assumption shared with other parts.
    """

    name: str
    force: Callable[[Floats], Floats]
    doubt: Callable[[Floats], Floats]
    varies: bool = True
    kinks: tuple[float, ...] = ()
    common: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Curve:
    """The parts of a resistance and the length of the hands' way in metres."""

    parts: tuple[Part, ...]
    range_m: float


def hanging(name: str, kg: float, doubt_kg: float = 0.0, common: bool = False) -> Part:
    """A part that stays the same: bar and plates, a dumbbell, what a cable gives."""
    force = not_negative(f"{name} in kg", kg) * STANDARD_GRAVITY
    doubt = not_negative(f"doubt of {name} in kg", doubt_kg) * STANDARD_GRAVITY
    return Part(
        name=name,
        force=lambda s: np.full(s.shape, force),
        doubt=lambda s: np.full(s.shape, doubt),
        varies=False,
        common=common,
    )


def curve_of(parts: tuple[Part, ...], range_m: float) -> Curve:
    """Parts over a range. LoadError where the range is no length above 0."""
    return Curve(parts, positive("range of the lift in m", range_m))


def plus(curve: Curve, *parts: Part) -> Curve:
    """The same lift with further parts."""
    return Curve((*curve.parts, *parts), curve.range_m)


def varying(curve: Curve) -> Curve:
    """Bands, chains and levers alone."""
    return Curve(tuple(part for part in curve.parts if part.varies), curve.range_m)


def force_n(curve: Curve, s: Floats) -> Floats:
    """Resistance in N at s. LoadError where an s lies outside 0 to 1."""
    if not np.all((s >= 0) & (s <= 1)):
        raise LoadError("place in the lift", s.tolist(), "numbers from 0 (start) to 1 (end)")
    return sum((part.force(s) for part in curve.parts), start=np.zeros(s.shape))


def force_at_n(curve: Curve, point: Point) -> float:
    """Resistance in N at a point of the lift; "bar" counts only what stays the same."""
    if point is Point.BAR:
        still = tuple(part for part in curve.parts if not part.varies)
        return float(force_n(Curve(still, curve.range_m), np.zeros(1))[0])
    if point is Point.MEAN:
        return mean_n(curve)
    return float(force_n(curve, PLACE[point])[0])


def mean_n(curve: Curve) -> float:
    """Mean resistance over the range in N: work over way, by Gauss between the kinks."""
    s, weights = _nodes(curve)
    return float(force_n(curve, s) @ weights)


def work_j(curve: Curve) -> float:
    """Work in J done against the resistance from start to end."""
    return mean_n(curve) * curve.range_m


def share_at(curve: Curve, point: Point) -> float:
    """Share of bands, chains and levers in the resistance at a point, as a part of 1."""
    whole = force_at_n(curve, point)
    return force_at_n(varying(curve), point) / whole if whole else 0.0


def doubt_at_n(curve: Curve, point: Point) -> float:
    """Doubt of the resistance at a point in N, one standard deviation."""
    if point is Point.MEAN:
        s, weights = _nodes(curve)
    else:
        s, weights = PLACE.get(point, PLACE[Point.START]), np.ones(1)
    counted = [part for part in curve.parts if point is not Point.BAR or not part.varies]
    apart = [float(part.doubt(s) @ weights) for part in counted if not part.common]
    together = sum(float(part.doubt(s) @ weights) for part in counted if part.common)
    return float(np.linalg.norm([*apart, together]))


def _nodes(curve: Curve) -> tuple[Floats, Floats]:
    """Places and weights, summing to 1, of a quadrature that stops at every kink."""
    inner = {kink for part in curve.parts for kink in part.kinks if 0 < kink < 1}
    places, weights = [], []
    for low, high in pairwise(sorted({0.0, 1.0} | inner)):
        half = (high - low) / 2
        places.append(low + half * (GAUSS_NODES + 1))
        weights.append(half * GAUSS_WEIGHTS)
    return np.concatenate(places), np.concatenate(weights)
