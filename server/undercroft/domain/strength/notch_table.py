"""The server works the notch tables of the sessions ahead out of the tracker's state.

Within a session the answers hold for every way in which sets may be skipped. From one session to
the next there are two: with all of the earlier sets done to plan, and with none of them; the walk
goes between the two by how much it was told.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate
from math import exp

from undercroft.domain.strength.evidence import Planned, PlannedSet, weigh
from undercroft.domain.strength.gains import (
    SHARES,
    doubts_by_count,
    gains_by_count,
    kinds_of,
    less_by_share,
    planned_counts,
    points_told,
)
from undercroft.domain.strength.notches import Gain, NotchTable, Rise
from undercroft.domain.strength.reserve import (
    FEWEST,
    HANDBOOK,
    MOST,
    RepCurve,
    lean,
    log_share,
    share,
)
from undercroft.domain.strength.scale import TENTHS, quotient, to_tenths
from undercroft.domain.strength.settings import DEFAULT, StrengthSettings
from undercroft.domain.strength.tracker import TrackerState, Vector, advance, pack, unpack


@dataclass(frozen=True, slots=True)
class PlannedTurn:
    """One set to come that will give evidence; its load is reckoned at n = `at`.

    `at` is 1 where the load is a share of the maximum, else reps + reserve of the set.
    """

    planned: Planned
    at: float


@dataclass(frozen=True, slots=True)
class PlannedSession:
    """The turns of one lift in one session to come, in plan order."""

    at_days: float
    turns: tuple[PlannedTurn, ...]


@dataclass(frozen=True, slots=True)
class _Answers:
    level: int
    kind: tuple[int, ...]
    at: tuple[float, ...]
    gain: Mapping[str, Gain]
    missed: Mapping[str, Gain]
    less: tuple[int, ...]
    tells: tuple[int, ...]


def notch_tables(
    lift: str,
    state: TrackerState,
    sessions: Sequence[PlannedSession],
    settings: StrengthSettings = DEFAULT,
    curve: RepCurve = HANDBOOK,
    hold: bool = False,
) -> tuple[NotchTable, ...]:
    """One table for each session ahead, in the order of their start."""
    answers = _look_ahead(state, sessions, settings, curve)
    told = accumulate((one.tells[-1] for one in answers), initial=0)
    blank = _blank(lift, state.tilt, settings, curve, hold)
    nexts = (*answers[1:], *answers[-1:])
    return tuple(
        replace(
            blank,
            level=this.level,
            base=quotient(this.level, TENTHS) - settings.reach,
            drift=following.level - this.level,
            kind=this.kind,
            at=this.at,
            gain=this.gain,
            missed=this.missed,
            told=before,
            less=this.less,
            tells=this.tells,
        )
        for this, following, before in zip(answers, nexts, told, strict=False)
    )


def _blank(
    lift: str, tilt: float, settings: StrengthSettings, curve: RepCurve, hold: bool
) -> NotchTable:
    """What the tables of all sessions share; the rest is yet to be filled in."""
    ns = range(FEWEST, MOST + 1)
    return NotchTable(
        lift=lift,
        level=0,
        form=0,
        base=0,
        drift=0,
        kind=(),
        at=(),
        gain={},
        missed={},
        told=0,
        less=(),
        tells=(),
        offset=tuple(to_tenths(-log_share(n, curve) - tilt * lean(n, curve)) for n in ns),
        lean=tuple(to_tenths(lean(n, curve)) for n in ns),
        gate=to_tenths(settings.gate),
        rise=Rise(settings.rise_per_set, settings.rise_in_all),
        hold=hold,
    )


def _look_ahead(
    state: TrackerState,
    sessions: Sequence[PlannedSession],
    settings: StrengthSettings,
    curve: RepCurve,
) -> list[_Answers]:
    """Each session's answers, with two states going on: one told to plan, one told nothing."""
    answers: list[_Answers] = []
    done = missed = state
    for session in sessions:
        done = advance(done, session.at_days, settings)
        missed = advance(missed, session.at_days, settings)
        one, after = _answer(done, missed, session, settings, curve)
        answers.append(one)
        done = pack(unpack(done)[0], after, done)
    return answers


def _answer(
    done: TrackerState,
    missed: TrackerState,
    session: PlannedSession,
    settings: StrengthSettings,
    curve: RepCurve,
) -> tuple[_Answers, Vector]:
    """One session's answers, and the covariance after it."""
    turns = session.turns
    kind, weights = kinds_of([weigh(turn.planned, curve, settings) for turn in turns])
    to_plan, untold = unpack(done)[1], unpack(missed)[1]
    doubts = doubts_by_count(to_plan, kind, weights)
    gain = gains_by_count(kind, weights, doubts)
    other = gains_by_count(kind, weights, doubts_by_count(untold, kind, weights))
    one = _Answers(
        level=to_tenths(done.level),
        kind=kind,
        at=tuple(turn.at for turn in turns),
        gain=gain,
        missed=other if other != gain else {},
        less=less_by_share(to_plan, untold, weights[0]) if other != gain else (0,) * len(SHARES),
        tells=points_told([weights[one] for one in kind], settings.form_sd),
    )
    return one, doubts[planned_counts(kind, len(weights))]


def wishes_for_set(
    table: NotchTable, state: TrackerState, planned: PlannedSet, curve: RepCurve = HANDBOOK
) -> tuple[float, ...]:
    """Load in kg for a set of so many repetitions and reserve, notch by notch from the base."""
    n = planned.reps + planned.rir
    return _wishes(table, state.tilt * lean(n, curve), share(n, curve))


def wishes_for_share(
    table: NotchTable, state: TrackerState, part: float, curve: RepCurve = HANDBOOK
) -> tuple[float, ...]:
    """Load in kg for a share of the maximum of the day (0.6 is 60 %), notch by notch."""
    return _wishes(table, state.tilt * lean(FEWEST, curve), part)


def _wishes(table: NotchTable, tilted: float, part: float) -> tuple[float, ...]:
    reach = quotient(table.level, TENTHS) - table.base
    places = range(table.base, table.base + 2 * reach + 1)
    return tuple(part * exp(place / 100 + tilted) for place in places)
