"""Names in a document that must exist elsewhere: exercises and lifts of the catalogue.

They are looked up in the plain data, so that they are reported together with all other faults.
"""

from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any

from undercroft.documents.faults import Fault, day_named
from undercroft.domain.exercise import Catalogue

NAMES_OF_AN_ATHLETE = {
    "maxima": ("maximum", ("lift",)),
    "ranges": ("range", ("exercise",)),
    "leans": ("lean", ("lift", "on_lift")),
}


def block_faults(data: Any, catalogue: Catalogue) -> Iterator[Fault]:
    """Exercises and lifts of a block that the catalogue does not have."""
    for w, week in _items(data, "weeks"):
        for s, session in _items(week, "sessions"):
            day = day_named(session) or f"session {s + 1}"
            for e, plan in _items(session, "exercises"):
                where = f"week {w + 1}, {day}, exercise {e + 1} ({plan.get('exercise')})"
                path = f"weeks.{w}.sessions.{s}.exercises.{e}"
                yield from _unknown(plan, "exercise", where, path, catalogue)
                for n, one in _items(plan, "sets"):
                    spot = f"{where}, set {n + 1}"
                    yield from _unknown(
                        one.get("load"), "of", spot, f"{path}.sets.{n}.load", catalogue
                    )


def athlete_faults(data: Any, catalogue: Catalogue) -> Iterator[Fault]:
    """Lifts and exercises of an athlete that the catalogue does not have."""
    for many, (one, fields) in NAMES_OF_AN_ATHLETE.items():
        for place, item in _items(data, many):
            for field in fields:
                where, path = f"{one} {place + 1}", f"{many}.{place}"
                yield from _unknown(item, field, where, path, catalogue)


def _items(thing: Any, many: str) -> Iterator[tuple[int, dict[str, Any]]]:
    """The objects of a list that may be anything: other faults are reported elsewhere."""
    items = thing.get(many) if isinstance(thing, dict) else None
    for place, item in enumerate(items if isinstance(items, list) else ()):
        if isinstance(item, dict):
            yield place, item


def _unknown(
    thing: Any, field: str, where: str, path: str, catalogue: Catalogue
) -> Iterator[Fault]:
    name = thing.get(field) if isinstance(thing, dict) else None
    if not isinstance(name, str) or name in catalogue:
        return
    near = get_close_matches(name, catalogue, n=3, cutoff=0.7)
    right = f"did you mean {' or '.join(near)}?" if near else "use a key of the catalogue"
    yield Fault(where, f"{path}.{field}", f"no exercise {name!r} in the catalogue", right)
