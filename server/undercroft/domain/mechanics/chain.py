"""Chains: the more of them leaves the floor, the heavier they get.

Lifted mass of one chain = μ · clamp(n (h - q), 0, L): h the height of the attachment, q a leader
line, L the chain's length, n = 1 hung straight, 2 with its middle or both ends hung. A straight
chain that is off the floor all the way changes nothing.
"""

from dataclasses import dataclass

import numpy as np

from undercroft.domain.errors import LoadError, not_negative, positive, whole
from undercroft.domain.kit import Chain
from undercroft.domain.mechanics.curve import Part
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.pulley import STANDARD_GRAVITY
from undercroft.domain.mechanics.rubber import Floats
from undercroft.domain.mechanics.settings import DEFAULT
from undercroft.domain.program.rig import Route

DIN_766_KG_PER_M = {
    6.0: 0.80, 7.0: 1.15, 8.0: 1.40, 10.0: 2.25, 12.0: 3.25, 13.0: 3.90, 14.0: 4.25, 16.0: 5.80,
}  # fmt: skip
"""Mass by link diameter in mm: a chain supplier's table to DIN 766 and ISO 4565 (seen)."""

STRANDS = {Route.SINGLE: 1, Route.DOUBLED: 2}
"""How a chain can hang: straight, or doubled."""


@dataclass(frozen=True, slots=True)
class HungChain:
    """`number` chains alike, hung at the hands' height under a leader line of `leader_m`."""

    chain: Chain
    route: Route = Route.SINGLE
    number: int = 2
    leader_m: float = 0.0


def mass_per_m(chain: Chain) -> tuple[float, float]:
    """kg/m of a chain and the doubt as a share of it: weighed, else table, else 0.0225 d².

    Raises LoadError where neither mass nor diameter is known.
    """
    if chain.mass_per_m_kg is not None:
        known = positive(f"{chain.key}: mass per metre in kg", chain.mass_per_m_kg)
        return known, DEFAULT.weighed_chain_doubt
    if chain.diameter_mm is None:
        wants = "its mass per metre, or the diameter of its links"
        raise LoadError(f"{chain.key}: mass per metre in kg", "unknown", wants)
    diameter = positive(f"{chain.key}: diameter of the links in mm", chain.diameter_mm)
    if diameter in DIN_766_KG_PER_M:
        return DIN_766_KG_PER_M[diameter], DEFAULT.table_chain_doubt
    return DEFAULT.chain_per_square * diameter**2, DEFAULT.formula_chain_doubt


def lifted_kg(hung: HungChain, height_m: Floats) -> Floats:
    """Mass off the floor in kg, all `number` chains together, with the hands at a height."""
    number = whole(f"{hung.chain.key}: number of chains", hung.number, least=1)
    return number * mass_per_m(hung.chain)[0] * _off_the_floor_m(hung, height_m)


def lies_still(hung: HungChain, path: Path) -> bool:
    """Whether the chain changes nothing: off the floor all the way, or never."""
    ends = _off_the_floor_m(hung, np.array([path.start_m, path.end_m]))
    return bool(ends[0] == ends[1])


def part_of(hung: HungChain, path: Path) -> Part:
    """Chains alike as a part of a force curve. LoadError for a chain that cannot be."""
    doubt_share = mass_per_m(hung.chain)[1]
    lifted_kg(hung, np.array([path.start_m, path.end_m]))

    def force(s: Floats) -> Floats:
        return path.sign * STANDARD_GRAVITY * lifted_kg(hung, path.height_m(s))

    bends = (hung.leader_m, hung.leader_m + hung.chain.length_m / _strands(hung))
    return Part(
        name=hung.chain.label,
        force=force,
        doubt=lambda s: doubt_share * np.abs(force(s)),
        kinks=tuple(s for s in map(path.s_at, bends) if 0 < s < 1),
    )


def _off_the_floor_m(hung: HungChain, height_m: Floats) -> Floats:
    length = positive(f"{hung.chain.key}: length in m", hung.chain.length_m)
    leader = not_negative(f"{hung.chain.key}: leader in m", hung.leader_m)
    return np.clip(_strands(hung) * (height_m - leader), 0.0, length)


def _strands(hung: HungChain) -> int:
    if hung.route not in STRANDS:
        field = f"{hung.chain.key}: route of a chain"
        raise LoadError(field, hung.route.value, "single or doubled")
    return STRANDS[hung.route]
