"""The catalogue of exercises that ships with the program; cues are in our own words.

Start heights and ranges are shares of stature, of the hands or of what else a band would hold; two
tape readings of the athlete replace them. Where they come from:

- floor pulls, 0.13 and 0.28: derived from published body sizes (seen), the bar 22.5 cm high;
- what begins or ends at shoulder, elbow, hip or knee (0.82, 0.63, 0.53, 0.29) and hands that hang
  (0.42): body proportions, from memory;
- all others, and how far a pull or a press goes: our own choice; measure where a band hangs.

None: the body, a foot plate or a sled moves, and nothing that a hand holds.

What wants height above a standing person, `overhead`, is our own choice too.
"""

import csv
from functools import cache
from pathlib import Path

from undercroft.domain.exercise import Catalogue, Exercise, Implement

SOURCE = Path(__file__).parent / "exercises.csv"


@cache
def catalogue() -> Catalogue:
    """All exercises by key."""
    with SOURCE.open(encoding="utf-8", newline="") as file:
        return {row["key"]: _exercise(row) for row in csv.DictReader(file)}


def _exercise(row: dict[str, str]) -> Exercise:
    return Exercise(
        key=row["key"],
        name=row["name"],
        implement=Implement(row["implement"]),
        prime=_many(row["prime"]),
        helpers=_many(row["helpers"]),
        needs=_many(row["needs"]),
        start_share=_share(row["start_share"]),
        range_share=_share(row["range_share"]),
        one_sided=row["one_sided"] == "yes",
        needs_safeties=row["needs_safeties"] == "yes",
        hands_sink=row["hands_sink"] == "yes",
        overhead=row["overhead"] == "yes",
        cues=_many(row["cues"]),
        alternatives=_many(row["alternatives"]),
    )


def _many(cell: str) -> tuple[str, ...]:
    return tuple(part for part in cell.split(";") if part)


def _share(cell: str) -> float | None:
    return float(cell) if cell else None
