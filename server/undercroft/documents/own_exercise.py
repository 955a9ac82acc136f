"""A coach's own exercise: what the catalogue knows of one, under a key that it never takes."""

import re
import unicodedata
from collections.abc import Collection, Iterator
from dataclasses import replace
from typing import Any

from marshmallow import ValidationError, validates_schema

from undercroft.documents.faults import Fault
from undercroft.documents.fields import Key, Many, Number, OneOf, Text, Truth
from undercroft.documents.reading import read_as
from undercroft.documents.shape import Shape
from undercroft.domain.exercise import Catalogue, Exercise, Implement, Muscle

OWN = "own-"
"""Every own key begins so, and no key of the catalogue ever does."""

LONGEST_KEY = 50


class OwnExerciseShape(Shape):
    """`key` is given by the server; heights are shares of stature."""

    builds = Exercise
    key = Key(load_default="")
    name = Text(80, 1, required=True)
    implement = OneOf(Implement, required=True)
    prime = Many(OneOf(Muscle), fewest=1, most=6, required=True)
    helpers = Many(OneOf(Muscle), most=8)
    needs = Many(Text(60, 1), most=8)
    start_share = Number(least=0, most=1.3)
    range_share = Number(above=0, most=1.3)
    one_sided = Truth()
    needs_safeties = Truth()
    hands_sink = Truth()
    overhead = Truth()
    cues = Many(Text(120, 1), most=8)
    alternatives = Many(Key(), most=12)

    @validates_schema
    def _way(self, data: dict[str, Any], **_: Any) -> None:
        start, way = data.get("start_share"), data.get("range_share")
        if (start is None) != (way is None):
            lacking = "start_share" if start is None else "range_share"
            raise ValidationError({lacking: ["missing beside the other; give both or none"]})
        if start is not None and way is not None and data.get("hands_sink") and way > start:
            what = f"{way:g} is more than the start height; hands sink to the floor at most"
            raise ValidationError({"range_share": [what]})


def read_own(data: Any, known: Catalogue, key: str = "") -> Exercise:
    """The exercise with its key; `key` is the one that it has already. Raises FaultyDocument."""
    given = {k: v for k, v in data.items() if k != "key"} if isinstance(data, dict) else data
    others = {k: one for k, one in known.items() if k != key}
    read: Exercise = read_as(OwnExerciseShape, given, _faults(given, others))
    return replace(read, key=key or own_key(read.name, known))


def own_key(name: str, taken: Collection[str]) -> str:
    """A key out of the name: "Überzug" becomes own-uberzug, or own-uberzug-2 beside another."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_KEY].strip("-") or "exercise"
    number, key = 1, OWN + words
    while key in taken:
        number += 1
        key = f"{OWN}{words}-{number}"
    return key


def _faults(data: Any, others: Catalogue) -> Iterator[Fault]:
    """Names that are taken, and names that lead nowhere."""
    if not isinstance(data, dict):
        return
    name = data.get("name")
    names = {one.name.casefold() for one in others.values()}
    if isinstance(name, str) and name.strip().casefold() in names:
        yield Fault("name", "name", f"{name!r} is taken", "give it a name of its own")
    listed = data.get("alternatives")
    for place, other in enumerate(listed if isinstance(listed, list) else ()):
        if isinstance(other, str) and other not in others:
            path = f"alternatives.{place}"
            yield Fault("alternatives", path, f"no exercise {other!r}", "name another that exists")
