"""Power over the sets of a speed exercise: the best set, the rise before it, the drop after it.

In common practice the work is livelier after two or three sets, best at four or five, and tired by
eight.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from undercroft.domain.program.methods import Method
from undercroft.domain.program.monitoring.done import DoneSet
from undercroft.domain.strength.power import SetPower, set_power


@dataclass(frozen=True, slots=True)
class Course:
    """`best` is the number of the best set, from 1.

    Rise from the first set to the best, and drop from the best to the last, are in percent of the
    first and of the best.
    """

    best: int
    best_w: float
    rise_percent: float
    drop_percent: float


@dataclass(frozen=True, slots=True)
class SpeedWork:
    """A speed exercise of one session, set by set.

    Of the `sets`, `powers` has None for one without velocities, `qualities` for one without a
    rating; `course` is over those that were measured, numbered as done, None where none was.
    """

    on: date
    session: str
    exercise: str
    sets: tuple[DoneSet, ...]
    powers: tuple[SetPower | None, ...]
    qualities: tuple[int | None, ...]
    course: Course | None


def course_of(watts: Sequence[float | None]) -> Course | None:
    """The course of mean power over sets; of equal bests the first counts."""
    measured = [(w, number) for number, w in enumerate(watts, start=1) if w]
    if not measured:
        return None
    best_w, best = max(measured, key=lambda one: (one[0], -one[1]))
    first, last = measured[0][0], measured[-1][0]
    return Course(best, best_w, 100 * (best_w - first) / first, 100 * (best_w - last) / best_w)


def speed_work(
    sets: Iterable[DoneSet], body_kg: Mapping[str, float] | None = None
) -> tuple[SpeedWork, ...]:
    """Every speed exercise of every session, in the order of the days.

    `body_kg` is, by exercise, the body mass that the lift moves, where the coach counts it.
    """
    groups: dict[tuple[date, str, str], list[DoneSet]] = defaultdict(list)
    for one in sets:
        if one.method is Method.SPEED:
            groups[one.on, one.session, one.exercise].append(one)
    body = body_kg or {}
    return tuple(
        _work(on, session, exercise, groups[on, session, exercise], body.get(exercise, 0.0))
        for on, session, exercise in sorted(groups, key=lambda group: group[0])
    )


def _work(
    on: date, session: str, exercise: str, sets: Sequence[DoneSet], body_kg: float
) -> SpeedWork:
    powers = tuple(_power(one, body_kg) for one in sets)
    course = course_of([None if one is None else one.mean_w for one in powers])
    qualities = tuple(one.quality for one in sets)
    return SpeedWork(on, session, exercise, tuple(sets), powers, qualities, course)


def _power(one: DoneSet, body_kg: float) -> SetPower | None:
    moved = [v for v in one.velocities if v > 0]
    if not moved or one.resistance_kg is None:
        return None
    return set_power(one.resistance_kg, moved, body_kg)
