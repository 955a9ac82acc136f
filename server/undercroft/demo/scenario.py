"""Who is in the demo. Everybody and every place is invented, and the data say so."""

import json
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from undercroft.demo import wraps

COACH_NAME = "Maren Holt"
COACH_EMAIL = "maren@skarn.example"

PLACES = (Path(__file__).parents[1] / "fixtures", Path(__file__).parents[3] / "fixtures")
"""Where fixtures lie: inside an installed package, or beside the server in a checkout."""


@dataclass(frozen=True, slots=True)
class Person:
    """`strength` is how the true maxima relate to the known ones; `paired` days ago, or never.

    `before` names a block done in the weeks before the first that everybody has; `measures`: the
    bar's velocity is measured in speed sets; `missed` is a session that was never begun; `wraps`:
    the screening is signed, and occlusion work is planned.
    """

    document: str
    kit: str
    strength: float
    paired: bool
    last_heard_days: int
    pain: str | None = None
    before: str | None = None
    measures: bool = False
    missed: str | None = None
    wraps: bool = False


PEOPLE = (
    Person(
        "runa",
        "forge-cellar",
        1.03,
        True,
        1,
        before="four-weeks",
        measures=True,
        missed="p3-fri",
        wraps=True,
    ),
    Person("osk", "station-basement", 1.06, True, 2),
    Person("tilde", "forge-cellar", 0.97, True, 9, pain="left knee", before="four-weeks"),
    Person("bram", "station-basement", 1.0, False, 0),
)


def person_document(person: Person, known_on: date) -> dict[str, Any]:
    """The athlete's document, with maxima as of a day: old maxima would be worth little."""
    document: dict[str, Any] = load("athletes", person.document)
    if person.wraps:
        document["maxima"].append(dict(wraps.MAXIMUM))
    for maximum in document["maxima"]:
        maximum["on"] = known_on.isoformat()
    return document


def load(folder: str, name: str) -> Any:
    """A fixture as plain data."""
    for place in PLACES:
        file = place / folder / f"{name}.json"
        if file.exists():
            return json.loads(file.read_text(encoding="utf-8"))
    raise FileNotFoundError(f"no {folder}/{name}.json in {', '.join(map(str, PLACES))}")
