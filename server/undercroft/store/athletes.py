"""Athletes; which coach may see them is asked of `rights`."""

from typing import Any

from undercroft.store.models import Athlete, Coach
from undercroft.store.sql import rows


def add_athlete(athlete_id: str, coach_id: str, name: str, now: int) -> None:
    Athlete.insert(id=athlete_id, coach=coach_id, name=name, position=0, created_at=now).execute()


def own_athletes(coach_id: str) -> list[Athlete]:
    """The coach's own, by name; what others share is not among them."""
    return list(
        Athlete.select().where(Athlete.coach == coach_id).order_by(Athlete.name, Athlete.id)
    )


def is_known(athlete_id: str) -> bool:
    """Is this anybody's athlete here?"""
    return bool(rows("SELECT 1 FROM athlete WHERE id = ?", athlete_id))


def athlete_with_coach(athlete_id: str) -> Athlete:
    """The athlete with its coach's name at hand."""
    return Athlete.select(Athlete, Coach).join(Coach).where(Athlete.id == athlete_id).get()


def coach_of(athlete_id: str) -> str:
    """Whose athlete it is."""
    ((coach_id,),) = rows("SELECT coach_id FROM athlete WHERE id = ?", athlete_id)
    return str(coach_id)


def give_to(athlete_id: str, coach_id: str) -> None:
    Athlete.update(coach=coach_id).where(Athlete.id == athlete_id).execute()


def keep_document(athlete_id: str, name: str, document: Any) -> None:
    Athlete.update(name=name, document=document).where(Athlete.id == athlete_id).execute()


def keep_kit(athlete_id: str, document: Any) -> None:
    Athlete.update(kit=document).where(Athlete.id == athlete_id).execute()
