"""The exercises that a coach can prescribe: the catalogue with own cues, and own exercises.

Archived ones are in it, because what was sent may name them.
"""

from collections.abc import Iterable
from dataclasses import replace

from undercroft.documents.catalogue import catalogue
from undercroft.documents.made import made
from undercroft.documents.own_exercise import OwnExerciseShape
from undercroft.domain.exercise import Catalogue, Exercise
from undercroft.store import exercises
from undercroft.store.models import OwnExercise


def catalogue_of(coach_id: str) -> Catalogue:
    """The coach's, by key."""
    return with_own(exercises.own_of(coach_id))


def catalogue_for(athlete_id: str) -> Catalogue:
    """That of the athlete's coach."""
    return with_own(exercises.own_for(athlete_id))


def with_own(rows: Iterable[OwnExercise]) -> Catalogue:
    """The catalogue with these, one to a key."""
    known, own = catalogue(), {row.key: row for row in rows}
    gone = {key for key, row in own.items() if row.archived_at is not None}
    return {**known, **{key: _own(row, known, gone) for key, row in own.items()}}


def _own(row: OwnExercise, known: Catalogue, gone: set[str]) -> Exercise:
    """Without alternatives that were archived since: nobody is offered those."""
    if row.key in known:
        return replace(known[row.key], cues=tuple(row.document["cues"]))
    read: Exercise = made(OwnExerciseShape).load({**row.document, "key": row.key})
    return replace(read, alternatives=tuple(a for a in read.alternatives if a not in gone))
