"""What a coach may do with an athlete: the one place where that is decided.

Endpoints with an athlete in their path are asked here before anything else (`api/contract.py`),
and again under each lock of that athlete (`kept`). Whoever takes athletes from a body asks by
`require`; lists come from the same view (`in_squad`).
"""

from contextlib import AbstractContextManager
from enum import StrEnum

from undercroft.services.refusals import NotAllowed, NotFound
from undercroft.store import feed, rights
from undercroft.store.rights import Member


class Right(StrEnum):
    """Each holds the ones before it; OWN is that of the athlete's own coach."""

    READ = "read"
    WRITE = "write"
    OWN = "own"

    def covers(self, needed: "Right") -> bool:
        order = list(Right)
        return order.index(self) >= order.index(needed)


READ, WRITE, OWN = Right.READ, Right.WRITE, Right.OWN


def right_to(coach_id: str, athlete_id: str) -> Right:
    """Raises NotFound where there is none."""
    found = rights.member(coach_id, athlete_id)
    if found is None:
        raise NotFound("there is no such athlete")
    return Right(found.level)


def require(coach_id: str, athlete_id: str, needed: Right) -> None:
    """Raises NotFound where the coach has nothing to do with the athlete, else NotAllowed."""
    found = rights.member(coach_id, athlete_id)
    if found is None:
        raise NotFound("there is no such athlete")
    if not Right(found.level).covers(needed):
        raise _not_allowed(found, needed)


def kept(coach_id: str, athlete_id: str, needed: Right) -> AbstractContextManager[None]:
    """In here nothing is written by a coach whose right ended while they waited for the lock."""
    return feed.asking_under_lock(athlete_id, lambda: require(coach_id, athlete_id, needed))


def _not_allowed(found: Member, needed: Right) -> NotAllowed:
    if needed is OWN:
        return NotAllowed(
            f"this is for {found.owner}, whose athlete {found.name} is", f"ask {found.owner}"
        )
    return NotAllowed(
        f"you may read what is {found.name}'s and change nothing",
        f"ask {found.owner}, whose athlete this is, for the right to write",
    )
