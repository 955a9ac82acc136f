"""Random athletes, lifts, kits, plans and outcomes for walks through notch tables.

All of it is invented. A scenario is a function of its seed alone. The simulated athlete has a true
level, a form of the day and a curve of their own, and calls the reserve with an error of 0.7
repetitions; now and then sets are skipped, cut short, done with another load, or mistyped.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import exp, log
from random import Random

from undercroft.domain.strength import (
    DEFAULT,
    HANDBOOK,
    PlannedSession,
    PlannedSet,
    PlannedTest,
    PlannedTurn,
    RepCurve,
    SetDone,
    StrengthSettings,
    TestedMax,
    TrackerState,
    curve_of,
    novice,
    start_from_guess,
    take_session,
)
from undercroft.domain.strength.reserve import lean, log_share

Plan = PlannedSet | PlannedTest


@dataclass(frozen=True)
class Manners:
    """How often an athlete skips a set, does another than planned, mistypes, or adds one."""

    skips: float = 0.0
    strays: float = 0.0
    mistypes: float = 0.0
    adds: float = 0.0


FAITHFUL = Manners()
ORDINARY = Manners(skips=0.05, strays=0.1)
CARELESS = Manners(skips=0.3, strays=0.3, mistypes=0.15, adds=0.2)


@dataclass(frozen=True)
class Athlete:
    """The truth that the tracker does not see."""

    level: float
    tilt: float


def plan_of(rng: Random) -> tuple[Plan, ...]:
    """The evidence of one session: straight sets, a top set and back-offs, a wave, anything."""
    kind = rng.choice(("straight", "straight", "top", "top", "pyramid", "wave", "any", "test"))
    reserve = rng.choice((0.0, 1.0, 1.5, 2.0, 3.0))
    if kind == "straight":
        return (PlannedSet(rng.choice((2, 3, 5, 6, 8, 10, 12)), reserve),) * rng.randint(2, 6)
    if kind == "top":
        top = PlannedSet(rng.choice((1, 2, 3, 5)), rng.choice((0.0, 1.0, 2.0)))
        return (top, *(PlannedSet(rng.choice((5, 6, 8, 10)), reserve),) * rng.randint(1, 4))
    if kind == "pyramid":
        return tuple(PlannedSet(reps, reserve) for reps in (12, 10, 8, 6, 4)[: rng.randint(3, 5)])
    if kind == "wave":
        return tuple(PlannedSet(reps, reserve) for reps in (5, 3, 2)) * 2
    if kind == "test":
        return (PlannedTest(),) * rng.randint(1, 3)
    count = rng.randint(1, 6)
    return tuple(
        PlannedSet(rng.randint(1, 11), rng.choice((0.0, 1.0, 2.0, 3.0, 4.0))) for _ in range(count)
    )


def loads_of(rng: Random) -> tuple[float, ...]:
    """Loads of an invented kit: a bar with small or large plates, dumbbells, or a stack."""
    least, step, most = rng.choice(
        ((20, 2.5, 320), (20, 5, 300), (15, 1, 200), (4, 2, 60), (5, 5, 150), (20, 0.5, 260))
    )
    return tuple(least + step * i for i in range(int((most - least) / step) + 1))


def true_n(athlete: Athlete, form: float, load_kg: float, curve: RepCurve) -> float:
    """Repetitions to failure that this athlete has with this load today, 0.5 to 20."""
    spare = athlete.level + form - log(load_kg)
    ends = [(n, spare + athlete.tilt * lean(n, curve) + log_share(n, curve)) for n in range(1, 16)]
    if ends[0][1] <= 0:
        return 0.5
    for (n, over), (_, under) in pairwise(ends):
        if under <= 0:
            return n + over / (over - under)
    return 20.0


def reported(
    rng: Random, planned: Plan, load_kg: float, n: float, manners: Manners
) -> tuple[float, float, float] | None:
    """(load, reps, reserve) as the athlete reports it; None where it is no evidence."""
    if rng.random() < manners.skips:
        return None
    if rng.random() < manners.mistypes:
        load_kg *= rng.choice((0.1, 0.5, 1.25, 2.0, 10.0))
    wanted = planned.reps if isinstance(planned, PlannedSet) else 1
    if rng.random() < manners.strays:
        wanted = max(1, wanted + rng.choice((-3, -2, -1, 1, 2, 4)))
    reps = min(wanted, int(n))
    left = 0.0 if reps < wanted else max(0.0, round(2 * (n - reps + rng.gauss(0, 0.7))) / 2)
    return (load_kg, reps, left) if reps >= 1 and reps + left <= 15 else None


@dataclass(frozen=True)
class Scenario:
    """An athlete with a tracker that has seen `seen` sessions, and sessions still to come."""

    rng: Random
    athlete: Athlete
    state: TrackerState
    sessions: tuple[PlannedSession, ...]
    loads: tuple[float, ...]
    settings: StrengthSettings
    curve: RepCurve


def scenario(seed: int, ahead: int = 1, least_seen: int = 0) -> Scenario:
    """The athlete, the kit and the plan of a seed, before anything ahead is done."""
    rng = Random(seed)
    loads = loads_of(rng)
    curve = rng.choice((HANDBOOK, HANDBOOK, HANDBOOK, curve_of("brzycki"), curve_of("wathan")))
    settings = rng.choice((DEFAULT, DEFAULT, novice()))
    kg = exp(rng.uniform(log(loads[0] * 2.5), log(loads[-1] * 0.8)))
    tilt = rng.gauss(0, settings.tilt_sd)
    athlete = Athlete(log(kg), tilt)
    state = start_from_guess(
        kg * exp(rng.gauss(0, 0.07)), rng.uniform(0.04, 0.1), 0, settings, curve
    )
    days = 0.0
    for _ in range(least_seen or rng.choice((0, 0, 1, 2, 5, 12, 24))):
        days += rng.choice((2, 3, 4, 7))
        state, athlete = _trained(rng, state, athlete, days, settings, curve)
    sessions = []
    for _ in range(ahead):
        days += rng.choice((2, 3, 4, 7))
        sessions.append(PlannedSession(days, tuple(_turn(rng, one) for one in plan_of(rng))))
    return Scenario(rng, athlete, state, tuple(sessions), loads, settings, curve)


def _turn(rng: Random, planned: Plan) -> PlannedTurn:
    if isinstance(planned, PlannedTest) or rng.random() < 0.3:
        return PlannedTurn(planned, 1)
    return PlannedTurn(planned, planned.reps + planned.rir)


def _trained(
    rng: Random,
    state: TrackerState,
    athlete: Athlete,
    days: float,
    settings: StrengthSettings,
    curve: RepCurve,
) -> tuple[TrackerState, Athlete]:
    """One session before the walk begins, with loads that the tracker would give."""
    athlete = Athlete(athlete.level + rng.gauss(0.001, 0.01), athlete.tilt)
    form = rng.gauss(0, settings.form_sd)
    evidence: list[SetDone | TestedMax] = []
    for planned in plan_of(rng):
        n = planned.reps + planned.rir if isinstance(planned, PlannedSet) else 1
        load = exp(state.level + state.tilt * lean(n, curve) + log_share(n, curve))
        able = true_n(athlete, form + rng.gauss(0, 0.01), load, curve)
        if said := reported(rng, planned, load, able, ORDINARY):
            evidence.append(evidence_of(planned, said))
    steps = take_session(state, days, evidence, settings, curve)
    return (steps[-1].state if steps else state), athlete


def evidence_of(planned: Plan, said: tuple[float, float, float]) -> SetDone | TestedMax:
    """What was reported, as the tracker takes it."""
    if isinstance(planned, PlannedTest):
        return TestedMax(said[0])
    return SetDone(*said, planned)
