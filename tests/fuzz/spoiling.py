"""A body that is nearly right: one that is, with a few places spoiled."""

import copy
from collections.abc import Iterator
from typing import Any

from hypothesis import strategies as st

MOST_PLACES = 3

HARD: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 0.5, -0.0, 1e308, -1e308, 5e-324, 2**31, 2**53, 2**63, -(2**63),
    10**400, "", " ", "0", "-1", "1e999", "\x00", "\ud800", "\u202e", "🏋" * 40, "a" * 5000,
    "2026-02-30", "2026-02-03", "9999-12-31", "0001-01-01", "2026-02-03T18:04:11.250+01:00",
    "../..", "=1+1", "__proto__", [], {}, [[]], [None], {"": None}, [{}] * 300,
)  # fmt: skip
"""Values at which programs are known to stumble. Our own choice."""

Place = tuple[Any, ...]


def spoiled(right: Any) -> st.SearchStrategy[Any]:
    """The document with up to three places put wrong."""

    @st.composite
    def one(draw: st.DrawFn) -> Any:
        body = copy.deepcopy(right)
        for _ in range(draw(st.integers(1, MOST_PLACES))):
            places = list(_places(body))
            place = draw(st.sampled_from(places)) if places else ()
            body = _spoil(draw, body, place)
        return body

    return one()


def spoiled_file(right: bytes) -> st.SearchStrategy[bytes]:
    """The file with up to three bytes put wrong, whole or cut short."""
    cut = st.integers(1, len(right)) | st.just(len(right))
    wrong = st.lists(st.tuples(st.integers(0, len(right) - 1), st.integers(0, 255)), max_size=3)

    def spoil(changes: list[tuple[int, int]], length: int) -> bytes:
        body = bytearray(right)
        for place, value in changes:
            body[place] = value
        return bytes(body[:length])

    return st.builds(spoil, wrong, cut)


def _places(value: Any, at: Place = ()) -> Iterator[Place]:
    """The way to each value within, the outermost left out."""
    if isinstance(value, dict):
        inside: Any = value.items()
    elif isinstance(value, list):
        inside = enumerate(value)
    else:
        return
    for key, one in inside:
        yield (*at, key)
        yield from _places(one, (*at, key))


def _spoil(draw: st.DrawFn, body: Any, place: Place) -> Any:
    if not place:
        return draw(hard())
    holder = body
    for key in place[:-1]:
        holder = holder[key]
    key, how = place[-1], draw(st.sampled_from(("value", "value", "gone", "twice", "unknown")))
    if how == "gone":
        del holder[key]
    elif how == "twice" and isinstance(holder, list):
        holder.append(copy.deepcopy(holder[key]))
    elif how == "unknown" and isinstance(holder, dict):
        holder[f"{key}?"] = holder.pop(key)
    else:
        holder[key] = draw(hard() | _moved(holder[key]))
    return body


def hard() -> st.SearchStrategy[Any]:
    """One of them, for the taker to spoil further."""
    return st.sampled_from(HARD).map(copy.deepcopy)


def _moved(value: Any) -> st.SearchStrategy[Any]:
    """A value of the same type; the same where nothing is known of it."""
    if isinstance(value, bool):
        return st.just(not value)
    if isinstance(value, int):
        return st.integers(-(10**6), 10**6)
    if isinstance(value, float):
        return st.floats(allow_nan=False, allow_infinity=False)
    if isinstance(value, str):
        return st.text(max_size=40)
    return st.just(value)
