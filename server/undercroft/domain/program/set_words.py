"""Sets as a coach would say them: "5 × 5", "80 kg", "2 × 3 at 85 %, 3 × 5 at 75 %"."""

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby

from undercroft.domain.program.block import Rest, SetPlan
from undercroft.domain.program.wish import (
    AsLastTime,
    BodyMass,
    ByReserve,
    Fixed,
    LoadWish,
    OfMaximum,
    OfTopSet,
)

Says = Callable[[SetPlan], str]


def scheme_words(sets: Sequence[SetPlan]) -> str:
    """How often, without the load: "5 × 5", or "1 × 3, 2 × 6"."""
    return ", ".join(_counted(sets, content_words))


def load_words(wish: LoadWish) -> str:
    """The load as it is written; empty where there is none to write."""
    match wish:
        case Fixed(kg=kg):
            return f"{kg:g} kg"
        case OfMaximum(percent=percent):
            return f"{percent:g} %"
        case ByReserve(rir=rir):
            return f"{rir:g} in reserve"
        case AsLastTime(add_kg=added):
            return f"last time {added:+g} kg" if added else "as last time"
        case OfTopSet(percent=percent):
            return f"{percent:g} % of the first set"
        case BodyMass(add_kg=added):
            return f"body {added:+g} kg" if added else "body"
        case _:
            return ""


def loads_words(sets: Sequence[SetPlan]) -> str:
    """The loads alone: "80 kg", or "1 × 85 kg, 3 × 80 kg" where they differ."""
    loads = [load_words(one.load) for one in sets]
    return loads[0] if len({*loads}) == 1 else ", ".join(_counted(sets, _load))


def sets_words(sets: Sequence[SetPlan]) -> str:
    """Both: "5 × 5 at 80 kg"."""
    return ", ".join(_counted(sets, _whole))


def rest_words(rest: Rest | None) -> str:
    """ "90–120 s", or "no rest given"."""
    if rest is None:
        return "no rest given"
    return f"{rest.from_s} s" if rest.from_s == rest.to_s else f"{rest.from_s}–{rest.to_s} s"


def content_words(one: SetPlan) -> str:
    """What is done in a set: repetitions, seconds, metres."""
    parts = [
        "+".join(f"{reps}" for reps in one.blocks) or ("" if one.reps is None else f"{one.reps}"),
        "" if one.seconds is None else f"{one.seconds:g} s",
        "" if one.distance_m is None else f"{one.distance_m:g} m",
        "to failure" if one.to_failure else "",
        "" if one.rir is None or isinstance(one.load, ByReserve) else f"({one.rir:g} in reserve)",
    ]
    return " ".join(part for part in parts if part)


def _load(one: SetPlan) -> str:
    return load_words(one.load)


def _whole(one: SetPlan) -> str:
    content, load = content_words(one), load_words(one.load)
    return f"{content} at {load}" if content and load else content or load


def _counted(sets: Sequence[SetPlan], says: Says) -> Iterator[str]:
    for words, same in groupby(sets, key=says):
        count = len(list(same))
        yield f"{count} × {words}" if words else f"{count} sets" if count > 1 else "1 set"
