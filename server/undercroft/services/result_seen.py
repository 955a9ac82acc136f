"""What the desk sees of results: sets, exercises and sessions, planned against done."""

from dataclasses import dataclass, field

from undercroft.services.occlusion_results import OcclusionSeen, WornSeen


@dataclass(frozen=True, slots=True)
class Planned:
    """What was asked for in a set."""

    reps: int | None
    rir: float | None
    load_kg: float | None
    seconds: float | None
    to_failure: bool = False
    distance_m: float | None = None
    blocks: list[int] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Done:
    """What became of a set; `two_answers` where two phones differ, `wild` beyond the gate.

    `mean_m_s` is the mean of the velocities of its repetitions.
    """

    kind: str
    load_kg: float | None
    reps: int | None
    rir: float | None
    to_failure: bool
    seconds: float | None
    distance_m: float | None
    blocks: list[int]
    velocities_m_s: list[float]
    mean_m_s: float | None
    quality: int | None
    side: str | None
    tightness: float | None
    why: str | None
    at: str
    two_answers: bool
    wild: bool


@dataclass(frozen=True, slots=True)
class SetResult:
    """`sides` where left and right were told apart; `done` is then the later one.

    `instead` names what the set was done as, where that is not what was planned.
    """

    key: str
    number: int
    planned: Planned
    done: Done | None
    sides: list[Done] = field(default_factory=list)
    instead: str | None = None


@dataclass(frozen=True, slots=True)
class ExerciseResult:
    """`done_instead` is the name of the exercise that was done in place of the planned one.

    `why_instead` is what failed there, as the athlete chose it.
    """

    key: str
    name: str
    method: str
    done_instead: str | None
    why_instead: str | None
    sets: list[SetResult]
    occlusion: OcclusionSeen | None


@dataclass(frozen=True, slots=True)
class SessionResult:
    """`state` is planned, started, finished or stopped: silence is not told as absence."""

    revision: int
    session: str
    name: str
    week_name: str
    day: int
    on: str | None
    state: str
    started_at: str | None
    finished_at: str | None
    rpe: float | None
    minutes: int | None
    comment: str | None
    why_stopped: str | None
    exercises: list[ExerciseResult]
    worn: list[WornSeen]


@dataclass(frozen=True, slots=True)
class OutsideSet:
    """`added_to` is the exercise to which the athlete added it, as far as that was said."""

    key: str
    added_to: str | None
    done: Done


@dataclass(frozen=True, slots=True)
class OutsideResult:
    """Work that no sheet has a place for; `why` says what is not known here."""

    revision: int | None
    session: str
    why: str
    at: str | None
    rpe: float | None
    minutes: int | None
    comment: str | None
    why_stopped: str | None
    sets: list[OutsideSet]


@dataclass(frozen=True, slots=True)
class MessageSeen:
    """What the athlete wrote; `at` is what the phone's clock said."""

    id: str
    at: str
    text: str


@dataclass(frozen=True, slots=True)
class Results:
    """Sessions of the plan, what was done outside of it, and messages; the latest first."""

    sessions: list[SessionResult]
    outside: list[OutsideResult]
    messages: list[MessageSeen]
