"""Find bands: the rigs that this athlete's kit can make for a share of an exercise's load."""

from dataclasses import dataclass, replace

from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics import (
    STANDARD_GRAVITY,
    Basis,
    Choice,
    Path,
    Search,
    doubt_at_n,
    find,
    path_for,
    rig_kg,
    search_for,
    would_do,
)
from undercroft.domain.mechanics.chain import HungChain
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.rig import Part, Rig, Route, ShareBase
from undercroft.domain.program.wish import Point
from undercroft.domain.sheet.day import Day, full_strength
from undercroft.domain.sheet.reckoning import wishes_of
from undercroft.domain.sheet.wishes import UnknownMaximum

PER_SIDE = (1, 2)
"""Pieces a side that are tried: more of them nobody hangs between two exercises, our own choice."""


@dataclass(frozen=True, slots=True, eq=False)
class Offer:
    """One rig; `rig` names the very pieces and the anchor, so that a load sheet hangs these.

    `kg` is what it gives at the point that was asked for, `doubt_kg` one standard deviation of it;
    both and those at the three points are below zero where the rig helps. `share_percent` is above.
    """

    rig: Rig
    choice: Choice
    start_kg: float
    mean_kg: float
    lockout_kg: float
    share_percent: float
    doubt_kg: float
    unmeasured: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Offers:
    """Rigs, best first, for `wanted_kg`: the share of `base_kg`, the day's load or the maximum.

    `refused` say why other pieces could not hang; `would_do`, what could, where there is no offer.
    """

    load_kg: float
    why: str
    base_kg: float
    wanted_kg: float
    offers: tuple[Offer, ...]
    refused: tuple[str, ...]
    would_do: tuple[str, ...]


def offers(day: Day, plan: ExercisePlan, asked: Rig) -> Offers:
    """What the kit can make for the exercise; the things that `asked` names are left aside.

    Raises LoadError, fit to be shown, where there is nothing to look for or with.
    """
    exercise = day.catalogue[plan.exercise]
    load_kg, why = _heaviest(day, plan)
    maximum_kg = full_strength(day, plan.exercise)
    path = path_for(day.athlete, exercise)
    open_to_all = replace(asked, things=())
    search = replace(search_for(open_to_all, load_kg, maximum_kg), per_side=PER_SIDE)
    found = find(day.kit, day.laws, path, search)
    of_maximum = asked.base is ShareBase.MAXIMUM and maximum_kg is not None
    base_kg = maximum_kg if of_maximum and maximum_kg else load_kg
    return Offers(
        load_kg=load_kg,
        why=why,
        base_kg=base_kg,
        wanted_kg=search.kg or 0.0,
        offers=tuple(_offer(choice, open_to_all, base_kg) for choice in found.choices),
        refused=found.refused,
        would_do=() if found.choices else _would_do(day, path, search),
    )


def _heaviest(day: Day, plan: ExercisePlan) -> tuple[float, str]:
    """The wish on which a rig rests, as on the load sheet."""
    field = f"load of {day.catalogue[plan.exercise].name.lower()}"
    try:
        wishes = [(one.kg, one.why) for one in wishes_of(day, plan) if one.kg]
    except UnknownMaximum as unknown:
        wants = f"worked out from a maximum of {unknown.lift}: give the athlete one"
        raise LoadError(field, "not known", wants) from None
    if not wishes:
        raise LoadError(field, "not known", "a percentage or kilograms in one of its sets")
    return max(wishes)


def _offer(choice: Choice, asked: Rig, base_kg: float) -> Offer:
    at = {point: rig_kg(choice.curve, point) for point in (Point.START, Point.MEAN, Point.LOCKOUT)}
    return Offer(
        rig=_pinned(choice, asked),
        choice=choice,
        start_kg=at[Point.START],
        mean_kg=at[Point.MEAN],
        lockout_kg=at[Point.LOCKOUT],
        share_percent=100 * abs(choice.kg) / base_kg,
        doubt_kg=doubt_at_n(choice.curve, asked.point) / STANDARD_GRAVITY,
        unmeasured=_unmeasured(choice),
    )


def _pinned(choice: Choice, asked: Rig) -> Rig:
    hung = choice.hung
    if isinstance(hung, HungChain):
        number, things = hung.number // 2, (hung.chain.key,)
        return replace(asked, route=hung.route, per_side=number, things=things)
    first = hung[0]
    pieces = (*(one.law.key for one in hung), first.anchor.key)
    number = len(hung) // first.anchor.sides
    return replace(asked, route=first.route, per_side=number, things=pieces)


def _unmeasured(choice: Choice) -> tuple[str, ...]:
    if isinstance(choice.hung, HungChain):
        chain = choice.hung.chain
        return () if chain.mass_per_m_kg is not None else (chain.label,)
    return tuple(one.law.label for one in choice.hung if one.law.basis is Basis.ESTIMATED)


def _would_do(day: Day, path: Path, search: Search) -> tuple[str, ...]:
    if search.part is Part.CHAINS:
        return ("two chains alike at least, one for each side",)
    return would_do(day.kit.anchors, search.routes or tuple(Route), path, search.assists)
