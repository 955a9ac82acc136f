"""The catalogue of exercises that ships with the program; cues are in our own words.

Start heights and ranges are shares of stature: floor pulls 0.28 is derived from published body
sizes, the others are from memory; two tape readings of the athlete replace them.
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
        cues=_many(row["cues"]),
        alternatives=_many(row["alternatives"]),
    )


def _many(cell: str) -> tuple[str, ...]:
    return tuple(part for part in cell.split(";") if part)


def _share(cell: str) -> float | None:
    return float(cell) if cell else None
