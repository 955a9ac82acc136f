"""A coach's own exercises and cues: added, changed, archived, removed."""

from collections.abc import Sequence, Set
from typing import Any

from undercroft.documents.canonical import plain
from undercroft.documents.catalogue import catalogue
from undercroft.documents.own_exercise import OWN, OwnExerciseShape, read_own
from undercroft.domain.exercise import Exercise
from undercroft.services import planning
from undercroft.services.catalogues import catalogue_of
from undercroft.services.refusals import Conflict, NotFound
from undercroft.store import athletes, exercises, pictures
from undercroft.store.database import writing
from undercroft.store.feed import athlete_lock


def add(coach_id: str, data: Any, now: int) -> str:
    """Keep a new exercise and return its key. Raises FaultyDocument."""
    with writing():
        read = read_own(data, catalogue_of(coach_id))
        exercises.keep(coach_id, read.key, _document(read), now)
    return read.key


def change(coach_id: str, key: str, data: Any, now: int) -> None:
    """Keep it as it is now; its key stays whatever its name. Raises NotFound, FaultyDocument."""
    _require_own(coach_id, key)
    read = read_own(data, catalogue_of(coach_id), key)
    with writing():
        exercises.keep(coach_id, key, _document(read), now)
    bring_sheets_up_to_date(coach_id, {key})


def archive(coach_id: str, key: str, now: int | None) -> None:
    """Offer it no more; None offers it again. What names it goes on as before. Raises NotFound."""
    _require_own(coach_id, key)
    with writing():
        exercises.archive(coach_id, key, now)


def remove(coach_id: str, key: str) -> None:
    """Forget an exercise that nothing names. Raises NotFound, Conflict."""
    _require_own(coach_id, key)
    with writing():
        named = list(exercises.places_naming(coach_id, key))
        if named:
            raise Conflict(f"it stands in {' and in '.join(named)}", "archive it instead")
        exercises.remove(coach_id, key)
        pictures.remove(coach_id, key)


def set_cues(coach_id: str, key: str, cues: Sequence[str], now: int) -> None:
    """Own cues for an exercise of the catalogue; none leave the catalogue's. Raises NotFound."""
    if key not in catalogue():
        raise NotFound("there is no such exercise in the catalogue")
    with writing():
        if cues:
            exercises.keep(coach_id, key, {"cues": list(cues)}, now)
        else:
            exercises.remove(coach_id, key)
    bring_sheets_up_to_date(coach_id, {key})


def _document(read: Exercise) -> dict[str, Any]:
    """Without its key, which stands beside it."""
    document: dict[str, Any] = plain(OwnExerciseShape(exclude=("key",)).dump(read))
    return document


def _require_own(coach_id: str, key: str) -> None:
    if not key.startswith(OWN) or exercises.one_of(coach_id, key) is None:
        raise NotFound("there is no such exercise of your own")


def bring_sheets_up_to_date(coach_id: str, keys: Set[str]) -> None:
    """Of sessions not yet begun, for those who train by it or may do it instead."""
    known = catalogue_of(coach_id)
    for athlete in athletes.own_athletes(coach_id):
        now = planning.current(athlete.id)
        if now is not None and keys & planning.exercises_of(now.block, known):
            with athlete_lock(athlete.id) as row:
                planning.refresh(row)
