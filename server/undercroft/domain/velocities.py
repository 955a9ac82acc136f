"""What the velocities of a session tell: points of each lift's line, and the maximum of the day."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from undercroft.domain.errors import DomainError
from undercroft.domain.exercise import Catalogue
from undercroft.domain.ledger import SessionRecord
from undercroft.domain.program.block import ExercisePlan, SessionPlan
from undercroft.domain.program.methods import Method
from undercroft.domain.sheet.day import implement_for
from undercroft.domain.sheet.turns import WEIGHTLESS
from undercroft.domain.strength import (
    LoadVelocity,
    VelocityMaximum,
    fit_line,
    maximum_by_velocity,
    maximum_through,
    minimal_velocity,
)
from undercroft.domain.told import Told, sets_by_lift

AS_FAST_AS_POSSIBLE = frozenset(
    {Method.STRAIGHT, Method.TOP_AND_BACK_OFF, Method.SPEED, Method.MAXIMUM_TEST}
)
"""Methods whose fastest repetition belongs to a lift's line; others are slow on purpose."""

Points = Mapping[str, LoadVelocity]
"""By set, its load and the velocity of its fastest repetition."""


def velocity_points(
    plan: SessionPlan, record: SessionRecord, catalogue: Catalogue
) -> dict[str, dict[str, LoadVelocity]]:
    """By lift and set; sets with bands or chains have no place on a line of loads."""
    found: dict[str, dict[str, LoadVelocity]] = defaultdict(dict)
    for exercise in plan.exercises:
        for lift, keys in sets_by_lift(exercise, record).items():
            if lift in catalogue and _on_a_line(exercise, lift, catalogue):
                found[lift].update(_of_exercise(keys, record))
    return {lift: points for lift, points in found.items() if points}


def told_by_velocity(
    lift: str, points: Points, earlier: Sequence[LoadVelocity]
) -> tuple[Told, ...]:
    """The maximum of the day by the session's heaviest load: one reading, for its errors are one.

    By the athlete's own line once there is one, of `earlier` loads and these; before that by the
    lift's general equation, where it has one. Nothing where neither can tell.
    """
    if not points:
        return ()
    key, heaviest = max(points.items(), key=lambda item: item[1].load_kg)
    read = _by_line(lift, heaviest, [*earlier, *points.values()]) or _by_equation(lift, heaviest)
    return () if read is None else (Told(key, read),)


def _on_a_line(plan: ExercisePlan, lift: str, catalogue: Catalogue) -> bool:
    own = lift == plan.exercise
    implement = implement_for(plan, catalogue) if own else catalogue[lift].implement
    free = plan.rig is None and implement not in WEIGHTLESS
    return free and plan.method in AS_FAST_AS_POSSIBLE


def _of_exercise(keys: Sequence[str], record: SessionRecord) -> Iterator[tuple[str, LoadVelocity]]:
    for key in keys:
        done = record.sets.get(key)
        if done is None or done.kind != "done":
            continue
        load, velocities = done.body.get("load_kg"), done.body.get("velocities_m_s")
        if load and velocities and max(velocities) > 0:
            yield key, LoadVelocity(float(load), float(max(velocities)))


def _by_line(
    lift: str, point: LoadVelocity, points: Sequence[LoadVelocity]
) -> VelocityMaximum | None:
    try:
        minimal = minimal_velocity(lift).velocity
        return maximum_through(fit_line(points, minimal), lift, minimal, point)
    except DomainError:
        return None


def _by_equation(lift: str, point: LoadVelocity) -> VelocityMaximum | None:
    try:
        return maximum_by_velocity(lift, point.load_kg, point.velocity)
    except DomainError:
        return None
