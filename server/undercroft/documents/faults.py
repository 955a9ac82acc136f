"""Faults of a document, each with its place in words, what is wrong and what would be right."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from undercroft.domain.program.calendar import DAYS

NAMED_BY = ("label", "name", "exercise", "lift", "key")
"""Fields by which a person recognises one item of a list, best first."""

SINGULAR = {
    "weeks": "week",
    "sessions": "session",
    "exercises": "exercise",
    "sets": "set",
    "maxima": "maximum",
    "injuries": "injury",
    "warm_up": "warm-up step",
    "pins_kg": "pin",
    "dumbbells": "dumbbell",
}


@dataclass(frozen=True, slots=True)
class Fault:
    """`where` is for people ("week 2, Tuesday, back squat, set 3: reps"), `path` for programs."""

    where: str
    path: str
    what: str
    right: str


class FaultyDocument(ValueError):
    """A document that was refused, with every fault that was found."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("; ".join(f"{f.where}: {f.what}" for f in faults))
        self.faults = faults


def faults_of(messages: Any, document: Any) -> tuple[Fault, ...]:
    """Flatten a schema's nested messages; `document` is the raw data that was refused."""
    return tuple(_walk(messages, document, (), ()))


def _walk(
    messages: Any, here: Any, words: tuple[str, ...], path: tuple[str, ...]
) -> Iterator[Fault]:
    if isinstance(messages, Mapping):
        for step, below in messages.items():
            if step == "_schema":
                yield from _walk(below, here, words, path)
                continue
            yield from _walk(below, _inside(here, step), *_step(step, here, words, path))
    elif isinstance(messages, list | tuple):
        for message in messages:
            yield from _walk(message, here, words, path)
    else:
        what, _, right = str(messages).partition("; ")
        yield Fault(_sentence(words), ".".join(path), what, right)


def _inside(here: Any, step: Any) -> Any:
    try:
        return here[step]
    except (KeyError, IndexError, TypeError):
        return None


def _step(
    step: Any, here: Any, words: tuple[str, ...], path: tuple[str, ...]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Words and path one level further down."""
    if not isinstance(step, int):
        return (*words, str(step)), (*path, str(step))
    many = words[-1] if words else "item"
    return (*words[:-1], _item(many, step, _inside(here, step))), (*path, str(step))


def _item(many: str, place: int, item: Any) -> str:
    one = SINGULAR.get(many, many.removesuffix("s"))
    numbered = f"{one} {place + 1}"
    if not isinstance(item, Mapping):
        return numbered
    if many == "sessions" and (day := day_named(item)):
        return day
    if many in ("weeks", "sets"):
        return numbered
    name = next((item[k] for k in NAMED_BY if isinstance(item.get(k), str)), None)
    return f"{numbered} ({name})" if name else numbered


def day_named(session: Mapping[str, Any]) -> str | None:
    """The weekday of a session that may hold anything; 1.0 is Monday as 1 is."""
    day = session.get("day")
    return DAYS[int(day) - 1] if isinstance(day, int | float) and day in range(1, 8) else None


def _sentence(words: tuple[str, ...]) -> str:
    return ", ".join(words) or "the document"
