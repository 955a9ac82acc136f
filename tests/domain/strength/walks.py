"""Walks through notch tables, beside the server's own filter on the same evidence."""

from dataclasses import dataclass

from tests.domain.strength.scenarios import (
    Athlete,
    Manners,
    Scenario,
    evidence_of,
    reported,
    true_n,
)

from undercroft.domain.strength import (
    Ladder,
    NotchTable,
    PlannedSession,
    PlannedTest,
    PlannedTurn,
    TrackerState,
    WalkState,
    advance,
    begin,
    carry,
    notch_tables,
    position,
    share_for,
    suggest,
    take,
    walk,
    wishes_for_set,
    wishes_for_share,
)
from undercroft.domain.strength.reserve import lean


@dataclass(frozen=True)
class Turn:
    """One set of a walk: what was shown before, what was done (or not), and where that led."""

    shown: tuple[int, int, str]
    done: tuple[int, float] | None
    state: WalkState
    notch_gap: float
    load_gap: float


@dataclass(frozen=True)
class Walked:
    """One session of a walk. Gaps are in notches, from the server's own filter."""

    table: NotchTable
    ladders: tuple[Ladder, ...]
    turns: tuple[Turn, ...]


def ladder_of(loads: tuple[float, ...], wishes: tuple[float, ...], cap: int | None) -> Ladder:
    """The nearest load to each wish, ties to the lighter."""
    nearest = (min(range(len(loads)), key=lambda i: (abs(loads[i] - wish), i)) for wish in wishes)
    return Ladder(tuple(nearest), cap)


def walked(given: Scenario, manners: Manners) -> tuple[Walked, ...]:
    """The sessions ahead, walked without the server, beside the server's own filter."""
    hold = given.rng.random() < 0.05
    tables = notch_tables(
        "lift", given.state, given.sessions, given.settings, given.curve, hold=hold
    )
    athlete, server = given.athlete, given.state
    rounds: list[Walked] = []
    state = begin(tables[0])
    for index, (session, table) in enumerate(zip(given.sessions, tables, strict=True)):
        if index:
            state = carry(tables[index - 1], state, begin(tables[index - 1]), table)
        athlete = Athlete(athlete.level + given.rng.gauss(0.001, 0.01), athlete.tilt)
        server = advance(server, session.at_days, given.settings)
        one, state, server = _walk_session(given, athlete, session, table, state, server, manners)
        rounds.append(one)
    return tuple(rounds)


def _walk_session(
    given: Scenario,
    athlete: Athlete,
    session: PlannedSession,
    table: NotchTable,
    state: WalkState,
    server: TrackerState,
    manners: Manners,
) -> tuple[Walked, WalkState, TrackerState]:
    rng, form = given.rng, given.rng.gauss(0, given.settings.form_sd)
    todo = session.turns + session.turns[-1:] * (rng.random() < manners.adds)
    ladders = tuple(_ladder(given, table, turn) for turn in todo)
    turns: list[Turn] = []
    for index, (turn, ladder) in enumerate(zip(todo, ladders, strict=True)):
        shown = suggest(state, table, ladder, turn.at)
        load = given.loads[shown.index]
        able = true_n(athlete, form + rng.gauss(0, 0.01), load, given.curve)
        said = reported(rng, turn.planned, load, able, manners)
        done = None
        if said:
            n = 1 if isinstance(turn.planned, PlannedTest) else said[1] + said[2]
            done = (position(said[0]), n)
            state = walk(state, table, index, *done)
            evidence = evidence_of(turn.planned, said)
            server = take(server, evidence, given.settings, given.curve).state
        gaps = _gaps(given, state, server, todo[min(index + 1, len(todo) - 1)].at)
        turns.append(Turn((shown.index, shown.notch, shown.reason), done, state, *gaps))
    return Walked(table, ladders, tuple(turns)), state, server


def _ladder(given: Scenario, table: NotchTable, turn: PlannedTurn) -> Ladder:
    if isinstance(turn.planned, PlannedTest):
        wishes = wishes_for_share(table, given.state, 1.0, given.curve)
    elif turn.at == 1:
        part = share_for(turn.planned.reps, turn.planned.rir, given.curve)
        wishes = wishes_for_share(table, given.state, round(20 * part) / 20, given.curve)
    else:
        wishes = wishes_for_set(table, given.state, turn.planned, given.curve)
    free = ladder_of(given.loads, wishes, None)
    cap = free.indices[24] if given.rng.random() < 0.2 else None
    return Ladder(free.indices, cap)


def _gaps(given: Scenario, state: WalkState, server: TrackerState, n: float) -> tuple[float, float]:
    """Walk less server, in notches: in level plus form, and in the load of the next set."""
    level = (state.level + state.form) / 10 - 100 * (server.level + server.form)
    leaning = lean(n, given.curve)
    moved = 100 * (server.tilt - given.state.tilt) * leaning
    return level, level + state.tilt * leaning / 10 - moved
