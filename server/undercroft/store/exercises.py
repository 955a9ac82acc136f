"""A coach's own exercises, and own cues for exercises of the catalogue."""

from collections.abc import Collection, Iterator
from typing import Any

from undercroft.store.models import Athlete, OwnExercise
from undercroft.store.sql import rows


def own_of(coach_id: str) -> list[OwnExercise]:
    """Archived ones too, by key."""
    return list(OwnExercise.select().where(OwnExercise.coach == coach_id).order_by(OwnExercise.key))


def own_for(athlete_id: str) -> list[OwnExercise]:
    """Those of the athlete's coach."""
    with_athlete = OwnExercise.select().join(Athlete, on=(Athlete.coach == OwnExercise.coach))
    return list(with_athlete.where(Athlete.id == athlete_id).order_by(OwnExercise.key))


def one_of(coach_id: str, key: str) -> OwnExercise | None:
    return OwnExercise.get_or_none(OwnExercise.coach == coach_id, OwnExercise.key == key)


def keep(coach_id: str, key: str, document: Any, now: int) -> None:
    """Add it, or put it in place of what has the key."""
    OwnExercise.insert(
        coach=coach_id, key=key, document=document, changed_at=now, archived_at=None
    ).on_conflict(
        conflict_target=[OwnExercise.coach, OwnExercise.key],
        update={OwnExercise.document: document, OwnExercise.changed_at: now},
    ).execute()


def note_lent(coach_id: str, key: str, lender: str, digest: str) -> None:
    """What stands there now is a copy of that coach's."""
    _that(OwnExercise.update(lent_by=lender, lent_digest=digest), coach_id, key)


def archive(coach_id: str, key: str, at: int | None) -> None:
    """None brings it back."""
    _that(OwnExercise.update(archived_at=at), coach_id, key)


def remove(coach_id: str, key: str) -> None:
    _that(OwnExercise.delete(), coach_id, key)


def _that(query: Any, coach_id: str, key: str) -> None:
    query.where(OwnExercise.coach == coach_id, OwnExercise.key == key).execute()


PLACES = {
    "a block": "SELECT document FROM block WHERE coach_id = ?",
    "a revision": """SELECT revision.document FROM revision
        JOIN athlete ON athlete.id = revision.athlete_id WHERE coach_id = ?""",
    "an athlete's own changes": """SELECT own_layer.document FROM own_layer
        JOIN block ON block.id = own_layer.block WHERE coach_id = ?""",
    "a load sheet": """SELECT sheet.document FROM sheet
        JOIN athlete ON athlete.id = sheet.athlete_id WHERE coach_id = ?""",
    "an athlete's document": """SELECT document FROM athlete
        WHERE document IS NOT NULL AND coach_id = ?""",
    "a kit": "SELECT kit FROM athlete WHERE kit IS NOT NULL AND coach_id = ?",
    "another exercise": "SELECT document FROM own_exercise WHERE coach_id = ?",
}
"""Where an exercise may be named."""


ABOUT_ATHLETE = """
    SELECT document FROM revision WHERE athlete_id = ?
    UNION ALL SELECT document FROM sheet WHERE athlete_id = ?
    UNION ALL SELECT document FROM athlete WHERE id = ? AND document IS NOT NULL
    UNION ALL SELECT body FROM entry WHERE athlete_id = ? AND body IS NOT NULL
    UNION ALL SELECT '"' || lift || '"' FROM tracker_state WHERE athlete_id = ?
    UNION ALL SELECT '"' || exercise || '"' FROM last_done WHERE athlete_id = ?"""


def named_of_athlete(athlete_id: str, keys: Collection[str]) -> set[str]:
    """Which of these exercises anything about the athlete names."""
    many = [athlete_id] * ABOUT_ATHLETE.count("?")
    texts = [str(text) for (text,) in rows(ABOUT_ATHLETE, *many)] if keys else []
    return {key for key in keys if any(f'"{key}"' in text for text in texts)}


def places_naming(coach_id: str, key: str) -> Iterator[str]:
    """Sorts of documents that name the exercise; its own is none, because a key is not in it."""
    named = f'"{key}"'
    for place, sql in PLACES.items():
        if any(named in str(text) for (text,) in rows(sql, coach_id)):
            yield place
