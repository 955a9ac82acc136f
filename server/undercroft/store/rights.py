"""Which coaches have to do with an athlete, and how far: the view `in_squad`, and what fills it."""

from typing import NamedTuple

from undercroft.store.models import CoachRight
from undercroft.store.sql import rows


class Member(NamedTuple):
    """An athlete as one coach sees them; `level` is own, read or write, `owner` whose they are."""

    athlete_id: str
    name: str
    level: str
    owner: str
    created_at: int


_MEMBERS = (
    "SELECT a.id, a.name, s.level, c.name, a.created_at FROM in_squad AS s"
    " JOIN athlete AS a ON a.id = s.athlete_id JOIN coach AS c ON c.id = a.coach_id"
    " WHERE s.coach_id = ?"
)


def members_of(coach_id: str) -> list[Member]:
    """Everybody whom the coach may at least read, by name; their documents stay unread."""
    return [Member(*row) for row in rows(f"{_MEMBERS} ORDER BY a.name, a.id", coach_id)]


def member(coach_id: str, athlete_id: str) -> Member | None:
    """The athlete, if the coach may at least read of them."""
    found = rows(f"{_MEMBERS} AND s.athlete_id = ?", coach_id, athlete_id)
    return Member(*found[0]) if found else None


class Sharer(NamedTuple):
    """Another coach with a right to the athlete."""

    id: str
    name: str
    right: str
    given_at: int


def sharers_of(athlete_id: str) -> list[Sharer]:
    """By name."""
    found = rows(
        "SELECT c.id, c.name, r.level, r.given_at FROM coach_right AS r"
        " JOIN coach AS c ON c.id = r.coach_id WHERE r.athlete_id = ? ORDER BY c.name, c.id",
        athlete_id,
    )
    return [Sharer(*row) for row in found]


def give(athlete_id: str, coach_id: str, level: str, now: int) -> None:
    """Let another coach read, or read and write; in place of what they could do before."""
    CoachRight.insert(athlete=athlete_id, coach=coach_id, level=level, given_at=now).on_conflict(
        conflict_target=[CoachRight.athlete, CoachRight.coach],
        update={CoachRight.level: level, CoachRight.given_at: now},
    ).execute()


def take_all_back(athlete_id: str) -> None:
    CoachRight.delete().where(CoachRight.athlete == athlete_id).execute()


def take_back(athlete_id: str, coach_id: str) -> bool:
    """Whether there was anything to take back."""
    mine = (CoachRight.athlete == athlete_id) & (CoachRight.coach == coach_id)
    return bool(CoachRight.delete().where(mine).execute())
