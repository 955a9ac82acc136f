"""An own change: at a place of a block, what the block said and what one athlete does instead."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from undercroft.domain.program.block import ExercisePlan, SessionPlan

Place = tuple[str, str]
"""A session's key and an exercise's; without an exercise ("") the session itself."""


@dataclass(frozen=True, slots=True)
class SessionHead:
    """A session without its exercises."""

    name: str
    day: int
    note: str = ""


Part = SessionHead | ExercisePlan


@dataclass(frozen=True, slots=True)
class OwnChange:
    """`beneath` is what the block said when the change was made, so that it is seen to move on.

    Without `own` the part is left out. Without `beneath` the athlete's own exercise is added: after
    the one with the key `after`, or at the end where that is gone. `accepted`: nothing else than
    loads that were proposed.
    """

    session: str
    exercise: str
    beneath: Part | None
    own: Part | None
    since: date
    after: str = ""
    accepted: bool = False

    @property
    def place(self) -> Place:
        return self.session, self.exercise


@dataclass(frozen=True, slots=True)
class Layer:
    """All own changes of one athlete to one block, in the order in which they were made."""

    changes: tuple[OwnChange, ...] = ()

    def by_place(self) -> Mapping[Place, OwnChange]:
        return {one.place: one for one in self.changes}


def head_of(session: SessionPlan) -> SessionHead:
    return SessionHead(session.name, session.day, session.note)
