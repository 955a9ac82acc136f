"""What an athlete's next loads should become, and what the coach accepts of it.

An accepted load is a change for this athlete alone: a new revision of what the athlete trains by,
with other loads in it. It is kept among the athlete's own changes, so that the block sent again
does not undo it; the coach's block stays as it is written.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undercroft.domain.program.checks import Overrule
from undercroft.domain.program.wish import LoadWish
from undercroft.domain.proposals import (
    Place,
    SessionProposals,
    propose,
    proposed_in,
    with_accepted,
    with_loads,
)
from undercroft.services import own_changes, planning, sending
from undercroft.services.clock import day_of
from undercroft.services.evidence import evidence_of
from undercroft.services.planning import Current
from undercroft.services.refusals import Conflict
from undercroft.store import athletes
from undercroft.store.database import reading


@dataclass(frozen=True, slots=True)
class Proposals:
    """`revision` None: nothing was sent yet. `waiting` counts the loads that can be accepted."""

    revision: int | None
    block: str
    waiting: int
    sessions: tuple[SessionProposals, ...]


@dataclass(frozen=True, slots=True)
class Accepted:
    """Proposed loads in kg as the coach saw them, by place, for the revision of that number."""

    revision: int
    loads: Mapping[Place, float]


def proposals(athlete_id: str, now: int) -> Proposals:
    """The week ahead of what the athlete trains by, set by set."""
    current = planning.current(athlete_id)
    if current is None:
        return Proposals(None, "", 0, ())
    found = _proposals(athlete_id, current, now)
    return Proposals(current.number, current.block.name, len(proposed_in(found)), found)


def accept(
    coach_id: str,
    athlete_id: str,
    accepted: Accepted,
    overrules: Sequence[Overrule],
    now: int,
) -> sending.Sent:
    """Send the accepted loads to this athlete, through the ordinary checks.

    Raises Conflict where they are not what is proposed any more.
    """
    current = planning.current(athlete_id)
    if current is None or current.number != accepted.revision:
        raise Conflict(sending.SENT_MEANWHILE, "look at the loads again")
    wishes = _wishes(_proposals(athlete_id, current, now), accepted.loads)
    block = with_loads(current.block, wishes)
    wanted = sending.Wanted([athlete_id], current.starts_on, overrules)
    before = own_changes.kept_of(athlete_id, current.block_id)
    layer = with_accepted(before.layer, current.block, wishes, day_of(now))
    leaves = sending.OwnAfter(before, layer, current.number)
    return sending.send_to(coach_id, current.block_id, block, athlete_id, wanted, now, leaves)


def _wishes(
    found: Sequence[SessionProposals], loads: Mapping[Place, float]
) -> dict[Place, LoadWish]:
    """What is written for each accepted load. Raises Conflict."""
    proposed = proposed_in(found)
    wishes = {
        place: one.write
        for place, one in proposed.items()
        if one.write is not None and loads.get(place) == one.to_kg
    }
    for (_, key), kg in ((p, kg) for p, kg in loads.items() if p not in wishes):
        right = "look at the loads again: something has come in since"
        raise Conflict(f"{kg:g} kg is not proposed any more for the set {key}", right)
    return wishes


def _proposals(athlete_id: str, current: Current, now: int) -> tuple[SessionProposals, ...]:
    with reading():
        row = athletes.athlete_with_coach(athlete_id)
        order = planning.order_for(row, current.block, current.starts_on)
        begun = planning.begun_of(athlete_id, current.numbers, current.sessions)
        evidence = evidence_of(athlete_id, current, day_of(now))
    return propose(order, begun, evidence)
