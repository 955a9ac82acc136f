"""Forces from things that hang, stretch, turn and run over pulleys.

`drawing` puts a force curve on a load sheet; it is asked for by its own name, because the sheet's
shapes rest on strength, and strength on this face.
"""

from undercroft.domain.mechanics.band import BandLaw, Basis, band_law, laws_of, tension_n
from undercroft.domain.mechanics.curve import (
    Curve,
    curve_of,
    doubt_at_n,
    force_at_n,
    force_n,
    hanging,
    mean_n,
    plus,
    share_at,
    work_j,
)
from undercroft.domain.mechanics.find import Choice, Found, Search, find
from undercroft.domain.mechanics.landmine import (
    Lever,
    in_hand_kg,
    lever,
    press,
    sleeve_kg_for,
    square_to_bar_n,
    straight_up_n,
)
from undercroft.domain.mechanics.order import (
    Move,
    Order,
    Sides,
    best_order,
    loading,
    smallest_margin,
    stripping,
)
from undercroft.domain.mechanics.path import Path, path_for
from undercroft.domain.mechanics.pulley import (
    STANDARD_GRAVITY,
    force_doubt_share,
    lifting_force_n,
    lowering_force_n,
)
from undercroft.domain.mechanics.remark import About, Remark
from undercroft.domain.mechanics.rigging import rig_up, search_for
from undercroft.domain.mechanics.settings import BASIS, DEFAULT, MechanicsSettings
from undercroft.domain.mechanics.target import rig_kg, still_kg, total_kg, wanted_kg
from undercroft.domain.mechanics.tipping import (
    Resting,
    SideLoad,
    limit_kg,
    margin,
    support_forces_kg,
)
from undercroft.domain.mechanics.would_do import would_do

__all__ = [
    "BASIS",
    "DEFAULT",
    "STANDARD_GRAVITY",
    "About",
    "BandLaw",
    "Basis",
    "Choice",
    "Curve",
    "Found",
    "Lever",
    "MechanicsSettings",
    "Move",
    "Order",
    "Path",
    "Remark",
    "Resting",
    "Search",
    "SideLoad",
    "Sides",
    "band_law",
    "best_order",
    "curve_of",
    "doubt_at_n",
    "find",
    "force_at_n",
    "force_doubt_share",
    "force_n",
    "hanging",
    "in_hand_kg",
    "laws_of",
    "lever",
    "lifting_force_n",
    "limit_kg",
    "loading",
    "lowering_force_n",
    "margin",
    "mean_n",
    "path_for",
    "plus",
    "press",
    "rig_kg",
    "rig_up",
    "search_for",
    "share_at",
    "sleeve_kg_for",
    "smallest_margin",
    "square_to_bar_n",
    "still_kg",
    "straight_up_n",
    "stripping",
    "support_forces_kg",
    "tension_n",
    "total_kg",
    "wanted_kg",
    "work_j",
    "would_do",
]  # fmt: skip
