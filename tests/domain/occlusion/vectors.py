"""What phone and server have to agree on in occlusion work, as files.

Run as a program it writes them anew:  python -m tests.domain.occlusion.vectors
"""

import json
from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

from undercroft.documents.screening_feed import questions
from undercroft.domain.occlusion import FULL_DOSE, NextLoad, WorkSet, next_load_table, next_step
from undercroft.domain.occlusion.protocol import FIXED_SEVENTY_FIVE, TO_FAILURE

FOLDER = Path(__file__).parents[3] / "fixtures" / "occlusion"
KIT = (10, 15, 20, 22.5, 25, 30, 35, 40)
ORIGIN = "Invented sets and the step that the server's table asks for, to hold the phone to it."

TABLES = {
    "the fixed protocol": next_load_table(FIXED_SEVENTY_FIVE.sets, KIT, 25, 80, FULL_DOSE),
    "before the full dose": next_load_table(FIXED_SEVENTY_FIVE.sets, KIT, 25, 80, 4),
    "sets to failure": next_load_table(TO_FAILURE.sets, KIT, 25, 80, FULL_DOSE),
    "thirty and twice to failure": next_load_table(
        (WorkSet(30), WorkSet(20, True), WorkSet(20, True)), KIT, 30, 80, FULL_DOSE
    ),
}
REPS = (
    (30, 15, 15, 16),
    (30, 15, 15, 15),
    (30, 14, 11, 9),
    (30, 15, 15),
    (30, 13, 12),
    (30, 21, 21),
    (20, 15, 15, 15),
    (19, 15, 15, 16),
    (19, 8, 6, 5),
    (19, 8, 6, 4),
    (5, 5, 5, 5),
    (36, 15, 12, 14),
    (36, 15, 12, 13),
    (30, 15, 15, 16, 20),
    (5,),
    (),
)


def next_loads() -> dict[str, Any]:
    """Every table with every list of repetitions, done and stopped."""
    cases = [
        _case(name, table, reps, stopped)
        for name, table in TABLES.items()
        for reps in REPS
        for stopped in (False, True)
        if not (stopped and len(reps) < table.sets)
    ]
    return {"origin": ORIGIN, "cases": cases}


def _case(name: str, table: NextLoad, reps: Sequence[int], stopped: bool) -> dict[str, Any]:
    step, kg = next_step(table, reps, stopped)
    told = f"{name}: {'-'.join(map(str, reps)) or 'nothing'}{', stopped' if stopped else ''}"
    return {
        "name": told,
        "table": asdict(table),
        "reps": list(reps),
        "stopped": stopped,
        "step": str(step),
        "kg": kg,
    }


def files() -> dict[str, str]:
    """By name, what each file holds."""
    made = {"next-load.json": next_loads(), "questions.json": questions()}
    return {
        name: json.dumps(body, indent=1, ensure_ascii=False) + "\n" for name, body in made.items()
    }


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, text in files().items():
        (FOLDER / name).write_text(text, encoding="utf-8")
