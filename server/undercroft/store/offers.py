"""Links by which coaches give each other rights to athletes; used up in one statement."""

from typing import NamedTuple

from undercroft.store.models import Offer, OfferedAthlete
from undercroft.store.sql import rows, run


class OfferRow(NamedTuple):
    """An offer without its secret; `taker` is the name of the coach who accepted it."""

    id: str
    coach_id: str
    coach: str
    gives: str
    keeps: str | None
    created_at: int
    expires_at: int
    used_at: int | None
    taker: str | None
    revoked_at: int | None


_SELECT = (
    "SELECT o.id, o.coach_id, c.name, o.gives, o.keeps, o.created_at, o.expires_at, o.used_at,"
    " t.name, o.revoked_at FROM offer AS o JOIN coach AS c ON c.id = o.coach_id"
    " LEFT JOIN coach AS t ON t.id = o.used_by"
)
_OPEN = "used_at IS NULL AND revoked_at IS NULL AND expires_at > ?"


def add(
    offer_id: str,
    coach_id: str,
    gives: str,
    keeps: str | None,
    secret_hash: str,
    now: int,
    expires_at: int,
    athlete_ids: list[str],
) -> None:
    Offer.insert(
        id=offer_id,
        coach=coach_id,
        gives=gives,
        keeps=keeps,
        secret_hash=secret_hash,
        created_at=now,
        expires_at=expires_at,
    ).execute()
    OfferedAthlete.insert_many(
        [{"offer": offer_id, "athlete": athlete_id} for athlete_id in athlete_ids]
    ).execute()


def offers_of(coach_id: str) -> list[OfferRow]:
    """Newest first, used and revoked ones among them."""
    found = rows(f"{_SELECT} WHERE o.coach_id = ? ORDER BY o.created_at DESC, o.id", coach_id)
    return [OfferRow(*row) for row in found]


def open_offer(secret_hash: str, now: int) -> OfferRow | None:
    """The offer, if it can still be used."""
    found = rows(f"{_SELECT} WHERE o.secret_hash = ? AND {_OPEN}", secret_hash, now)
    return OfferRow(*found[0]) if found else None


def offered(offer_id: str) -> list[tuple[str, str]]:
    """Id and name of the athletes in it who are still the offering coach's, by name."""
    return [
        (id_, name)
        for id_, name in rows(
            "SELECT a.id, a.name FROM offered_athlete AS f JOIN offer AS o ON o.id = f.offer_id"
            " JOIN athlete AS a ON a.id = f.athlete_id AND a.coach_id = o.coach_id"
            " WHERE f.offer_id = ? ORDER BY a.name, a.id",
            offer_id,
        )
    ]


class HandedOver(NamedTuple):
    """When an athlete came to their coach, and from whom."""

    at: int
    by: str


def handed_over(athlete_id: str) -> HandedOver | None:
    """None for an athlete whom the coach added."""
    found = rows(
        "SELECT o.used_at, c.name FROM offered_athlete AS f JOIN offer AS o ON o.id = f.offer_id"
        " JOIN coach AS c ON c.id = o.coach_id JOIN athlete AS a ON a.id = f.athlete_id"
        " WHERE f.athlete_id = ? AND o.gives = 'own' AND o.used_by = a.coach_id"
        " ORDER BY o.used_at DESC LIMIT 1",
        athlete_id,
    )
    return HandedOver(*found[0]) if found else None


def use(offer_id: str, coach_id: str, now: int) -> bool:
    """Use it up; False when somebody else was faster or it has expired meanwhile."""
    found = rows(
        f"UPDATE offer SET used_at = ?, used_by = ? WHERE id = ? AND {_OPEN} RETURNING id",
        now, coach_id, offer_id, now,
    )  # fmt: skip
    return bool(found)


def revoke(coach_id: str, offer_id: str, now: int) -> bool:
    """Whether the coach has such an offer."""
    mine = (Offer.id == offer_id) & (Offer.coach == coach_id)
    Offer.update(revoked_at=now).where(mine, Offer.revoked_at.is_null()).execute()
    return bool(Offer.select().where(mine).exists())


def forget_athlete(athlete_id: str) -> None:
    """No open offer gives this athlete any more."""
    run(
        "DELETE FROM offered_athlete WHERE athlete_id = ?"
        " AND offer_id IN (SELECT id FROM offer WHERE used_at IS NULL)",
        athlete_id,
    )


def forget_empty() -> None:
    """Offers in which nobody is left."""
    run("DELETE FROM offer WHERE id NOT IN (SELECT offer_id FROM offered_athlete)")
