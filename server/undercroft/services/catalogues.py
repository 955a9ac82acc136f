"""The exercises that a coach can prescribe: the catalogue with own cues, and own exercises.

Archived ones are in it, because what was sent may name them.
"""

from collections.abc import Sequence
from dataclasses import replace

from undercroft.documents.catalogue import catalogue
from undercroft.documents.made import made
from undercroft.documents.own_exercise import OWN, OwnExerciseShape
from undercroft.domain.exercise import Catalogue, Exercise
from undercroft.store import exercises
from undercroft.store.models import OwnExercise


def catalogue_of(coach_id: str) -> Catalogue:
    """The coach's, by key."""
    return _with(exercises.own_of(coach_id))


def catalogue_for(athlete_id: str) -> Catalogue:
    """That of the athlete's coach."""
    return _with(exercises.own_for(athlete_id))


def catalogue_around(athlete_id: str) -> Catalogue:
    """That of the athlete's coach, and beside it what coaches who share the athlete have added.

    To work a draft out that another coach writes. What is sent is lent to the athlete's coach
    (`lending.py`), so that reading it needs no other catalogue than theirs.
    """
    return _with(exercises.own_around(athlete_id, OWN))


def _with(rows: Sequence[OwnExercise]) -> Catalogue:
    """Of two under one key the later one counts, and whether that was archived."""
    known, own = catalogue(), {row.key: row for row in rows}
    gone = {key for key, row in own.items() if row.archived_at is not None}
    return {**known, **{key: _own(row, known, gone) for key, row in own.items()}}


def _own(row: OwnExercise, known: Catalogue, gone: set[str]) -> Exercise:
    """Without alternatives that were archived since: nobody is offered those."""
    if row.key in known:
        return replace(known[row.key], cues=tuple(row.document["cues"]))
    read: Exercise = made(OwnExerciseShape).load({**row.document, "key": row.key})
    return replace(read, alternatives=tuple(a for a in read.alternatives if a not in gone))
