"""Hard sets for each muscle and week.

A set within four repetitions of failure is hard. It counts whole for the prime muscles and half for
the helpers: of whole, half and none for indirect sets, half is best borne out (Pelland et al. 2024,
67 studies, seen). A one-sided set is both sides and counts once.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from undercroft.domain.exercise import Catalogue, Exercise
from undercroft.domain.program.methods import Method
from undercroft.domain.program.monitoring.done import DoneSet

WITHIN_REPS = 4.0
"""Repetitions in reserve up to which a set is hard."""

FOR_HELPERS = 0.5

COUNTED_APART = frozenset({Method.SPEED, Method.HOLD, Method.TIMED, Method.WARM_UP})
"""Methods that are work of another kind: our own choice."""


@dataclass(frozen=True, slots=True)
class WeekOfSets:
    """`by_muscle` are hard sets; `untold` sets were done with no word of the reserve."""

    monday: date
    by_muscle: Mapping[str, float]
    untold: int


def counts_for(exercise: Exercise) -> dict[str, float]:
    """What one hard set of the exercise counts, by muscle."""
    helped = dict.fromkeys(exercise.helpers, FOR_HELPERS)
    return {**helped, **dict.fromkeys(exercise.prime, 1.0)}


def is_hard(one: DoneSet) -> bool | None:
    """Was the set within four repetitions of failure? None where nobody said."""
    if one.method in COUNTED_APART:
        return False
    if one.to_failure:
        return True
    return None if one.rir is None else one.rir <= WITHIN_REPS


def hard_sets(sets: Iterable[DoneSet], catalogue: Catalogue) -> tuple[WeekOfSets, ...]:
    """Weeks from Monday on in which anything was done, oldest first."""
    weeks: dict[date, dict[tuple[str, str], DoneSet]] = defaultdict(dict)
    for one in sets:
        monday = one.on - timedelta(days=one.on.weekday())
        # Both sides of a one-sided set have one key, and the harder of the two decides.
        known = weeks[monday].get((one.session, one.key))
        if known is None or not is_hard(known):
            weeks[monday][one.session, one.key] = one
    return tuple(_week(monday, weeks[monday].values(), catalogue) for monday in sorted(weeks))


def _week(monday: date, sets: Iterable[DoneSet], catalogue: Catalogue) -> WeekOfSets:
    by_muscle: dict[str, float] = defaultdict(float)
    untold = 0
    for one in sets:
        hard = is_hard(one)
        untold += hard is None
        if hard and one.exercise in catalogue:
            for muscle, count in counts_for(catalogue[one.exercise]).items():
                by_muscle[muscle] += count
    return WeekOfSets(monday, dict(by_muscle), untold)
