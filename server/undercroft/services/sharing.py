"""Coaches share athletes: a link offers a right, or the athletes themselves; the other one accepts.

Unknown, used, revoked and expired links are refused in the same words. Looking uses nothing up.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Any

from undercroft.services import handing_over, lending, limits, passing_on, tokens
from undercroft.services.clock import DAY_MS
from undercroft.services.refusals import Conflict, Invalid, NotFound
from undercroft.services.rights import OWN, WRITE, Right, require, right_to
from undercroft.store import athletes, devices, offers, rights
from undercroft.store.database import writing
from undercroft.store.feed import athlete_lock
from undercroft.store.offers import OfferRow
from undercroft.store.rights import Sharer

OFFER_MS = 7 * DAY_MS


@dataclass(frozen=True, slots=True)
class Name:
    id: str
    name: str


@dataclass(frozen=True, slots=True)
class OfferSeen:
    """`gives` is read, write or own; `keeps` what whoever hands over keeps, None for nothing."""

    id: str
    coach: str
    gives: str
    keeps: str | None
    athletes: list[Name]
    created_at: int
    expires_at: int
    used_at: int | None
    taker: str | None
    revoked_at: int | None


@dataclass(frozen=True, slots=True)
class OfferOpened(OfferSeen):
    """What the one who opens the link takes over with the athletes, where it hands them over.

    `differing`: exercises that both coaches have; those of the one who opens it would count.
    `phones` that the coach until now paired stay paired.
    """

    differing: list[str]
    phones: int


@dataclass(frozen=True, slots=True)
class OfferMade:
    """`secret` goes into the link and nowhere else."""

    id: str
    secret: str
    expires_at: int


@dataclass(frozen=True, slots=True)
class Accepted:
    """`differing`: exercises that both coaches have; those of the one who accepts count now."""

    gives: str
    athletes: list[Name]
    differing: list[str]


@dataclass(frozen=True, slots=True)
class SharingSeen:
    """Who else has to do with the athlete; offers are told to the athlete's own coach alone."""

    right: str
    owner: str
    coaches: list[Sharer]
    offers: list[OfferSeen]


def sharing_of(coach_id: str, athlete_id: str, now: int) -> SharingSeen:
    right = right_to(coach_id, athlete_id)
    owner = athletes.athlete_with_coach(athlete_id).coach.name
    mine = open_offers(coach_id, now) if right is OWN else []
    open_ = [one for one in mine if any(whom.id == athlete_id for whom in one.athletes)]
    return SharingSeen(right, owner, rights.sharers_of(athlete_id), open_)


def open_offers(coach_id: str, now: int) -> list[OfferSeen]:
    """What the coach has offered and nobody has taken yet, newest first."""
    waiting = [
        row
        for row in offers.offers_of(coach_id)
        if row.used_at is None and row.revoked_at is None and row.expires_at > now
    ]
    return [_seen(row) for row in waiting]


def offer(
    coach_id: str, athlete_ids: Sequence[str], gives: Right, keeps: Right | None, now: int
) -> OfferMade:
    """A link that gives one other coach a right. Raises NotFound, NotAllowed, Invalid."""
    if keeps is not None and gives is not OWN:
        raise Invalid("something is kept though nothing is handed over", "leave keeps out")
    wanted = sorted(set(athlete_ids))
    for athlete_id in wanted:
        require(coach_id, athlete_id, OWN)
    made = OfferMade(tokens.new_id(now), tokens.new_token(), now + OFFER_MS)
    secret_hash = tokens.fingerprint(made.secret)
    with writing():
        offers.add(made.id, coach_id, gives, keeps, secret_hash, now, made.expires_at, wanted)
    return made


def revoke_offer(coach_id: str, offer_id: str, now: int) -> None:
    """Raises NotFound."""
    if not offers.revoke(coach_id, offer_id, now):
        raise NotFound("you have made no such link")


def look(coach_id: str, secret: str, now: int) -> OfferOpened:
    """Who offers what, and what comes with it; uses nothing up. Raises NotFound, TooOften."""
    limits.spend(limits.SHARING, (coach_id,), now)
    found = _open(secret, now)
    over = [id_ for id_, _ in offers.offered(found.id)] if found.gives == OWN else []
    differing = {name for one in over for name in _differing(one, found.coach_id, coach_id)}
    phones = sum(not one.revoked_at for all_ in devices.devices_of(over).values() for one in all_)
    return OfferOpened(**_facts(found), differing=sorted(differing), phones=phones)


def accept(coach_id: str, secret: str, now: int) -> Accepted:
    """Use the link up and take what it gives. Raises NotFound, Conflict, TooOften."""
    limits.spend(limits.SHARING, (coach_id,), now)
    found = _open(secret, now)
    if found.coach_id == coach_id:
        raise Conflict("this is a link of your own", "send it to the coach whom you want to invite")
    differing: set[str] = set()
    with writing():
        if not offers.use(found.id, coach_id, now):
            raise _unusable()
        taken = offers.offered(found.id)
        for athlete_id in sorted(id_ for id_, _ in taken):
            differing.update(_take(found, athlete_id, coach_id, now))
    return Accepted(found.gives, [Name(*one) for one in taken], sorted(differing))


def change(athlete_id: str, coach_id: str, right: Right, now: int) -> None:
    """Let a coach who shares the athlete do more or less. Raises NotFound."""
    with athlete_lock(athlete_id):
        if all(one.id != coach_id for one in rights.sharers_of(athlete_id)):
            raise _no_sharer()
        rights.give(athlete_id, coach_id, right, now)
        if not right.covers(WRITE):
            passing_on.take_back_from(coach_id, athlete_id, now)


def end(athlete_id: str, coach_id: str, now: int) -> None:
    """From now on that coach has nothing to do with the athlete. Raises NotFound."""
    with athlete_lock(athlete_id):
        if not rights.take_back(athlete_id, coach_id):
            raise _no_sharer()
        passing_on.take_back_from(coach_id, athlete_id, now)


def leave(athlete_id: str, coach_id: str, now: int) -> None:
    """A coach gives up the own right. Raises Conflict for the athlete's own coach."""
    if right_to(coach_id, athlete_id) is OWN:
        raise Conflict("this is your own athlete", "hand the athlete over to another coach first")
    end(athlete_id, coach_id, now)


def _take(found: OfferRow, athlete_id: str, coach_id: str, now: int) -> list[str]:
    """Raises NotFound where somebody else was given the athlete while this one waited."""
    with athlete_lock(athlete_id):
        if athletes.coach_of(athlete_id) != found.coach_id:
            raise _unusable()
        if found.gives == OWN:
            return handing_over.hand_over(athlete_id, coach_id, found.keeps, now)
        has = rights.member(coach_id, athlete_id)
        if has is None or not Right(has.level).covers(Right(found.gives)):
            rights.give(athlete_id, coach_id, found.gives, now)
        return []


def _open(secret: str, now: int) -> OfferRow:
    found = offers.open_offer(tokens.fingerprint(secret), now)
    if found is None or not offers.offered(found.id):
        raise _unusable()
    return found


def _differing(athlete_id: str, giver: str, to: str) -> Collection[str]:
    return lending.of_athlete(athlete_id, giver, to).differing.values()


def _seen(row: OfferRow) -> OfferSeen:
    return OfferSeen(**_facts(row))


def _facts(row: OfferRow) -> dict[str, Any]:
    """Of an offer all but whose it is by id."""
    facts = row._asdict()
    del facts["coach_id"]
    return {**facts, "athletes": [Name(*one) for one in offers.offered(row.id)]}


def _unusable() -> NotFound:
    return NotFound("this link cannot be used: it is wrong, used up, revoked or too old")


def _no_sharer() -> NotFound:
    return NotFound("no such coach shares this athlete")
