"""Exercises as a coach looks them up: by themselves, and for one athlete on that athlete's kit."""

from collections.abc import Iterable
from dataclasses import asdict, dataclass

from undercroft.documents.own_exercise import OWN
from undercroft.domain.at_hand import lacking
from undercroft.domain.athlete import Athlete, Injury
from undercroft.domain.errors import LoadError
from undercroft.domain.exercise import Exercise
from undercroft.domain.mechanics.path import Path, path_for
from undercroft.domain.sheet.pieces import pieces_of
from undercroft.services.catalogues import catalogue_of
from undercroft.services.people import athlete_document, injuries_of, kit_document
from undercroft.services.refusals import NotFound
from undercroft.store import athletes, exercises, pictures
from undercroft.store.pictures import Facts


@dataclass(frozen=True, slots=True)
class AvoidedBy:
    """An athlete whose record of injuries says to avoid the exercise."""

    id: str
    name: str
    where: str
    note: str


@dataclass(frozen=True, slots=True)
class ExerciseSeen(Exercise):
    """`own`: the coach's; `own_cues`: in place of the catalogue's; `archived`: offered no more."""

    own: bool = False
    own_cues: bool = False
    archived: bool = False


@dataclass(frozen=True, slots=True)
class ExercisePage:
    exercise: ExerciseSeen
    picture: Facts | None
    avoided_by: list[AvoidedBy]


@dataclass(frozen=True, slots=True)
class WaySeen:
    """Heights above the floor in cm; `measured` by tape, or else worked out from stature."""

    start_cm: float
    end_cm: float
    range_cm: float
    measured: bool


@dataclass(frozen=True, slots=True)
class ForAthlete:
    """`lacking`: what the kit does not have; `avoid`: places that hurt.

    `way` is None where it is not known, and `told_by` then says what would tell: "stature",
    or "tape" where only two tape readings do.
    """

    key: str
    lacking: list[str]
    avoid: list[str]
    way: WaySeen | None
    told_by: str | None


@dataclass(frozen=True, slots=True)
class AthleteExercises:
    """`kit` is its name, None where none was written down."""

    kit: str | None
    stature_cm: float | None
    exercises: list[ForAthlete]


def listed(coach_id: str) -> list[ExerciseSeen]:
    """Every exercise of the coach, archived ones too."""
    rows = {row.key: row for row in exercises.own_of(coach_id)}
    return [
        ExerciseSeen(
            **asdict(one),
            own=one.key.startswith(OWN),
            own_cues=one.key in rows and not one.key.startswith(OWN),
            archived=one.key in rows and rows[one.key].archived_at is not None,
        )
        for one in catalogue_of(coach_id).values()
    ]


def page(coach_id: str, key: str) -> ExercisePage:
    """An exercise, and whom of the own athletes an injury keeps from it. Raises NotFound."""
    known = next((one for one in listed(coach_id) if one.key == key), None)
    if known is None:
        raise NotFound("there is no such exercise")
    return ExercisePage(
        known,
        pictures.one_of(coach_id, key),
        [
            AvoidedBy(row.id, row.name, hurt.where, hurt.note)
            for row in athletes.own_athletes(coach_id)
            for hurt in _keeping_from(injuries_of(row), key)
        ],
    )


def for_athlete(athlete_id: str) -> AthleteExercises:
    """Every exercise for one athlete: what the kit lacks, what hurts, how far it goes."""
    row = athletes.athlete_with_coach(athlete_id)
    known = catalogue_of(row.coach_id)
    athlete, kit = athlete_document(row, known), kit_document(row)
    pieces = pieces_of(kit, athlete)

    def seen(exercise: Exercise) -> ForAthlete:
        here = pieces.find(exercise.implement, exercise.key)
        implement = [] if here else [exercise.implement.replace("-", " ")]
        way, told_by = _way(athlete, exercise)
        hurts = [hurt.where for hurt in _keeping_from(athlete.injuries, exercise.key)]
        missing = [*implement, *(n for n in lacking(kit, exercise) if n not in implement)]
        return ForAthlete(exercise.key, missing, hurts, way, told_by)

    stature = None if athlete.stature_m is None else round(100 * athlete.stature_m, 1)
    name = None if row.kit is None else kit.name
    return AthleteExercises(name, stature, [seen(one) for one in known.values()])


def _keeping_from(injuries: Iterable[Injury], key: str) -> list[Injury]:
    return [hurt for hurt in injuries if key in hurt.avoid]


def _way(athlete: Athlete, exercise: Exercise) -> tuple[WaySeen | None, str | None]:
    try:
        return _in_cm(path_for(athlete, exercise)), None
    except LoadError:
        return None, "tape" if exercise.start_share is None else "stature"


def _in_cm(path: Path) -> WaySeen:
    """A tape is read to the millimetre; what stature says is no better than a centimetre."""
    digits = 1 if path.measured else 0
    start, end = round(100 * path.start_m, digits), round(100 * path.end_m, digits)
    return WaySeen(start, end, round(abs(end - start), digits), path.measured)
