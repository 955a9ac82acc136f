"""The rig of an exercise, worked out on one kit: what the load sheet asks of this part.

One rig serves all sets of an exercise, because nobody rehangs bands between sets; plates make up
the rest. So the choice rests on one load, the heaviest wish, and the others follow.
"""

from collections.abc import Mapping

from undercroft.domain.errors import LoadError
from undercroft.domain.kit import Kit
from undercroft.domain.mechanics.band import BandLaw
from undercroft.domain.mechanics.find import Choice, Search, find
from undercroft.domain.mechanics.path import Path
from undercroft.domain.mechanics.target import wanted_kg
from undercroft.domain.program.rig import Rig


def rig_up(
    kit: Kit,
    laws: Mapping[str, BandLaw],
    rig: Rig,
    path: Path,
    load_kg: float,
    maximum_kg: float | None = None,
) -> Choice:
    """The best way for this kit to give what the coach's rig wishes.

    `load_kg` is the exercise's heaviest wish, `maximum_kg` the 1RM where the share is one of it.
    Raises LoadError, fit to be shown, where the kit can make nothing of it.
    """
    found = find(kit, laws, path, search_for(rig, load_kg, maximum_kg), most=1)
    if not found.choices:
        why = "; ".join(found.refused[:3])
        has = f"nothing that {kit.name} can hang" + (f" ({why})" if why else "")
        raise LoadError(f"rig of {rig.part.value}", has, "other bands, anchors or another route")
    return found.choices[0]


def search_for(rig: Rig, load_kg: float, maximum_kg: float | None = None) -> Search:
    """A coach's rig as a search. Raises LoadError where it says neither share nor things."""
    if rig.share_percent is None and not rig.things:
        wants = "a share in %, or the things that shall hang"
        raise LoadError(f"rig of {rig.part.value}", "without either", wants)
    share = rig.share_percent
    kg = None if share is None else wanted_kg(share, rig.base, load_kg, maximum_kg)
    return Search(
        kg=kg,
        load_kg=load_kg,
        point=rig.point,
        part=rig.part,
        assists=rig.assists,
        routes=(rig.route,) if rig.route else (),
        per_side=(rig.per_side,),
        things=rig.things,
    )
