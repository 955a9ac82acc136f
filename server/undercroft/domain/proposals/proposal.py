"""What the next sessions' loads should become, set by set, and why."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from undercroft.domain.program.wish import LoadWish

Place = tuple[str, str]
"""A set by its session's key and its own."""


SAME = "the nearest load here is the same"
"""Said where a maximum has moved and the kit has no load between."""


class Kind(StrEnum):
    """What is to be done about a set's load.

    proposed  another load, which the coach may accept
    follows   written as a share or by reserve: it has moved, or will move, by itself
    stays     nothing asks for another load
    unknown   what would tell is missing
    """

    PROPOSED = "proposed"
    FOLLOWS = "follows"
    STAYS = "stays"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class SetProposal:
    """`from_kg` is the load now, or of what follows the one when it was sent; `to_kg` what comes.

    `write` is the wish that takes the place of the one in the block, where one is proposed.
    """

    set: str
    number: int
    kind: Kind
    from_kg: float | None
    to_kg: float | None
    why: str
    write: LoadWish | None = None


@dataclass(frozen=True, slots=True)
class ExerciseProposals:
    key: str
    name: str
    sets: tuple[SetProposal, ...]


@dataclass(frozen=True, slots=True)
class SessionProposals:
    session: str
    name: str
    week_name: str
    on: date
    exercises: tuple[ExerciseProposals, ...]


def proposed_in(sessions: Sequence[SessionProposals]) -> Mapping[Place, SetProposal]:
    """Those that can be accepted, by place."""
    return {place: one for place, one in _all(sessions) if one.kind is Kind.PROPOSED}


def _all(sessions: Sequence[SessionProposals]) -> Iterator[tuple[Place, SetProposal]]:
    for session in sessions:
        for exercise in session.exercises:
            for one in exercise.sets:
                yield (session.session, one.set), one
