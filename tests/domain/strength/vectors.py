"""Write the shared vectors of the notch walk: `python -m tests.domain.strength.vectors`.

Each file holds runs; a run is one session, or six walked in a row without the server. All of it is
invented by `scenarios.py`. `pwa/src/offline/notches.test.ts` replays the same files.
"""

import json
from collections.abc import Iterable, Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

from tests.domain.strength.scenarios import CARELESS, FAITHFUL, ORDINARY, scenario
from tests.domain.strength.walks import Turn, Walked, walked

from undercroft.domain.strength import Ladder

FOLDER = Path(__file__).parents[3] / "fixtures" / "notch-walks"
SINGLE, IN_A_ROW = 1000, 30
MANNERS = (FAITHFUL, ORDINARY, CARELESS)
MOST_BYTES = 190_000
ORIGIN = "Invented: simulated athletes, kits and plans, written by tests/domain/strength/vectors.py"
DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


def runs() -> Iterator[tuple[Walked, ...]]:
    """1,000 single sessions, then 30 runs of six; by seed, so that each writing is the same."""
    for seed in range(SINGLE):
        yield walked(scenario(seed), MANNERS[seed % 3])
    for seed in range(IN_A_ROW):
        yield walked(scenario(seed, ahead=6), MANNERS[seed % 3])


def packed_ladder(ladder: Ladder) -> str:
    """The first index, then each step up as one digit of base 36: "17:0102"."""
    first, *rest = ladder.indices
    steps = (DIGITS[this - before] for before, this in zip(ladder.indices, rest, strict=False))
    return f"{first}:{''.join(steps)}"


def packed_turn(turn: Turn) -> list[Any]:
    """[index, notch, reason of what was shown], [place, n] or 0, then where the walk stands."""
    state = turn.state
    after = [state.level, state.form, state.tilt, state.allowed, int(state.wild)]
    return [list(turn.shown), list(turn.done) if turn.done else 0, after]


def packed(run: Iterable[Walked]) -> list[dict[str, Any]]:
    """A run as it stands in a file."""
    return [
        {
            "table": json.loads(json.dumps(asdict(one.table))),
            "ladders": [packed_ladder(ladder) for ladder in one.ladders],
            "caps": [ladder.cap for ladder in one.ladders],
            "turns": [packed_turn(turn) for turn in one.turns],
        }
        for one in run
    ]


def files(all_runs: Iterable[list[dict[str, Any]]]) -> Iterator[str]:
    """The files' text, each below the largest size that the repository takes."""
    lines: list[str] = []
    for run in all_runs:
        line = json.dumps(run, separators=(",", ":"))
        if sum(map(len, lines)) + len(line) > MOST_BYTES:
            yield _text(lines)
            lines = []
        lines.append(line)
    yield _text(lines)


def _text(lines: list[str]) -> str:
    body = ",\n".join(lines)
    return f'{{"origin":"{ORIGIN}","runs":[\n{body}\n]}}\n'


def write() -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    for old in FOLDER.glob("*.json"):
        old.unlink()
    for number, text in enumerate(files(packed(run) for run in runs()), start=1):
        (FOLDER / f"walks-{number:02}.json").write_text(text)


if __name__ == "__main__":
    write()
