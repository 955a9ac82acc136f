"""A block: weeks, sessions, exercises, sets. Every level has a key that survives reordering."""

from dataclasses import dataclass

from undercroft.domain.program.methods import Details, Method
from undercroft.domain.program.progression import Progression
from undercroft.domain.program.rig import Rig
from undercroft.domain.program.wish import LoadWish
from undercroft.domain.warmup import RampStep


@dataclass(frozen=True, slots=True)
class Rest:
    """A rest range in seconds: go from `from_s` on, by `to_s` at the latest."""

    from_s: int
    to_s: int


@dataclass(frozen=True, slots=True)
class SetPlan:
    """One set as the coach wrote it.

    `reps` is the aim; with `to_failure` the set goes on past it until no further repetition
    succeeds. `rir` is the planned repetitions in reserve where it is not the load wish itself.
    """

    key: str
    load: LoadWish
    reps: int | None = None
    rir: float | None = None
    to_failure: bool = False
    seconds: float | None = None
    distance_m: float | None = None
    blocks: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class ExercisePlan:
    """An exercise of a session. Those that share a `group` are done in rounds."""

    key: str
    exercise: str
    method: Method
    sets: tuple[SetPlan, ...]
    implement: str | None = None
    group: str | None = None
    rest: Rest | None = None
    cue: str = ""
    details: Details | None = None
    rig: Rig | None = None
    warm_up: tuple[RampStep, ...] | None = None
    tolerance_percent: float = 0.0
    hold_the_plan: bool = False
    progression: Progression | None = None


@dataclass(frozen=True, slots=True)
class SessionPlan:
    """A session on a day of the week: 1 is Monday, 7 is Sunday (ISO 8601)."""

    key: str
    name: str
    day: int
    exercises: tuple[ExercisePlan, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Week:
    key: str
    name: str
    sessions: tuple[SessionPlan, ...]


@dataclass(frozen=True, slots=True)
class Block:
    key: str
    name: str
    weeks: tuple[Week, ...]
    note: str = ""
