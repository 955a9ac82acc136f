"""The shared vectors: the walk of this code, replayed; and the walk beside the server's filter."""

import json
from itertools import pairwise

import numpy as np
import pytest
from tests.domain.strength.scenarios import CARELESS, FAITHFUL, ORDINARY, scenario
from tests.domain.strength.vectors import DIGITS, FOLDER, IN_A_ROW, SINGLE, packed, runs
from tests.domain.strength.walks import walked

from undercroft.domain.strength import Ladder, NotchTable, Rise, begin, carry, suggest, walk

FILES = sorted(FOLDER.glob("*.json"))


@pytest.fixture(scope="module")
def written():
    """Every run in the files."""
    return [run for path in FILES for run in json.loads(path.read_text())["runs"]]


@pytest.fixture(scope="module")
def made():
    """The same runs, made anew by the present code."""
    return list(runs())


def table_of(document) -> NotchTable:
    listed = ("kind", "at", "less", "tells", "offset", "lean")
    fields = {name: tuple(document[name]) for name in listed}
    return NotchTable(**{**document, **fields, "rise": Rise(**document["rise"])})


def ladder_of(text: str, cap: int | None) -> Ladder:
    first, steps = text.split(":")
    indices = [int(first)]
    for step in steps:
        indices.append(indices[-1] + DIGITS.index(step))
    return Ladder(tuple(indices), cap)


def replay(run) -> None:
    """Walk a run and compare every suggestion and every state with what is written."""
    table = state = None
    for one in run:
        following = table_of(one["table"])
        state = carry(table, state, begin(table), following) if table else begin(following)
        table = following
        ladders = [ladder_of(*both) for both in zip(one["ladders"], one["caps"], strict=True)]
        for turn, (shown, done, after) in enumerate(one["turns"]):
            at = table.at[min(turn, len(table.at) - 1)]
            found = suggest(state, table, ladders[turn], at)
            assert [found.index, found.notch, found.reason] == shown
            if done:
                state = walk(state, table, turn, *done)
            assert [state.level, state.form, state.tilt, state.allowed] == after[:4]
            assert int(state.wild) == after[4]


def test_there_are_more_than_a_thousand_sessions_in_files_that_a_repository_takes(written):
    assert sum(len(run) for run in written) >= 1000
    assert all(path.stat().st_size < 200_000 for path in FILES)
    assert all("Invented" in json.loads(path.read_text())["origin"] for path in FILES)


def test_every_written_walk_is_walked_the_same(written):
    for run in written:
        replay(run)


def test_the_files_are_what_the_present_code_writes(written, made):
    assert len(written) == len(made)
    for old, new in zip(written, made, strict=True):
        assert old == json.loads(json.dumps(packed(new)))


def test_the_vectors_hold_every_sort_of_case(written):
    turns = [(s["table"], *turn) for run in written for s in run for turn in s["turns"]]
    assert {shown[2] for _, shown, _, _ in turns} == {
        "hold", "upper-bound", "end-of-table", "rise-limited", "up", "same", "down",
    }  # fmt: skip
    assert sum(not done for _, _, done, _ in turns) > 300
    assert sum(after[4] for *_, after in turns) > 100
    assert any(done and done[1] % 1 for _, _, done, _ in turns)
    assert any(len(s["turns"]) > len(s["table"]["kind"]) for run in written for s in run)
    assert sum(bool(table["missed"]) for table, *_ in turns) > 100


def gaps(sessions):
    turns = [turn for one in sessions for turn in one.turns]
    return np.abs([[turn.notch_gap, turn.load_gap] for turn in turns])


def told(name: str, found) -> str:
    within = (found <= 0.2).mean(axis=0)
    return (
        f"{name}: {len(found)} sets; level and form within 0.2 notch in {within[0]:.1%}, at most "
        f"{found[:, 0].max():.2f}; load of the next set in {within[1]:.1%}, {found[:, 1].max():.2f}"
    )


def test_a_session_without_signal_stays_within_a_notch_of_the_server(made):
    singles = [run[0] for run in made[:SINGLE]]
    found = gaps(singles)
    print(told("single sessions", found))
    assert len(singles) == 1000
    assert found.max() <= 1.0
    assert (found <= 0.2).mean(axis=0).min() >= 0.99


@pytest.mark.parametrize(("manners", "seen"), [(FAITHFUL, 0), (ORDINARY, 0), (ORDINARY, 12)])
def test_six_sessions_without_signal_stay_within_a_notch_of_the_server(manners, seen):
    sessions = [one for seed in range(150) for one in walked(scenario(seed, 6, seen), manners)]
    found = gaps(sessions)
    print(told(f"six in a row, {seen} before", found))
    assert found[:, 0].max() <= 1.0
    assert (found <= 0.2).mean(axis=0).min() >= 0.95


def test_even_careless_athletes_stay_near_for_six_sessions_without_signal():
    sessions = [one for seed in range(100) for one in walked(scenario(seed, 6), CARELESS)]
    found = gaps(sessions)
    print(told("six in a row, careless", found))
    assert np.quantile(found, 0.99, axis=0).max() <= 1.0


def test_runs_of_six_follow_each_other_by_the_tables_drift(made):
    for run in made[SINGLE:]:
        for this, following in pairwise(run):
            assert this.table.level + this.table.drift == following.table.level
    assert len(made) == SINGLE + IN_A_ROW
