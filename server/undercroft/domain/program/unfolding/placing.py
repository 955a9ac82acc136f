"""Where unfolded weeks stand in the block that the coach is writing."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from undercroft.domain.errors import DomainError
from undercroft.domain.program.block import Block, Week
from undercroft.domain.program.progression import LightWeek
from undercroft.domain.program.unfolding.keys import derived
from undercroft.domain.program.unfolding.weeks import MOST_WEEKS, unfold


@dataclass(frozen=True, slots=True)
class Unfolding:
    """A week of a block and how far it goes: `weeks` in all, itself among them.

    `anew`: weeks that were unfolded from it before are made again; else they stay as the coach has
    edited them, and only what is missing is added.
    """

    week: str
    weeks: int
    light_week: LightWeek | None = None
    anew: bool = False


@dataclass(frozen=True, slots=True)
class Placed:
    """The whole block, and the places from 0 of the week and of those unfolded from it."""

    block: Block
    places: tuple[int, ...]


def unfold_within(block: Block, wanted: Unfolding) -> Placed:
    """The block with one of its weeks unfolded, the new ones right behind it.

    Empty weeks that follow give up their place; all others stay. Raises KeyError where no week has
    that key, Unfoldable and DomainError as `unfold` does.
    """
    first = week_of(block, wanted.week)
    base = [w for w in block.weeks if not (wanted.anew and came_from(first, w))]
    kept = [w for w in base if came_from(first, w)]
    made = _unfolded(first, kept, base, wanted)
    last = max(place for place, w in enumerate(base) if w is first or w in kept)
    new = made[1 + len(kept) :]
    before = [made[0] if w is first else w for w in base[: last + 1]]
    weeks = (*before, *new, *_after(base[last + 1 :], len(new)))
    if len(weeks) > MOST_WEEKS:
        right = f"should be at most {MOST_WEEKS}; unfold into fewer weeks"
        raise DomainError("weeks of the block", f"would be {len(weeks)}", right)
    ours = {week.key for week in made}
    places = tuple(place for place, week in enumerate(weeks) if week.key in ours)
    return Placed(replace(block, weeks=weeks), places)


def week_of(block: Block, key: str) -> Week:
    """The week with that key. Raises KeyError."""
    return {week.key: week for week in block.weeks}[key]


def came_from(first: Week, week: Week) -> bool:
    """Whether a week was unfolded from another one: its key says so."""
    numbered = re.search(r"\.w(\d{1,4})$", week.key)
    return numbered is not None and week.key == derived(first.key, int(numbered[1]), "w")


def _unfolded(
    first: Week, kept: Sequence[Week], base: Sequence[Week], wanted: Unfolding
) -> tuple[Week, ...]:
    ours = Block("unfolding", "", (first, *kept))
    elsewhere = {session.key for week in base for session in week.sessions}
    return unfold(ours, wanted.weeks, wanted.light_week, elsewhere).weeks


def _after(weeks: Sequence[Week], new: int) -> Sequence[Week]:
    """What follows, without the empty weeks whose places new ones have taken."""
    empty = next((n for n, week in enumerate(weeks) if week.sessions), len(weeks))
    return weeks[min(empty, new) :]
