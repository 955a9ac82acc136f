"""A draft may be anything: it is kept, its faults are told, and the desk goes on working."""

import copy
import random
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests import fixtures
from tests.people import AtDesk, Clock, enlist

LONG_NUMBER = 10**400
ODD = (
    None,
    True,
    0,
    -1,
    1.0,
    2.5,
    1e308,
    LONG_NUMBER,
    -LONG_NUMBER,
    "",
    "x" * 5000,
    "lone \ud800 surrogate",
    "null\x00byte",
    [],
    [[]],
    [1, "a", None],
    {},
    {"key": []},
    {"\ud800": {"basis": 5}},
)
"""One of every type that JSON has, and values that fit no column, no index and no set."""

Path = tuple[str | int, ...]


def places(thing: Any, here: Path = ()) -> Iterator[Path]:
    """Every place in a document, the document itself among them."""
    yield here
    items = thing.items() if isinstance(thing, dict) else ()
    for step, inner in enumerate(thing) if isinstance(thing, list) else items:
        yield from places(inner, (*here, step))


def spoiled(document: Any, place: Path, value: Any) -> Any:
    """A copy of the document with another value at one place."""
    if not place:
        return value
    found = inner = copy.deepcopy(document)
    for step in place[:-1]:
        inner = inner[step]
    inner[place[-1]] = copy.deepcopy(value)
    return found


def nested(deep: int) -> Any:
    thing: Any = []
    for _ in range(deep):
        thing = {"weeks": [thing]}
    return thing


def small_block() -> Any:
    """One week of the fixture with two of its sessions."""
    block = fixtures.block_data()
    block["weeks"] = block["weeks"][:1]
    block["weeks"][0]["sessions"] = block["weeks"][0]["sessions"][:2]
    return block


FIRST = ("weeks", 0, "sessions", 0)
DRAFTS = {
    "empty": {},
    "a method that is a list": spoiled(small_block(), (*FIRST, "exercises", 0, "method"), []),
    "400 digits": spoiled(small_block(), (*FIRST, "exercises", 0, "sets", 0, "reps"), LONG_NUMBER),
    "a day with a fraction": spoiled(
        spoiled(small_block(), (*FIRST, "day"), 1.0), (*FIRST, "exercises", 0, "exercise"), "no"
    ),
    "a lone surrogate in the name": spoiled(small_block(), ("name",), "lone \ud800 surrogate"),
    "a name of one lone surrogate": spoiled(small_block(), ("name",), "\ud800"),
    "a null byte in the name": spoiled(small_block(), ("name",), "null\x00byte"),
    "weeks that are a number": {"weeks": 5},
    "weeks that are an object": {"weeks": {"sessions": []}},
    "sessions that are a number": {"weeks": [{"sessions": 5}]},
    "sessions that are text": {"weeks": [{"sessions": "two"}]},
    "fifteen levels": nested(15),
    "too many levels": nested(30),
    "thousands of levels": nested(400),
}


def refuses_in_words_or_keeps(coach: AtDesk, document: Any) -> None:
    """Sent as a new block and as a newer draft, listed, shown and exported."""
    added = coach.post("/desk/blocks", {"document": document})
    assert added.status_code in (201, 400, 422), added.text
    listed = coach.get("/desk/blocks")
    assert listed.status_code == 200, listed.text
    exported: tuple[Any, ...] = ()
    if added.status_code == 201:
        path = f"/desk/blocks/{added.json['id']}"
        assert coach.get(path).json["document"] == document
        assert coach.post(path, {"document": document}).status_code == 200
        exported = tuple(coach.get(f"{path}/export?format={form}") for form in ("json", "csv"))
    assert all(answer.status_code in (200, 422) for answer in exported)


@pytest.mark.parametrize("name", DRAFTS)
def test_a_draft_of_any_shape_leaves_the_desk_working(coach: AtDesk, name: str) -> None:
    refuses_in_words_or_keeps(coach, DRAFTS[name])


def test_the_name_in_the_list_lacks_what_no_database_keeps(coach: AtDesk) -> None:
    coach.post("/desk/blocks", {"document": {"name": "Win\ud800ter\x00"}})
    assert [block["name"] for block in coach.get("/desk/blocks").json["blocks"]] == ["Winter"]


def test_a_fault_in_a_session_on_day_1_point_0_is_told_by_its_weekday(coach: AtDesk) -> None:
    answer = coach.post("/desk/blocks", {"document": DRAFTS["a day with a fraction"]})
    assert [fault["where"] for fault in answer.json["faults"]] == [
        "week 1, Monday, exercise 1 (no)"
    ]


@pytest.mark.parametrize("value", ODD, ids=lambda value: f"{type(value).__name__} {value!r:.12}")
def test_any_value_anywhere_in_a_block_leaves_the_desk_working(
    sqlite_app: Any, clock: Clock, value: Any
) -> None:
    """At eight places of the block, other ones for each value."""
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    block = small_block()
    where = [place for place in places(block) if place]
    for place in random.Random(repr(value)[:50]).sample(where, 8):
        refuses_in_words_or_keeps(coach, spoiled(block, place, value))


PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3)
    | st.dictionaries(st.sampled_from(("weeks", "sessions", "key", "day", "sets")), inner),
    max_leaves=8,
)  # fmt: skip


def test_any_json_within_a_block_leaves_the_desk_working(sqlite_app: Any, clock: Clock) -> None:
    coach = enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")
    block = small_block()
    where = [place for place in places(block) if place]

    @settings(
        max_examples=40,
        deadline=None,
        database=None,
        derandomize=True,
        suppress_health_check=list(HealthCheck),
    )
    @given(place=st.sampled_from(where), value=PLAIN)
    def keep(place: Path, value: Any) -> None:
        refuses_in_words_or_keeps(coach, spoiled(block, place, value))

    keep()
