"""A band on its way from an anchor to the hands: how far it is stretched, what it pulls.

ℓ is the straight distance from anchor to attachment, Δz its height, a its offset, L₀ the rest
length; T is the loop's tension at its flat length.

| route | flat length | along the path | sideways |
| single: anchor to bar | ℓ | T Δz/ℓ | T a/ℓ |
| doubled: round the anchor, both ends on the bar | 2ℓ | 2 T Δz/ℓ | 2 T a/ℓ |
| inverted V: front peg, over the sleeve, back peg | 2ℓ | 2 T Δz/ℓ | none, the pegs balance |
| choked: looped through itself, using up c | ℓ + c | T Δz/ℓ | T a/ℓ |

An anchor below resists a lift and one above helps it; for hands that sink it is the other way
round. Worked out from statics; an offset adds stretch faster than it loses direction.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from undercroft.domain.errors import not_negative
from undercroft.domain.kit import Anchor
from undercroft.domain.mechanics.band import BandLaw, Basis, tension_doubt_n, tension_n, within
from undercroft.domain.mechanics.curve import Part
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.rubber import Floats
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.methods import Side
from undercroft.domain.program.rig import Route

STRANDS = {Route.SINGLE: 1, Route.DOUBLED: 2, Route.INVERTED_V: 2, Route.CHOKED: 1}
"""How many times the loop's tension reaches the bar, and flat lengths a straight distance takes."""


@dataclass(frozen=True, slots=True)
class HungBand:
    """One band on one anchor; `side` is None where it hangs in the middle."""

    law: BandLaw
    anchor: Anchor
    route: Route
    side: Side | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Pull:
    """Of one band at many s: flat length in m, forces in N against the lift and sideways."""

    flat_m: Floats
    along_n: Floats
    sideways_n: Floats


def flat_length_m(hung: HungBand, path: Path, s: Floats) -> Floats:
    """How long the band is, laid flat, at s."""
    return reach_m(hung.anchor, hung.route, path, s)


def reach_m(anchor: Anchor, route: Route, path: Path, s: Floats) -> Floats:
    """How long, laid flat, any band is on an anchor by a route at s."""
    return STRANDS[route] * _straight_m(anchor, path, s) + _used_up_m(anchor, route)


def pull(hung: HungBand, path: Path, s: Floats) -> Pull:
    """What one band does at s. LoadError where it would be stretched beyond its reach."""
    flat = flat_length_m(hung, path, s)
    tension = STRANDS[hung.route] * tension_n(hung.law, flat)
    rise, aside = _direction(hung, path, s)
    return Pull(flat, path.sign * tension * rise, tension * aside)


def doubt_n(hung: HungBand, path: Path, s: Floats) -> Floats:
    """Doubt of a band's force along the path in N, one standard deviation."""
    tension = tension_doubt_n(hung.law, flat_length_m(hung, path, s))
    return STRANDS[hung.route] * tension * np.abs(_direction(hung, path, s)[0])


def part_of(hung: HungBand, path: Path) -> Part:
    """One band as a part of a force curve. LoadError where it would be stretched too far."""
    within(hung.law, flat_length_m(hung, path, np.array([0.0, 1.0])))
    return Part(
        name=hung.law.label,
        force=lambda s: pull(hung, path, s).along_n,
        doubt=lambda s: doubt_n(hung, path, s),
        kinks=_kinks(hung, path),
        common=hung.law.basis is Basis.ESTIMATED,
    )


def left_and_right_n(hung: Sequence[HungBand], path: Path, s: Floats) -> tuple[Floats, Floats]:
    """What the bands of each side give along the path; those in the middle give half to each."""
    sides = {Side.LEFT: np.zeros(s.shape), Side.RIGHT: np.zeros(s.shape)}
    for one in hung:
        along = pull(one, path, s).along_n
        for side in sides if one.side is None else (one.side,):
            sides[side] = sides[side] + (along / 2 if one.side is None else along)
    return sides[Side.LEFT], sides[Side.RIGHT]


def _straight_m(anchor: Anchor, path: Path, s: Floats) -> Floats:
    height = not_negative(f"{anchor.key}: height in m", anchor.height_m)
    offset = not_negative(f"{anchor.key}: offset in m", anchor.offset_m)
    return np.hypot(path.height_m(s) - height, offset)


def _direction(hung: HungBand, path: Path, s: Floats) -> tuple[Floats, Floats]:
    """Height and unbalanced offset of the attachment as shares of the straight distance."""
    straight = _straight_m(hung.anchor, path, s)
    straight = np.where(straight > 0, straight, 1.0)
    aside = 0.0 if hung.route is Route.INVERTED_V else hung.anchor.offset_m
    return (path.height_m(s) - hung.anchor.height_m) / straight, aside / straight


def _used_up_m(anchor: Anchor, route: Route) -> float:
    if route is not Route.CHOKED:
        return 0.0
    own = anchor.choke_m
    return DEFAULT.choke_m if own is None else not_negative(f"{anchor.key}: choke in m", own)


def _kinks(hung: HungBand, path: Path) -> tuple[float, ...]:
    """The s where the band's law bends: at its rest length and at its readings."""
    height, offset = hung.anchor.height_m, hung.anchor.offset_m
    found = []
    for knot in hung.law.knots_m:
        straight = (knot - _used_up_m(hung.anchor, hung.route)) / STRANDS[hung.route]
        if straight > offset:
            rise = float(np.sqrt(straight**2 - offset**2))
            found += [path.s_at(height + rise), path.s_at(height - rise)]
    return tuple(s for s in found if 0 < s < 1)
