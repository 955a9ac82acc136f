"""Entries: each kind's body, read strictly; the published schema says the same as the reader."""

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from undercroft.documents.entries import Code, Trouble, content_of, json_schema, read_entry
from undercroft.documents.kinds import KINDS, Belongs
from undercroft.domain.ledger import Entry

ENTRY: dict[str, Any] = {
    "id": "019c1c38-a400-7000-8000-000000000001",
    "v": 1,
    "n": 412,
    "kind": "set.done",
    "replaces": None,
    "at": "2026-02-03T18:04:11.250+01:00",
    "revision": 7,
    "session": "w1.tue",
    "set": "squat.4",
    "body": {"load_kg": 92.5, "reps": 3, "rir": 4},
}

FULLEST: dict[str, dict[str, Any]] = {
    "session.opened": {},
    "session.started": {},
    "session.finished": {"rpe": 7.5, "minutes": 48, "comment": "steady"},
    "session.stopped": {"why": "pain", "comment": "left knee"},
    "set.done": {
        "load_kg": 92.5,
        "reps": 3,
        "rir": 4.5,
        "to_failure": False,
        "velocities_m_s": [0.41, 0.4, 0.38],
        "quality": 4,
        "seconds": 30.5,
        "distance_m": 20,
        "side": "left",
        "blocks": [3, 3, 2],
        "tightness": 6.5,
        "pain": 0,
    },
    "set.skipped": {"why": "the band has snapped", "side": "right"},
    "set.cleared": {"side": "left"},
    "set.added": {"exercise": "curl"},
    "exercise.swapped": {"exercise": "squat", "to": "box-squat"},
    "wrap.on": {"limb": "left arm"},
    "wrap.off": {"limb": "left arm", "seconds": 395.5},
    "wrap.check": {"tightness": 6, "numb": False},
    "after.check": {"hours": 48, "signs": ["swollen"]},
    "readiness": {"score": 4, "comment": "slept well"},
    "body_mass": {"kg": 71.4},
    "max.tested": {"lift": "squat", "kg": 130, "conditions": "after a night on call"},
    "kit.changed": {"item": "plate 10", "change": {"count": 3, "why": ["lent", None]}},
    "screening.answered": {"answers": {"heart": "no", "notes": {"since": 2019}}},
    "pain.reported": {"where": "left knee", "level": 3.5, "comment": "on the way down"},
    "message": {"text": "Can we move Thursday?"},
}
"""One body of each kind with everything in it."""

VALIDATOR = Draft202012Validator(json_schema())


def entry(kind: str = "set.done", **changes: Any) -> dict[str, Any]:
    return {**ENTRY, "kind": kind, "body": FULLEST[kind], **changes}


def trouble(raw: Any) -> Trouble:
    found = read_entry(raw)
    assert isinstance(found, Trouble)
    return found


def test_there_is_an_example_of_every_kind() -> None:
    assert set(FULLEST) == set(KINDS)


@pytest.mark.parametrize("kind", FULLEST)
def test_the_fullest_body_of_a_kind_is_read(kind: str) -> None:
    found = read_entry(entry(kind))
    assert isinstance(found, Entry)
    assert found.body == FULLEST[kind]
    VALIDATOR.validate(entry(kind))


@pytest.mark.parametrize("kind", FULLEST)
def test_a_body_without_one_field_is_read_unless_the_field_is_needed(kind: str) -> None:
    for left_out in FULLEST[kind]:
        body = {name: value for name, value in FULLEST[kind].items() if name != left_out}
        needed = left_out in KINDS[kind].required
        assert isinstance(read_entry(entry(kind, body=body)), Trouble) is needed, left_out
        assert VALIDATOR.is_valid(entry(kind, body=body)) is not needed, left_out


@pytest.mark.parametrize("kind", FULLEST)
def test_an_unknown_field_is_named(kind: str) -> None:
    found = trouble(entry(kind, body={**FULLEST[kind], "colour": "red"}))
    assert (found.code, found.where) == (Code.BAD_SHAPE, "body")
    assert "colour" in found.what


@pytest.mark.parametrize("kind", FULLEST)
def test_a_kind_needs_the_session_and_set_to_which_it_belongs(kind: str) -> None:
    belongs = KINDS[kind].belongs
    without_session = isinstance(read_entry(entry(kind, session=None)), Trouble)
    without_set = isinstance(read_entry(entry(kind, set=None)), Trouble)
    assert without_session is (belongs >= Belongs.SESSION)
    assert without_set is (belongs == Belongs.SET)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("load_kg", -0.5),
        ("load_kg", 1000.5),
        ("load_kg", math.inf),
        ("load_kg", math.nan),
        ("load_kg", "92.5"),
        ("load_kg", True),
        ("reps", 3.5),
        ("reps", -1),
        ("rir", 10.5),
        ("rir", 0.3),
        ("to_failure", 1),
        ("to_failure", "yes"),
        ("velocities_m_s", [0.4, "0.4"]),
        ("velocities_m_s", [0.4] * 101),
        ("velocities_m_s", 0.4),
        ("quality", 0),
        ("quality", 6),
        ("side", "both"),
        ("blocks", [3, 2.5]),
        ("pain", 11),
    ],
)
def test_a_value_that_is_out_of_bounds_says_what_would_be_right(name: str, value: Any) -> None:
    found = trouble(entry(body={**FULLEST["set.done"], name: value}))
    assert found.code is Code.BAD_SHAPE
    assert found.where == f"body.{name}"
    assert found.right


def test_a_whole_number_may_be_written_with_a_fraction_of_nought() -> None:
    assert isinstance(read_entry(entry(body={"reps": 3.0})), Entry)


@pytest.mark.parametrize(
    "text", ["", "x" * 4001, "nul\x00", "half a pair \ud83d", "\udc00 the other half"]
)
def test_text_that_cannot_be_kept_is_refused(text: str) -> None:
    assert trouble(entry("message", body={"text": text})).where == "body.text"


@pytest.mark.parametrize(
    "change",
    [
        {"a": "\x00"},
        {"\ud800": 1},
        {"a": math.inf},
        {"a": "x" * 2001},
        {str(number): number for number in range(300)},
        {"a": {"b": {"c": {"d": {"e": {"f": 1}}}}}},
    ],
)
def test_a_free_object_is_small_shallow_and_keepable(change: Any) -> None:
    found = trouble(entry("kit.changed", body={"item": "plate 10", "change": change}))
    assert found.where == "body.change"


@pytest.mark.parametrize(
    "at", ["2026-02-03T18:04:11Z", "2026-02-03T18:04:11.123456-11:30", "0001-01-01T00:00:00+00:00"]
)
def test_a_time_with_its_offset_is_read_whatever_year_it_says(at: str) -> None:
    assert isinstance(read_entry(entry(at=at)), Entry)


@pytest.mark.parametrize(
    "at",
    [
        "2026-02-03T18:04:11",
        "2026-02-03 18:04:11Z",
        "20260203T180411Z",
        "2026-02-30T18:04:11Z",
        "2026-02-03T24:04:11Z",
        "2026-02-03T18:04:11+99:00",
        "٢٠٢٦-02-03T18:04:11Z",
        "",
        None,
        1_770_000_000,
    ],
)
def test_what_is_no_time_with_an_offset_is_refused(at: Any) -> None:
    assert trouble(entry(at=at)).where == "at"


def test_a_newer_version_is_told_before_anything_else_is_looked_at() -> None:
    assert trouble({"v": 2, "anything": "else"}).code is Code.NEWER_VERSION


values = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-2, 1200),
    st.floats(-2, 1200).map(lambda value: round(value, 1)),
    st.sampled_from(["", "left", "squat", "Left knee", "x" * 600]),
    st.lists(st.integers(-1, 11), max_size=3),
    st.just({}),
)


@given(data=st.data(), kind=st.sampled_from(sorted(FULLEST)))
@settings(max_examples=400)
def test_the_published_schema_says_the_same_as_the_reader(data: st.DataObject, kind: str) -> None:
    body = dict(FULLEST[kind])
    for name in data.draw(st.lists(st.sampled_from([*sorted(body), "colour"]), max_size=2)):
        body[name] = data.draw(values)
    raw = entry(kind, body=body)
    for name in data.draw(
        st.lists(st.sampled_from(["n", "revision", "session", "set"]), max_size=1)
    ):
        raw[name] = data.draw(values)
    read = isinstance(read_entry(raw), Entry)
    assert VALIDATOR.is_valid(raw) is read, read_entry(raw)


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)


@given(json_values)
@settings(max_examples=200)
def test_whatever_comes_is_read_or_told_and_never_fails(raw: Any) -> None:
    assert isinstance(read_entry(raw), Trouble)
    assert len(content_of(raw).digest) == 32


@given(st.dictionaries(st.sampled_from(sorted(ENTRY)), json_values))
@settings(max_examples=300)
def test_an_entry_with_anything_in_its_place_is_read_or_told(changes: dict[str, Any]) -> None:
    raw = {**ENTRY, **changes}
    assert isinstance(read_entry(raw), Entry | Trouble)
    content_of(raw)


def test_contents_differ_where_anything_but_the_order_differs() -> None:
    variants: list[Any] = [
        ENTRY,
        {**ENTRY, "n": 413},
        {**ENTRY, "n": 412.5},
        {**ENTRY, "set": "squat.5"},
        {**ENTRY, "session": "squat.4", "set": "w1.tue"},
        {**ENTRY, "body": {}},
        {**ENTRY, "body": {"load_kg": 92.5, "reps": 3, "rir": 4.0}},
        {**ENTRY, "body": {"load_kg": 92.5, "reps": "3", "rir": 4}},
        {**ENTRY, "extra": None},
        {name: value for name, value in ENTRY.items() if name != "replaces"},
        [ENTRY],
    ]
    assert len({content_of(raw).digest for raw in variants}) == len(variants)
    turned = {**dict(reversed(ENTRY.items())), "body": dict(reversed(ENTRY["body"].items()))}
    assert content_of(turned) == content_of(ENTRY)


@pytest.mark.parametrize("field", ["n", "revision"])
def test_a_whole_number_with_a_point_says_the_same_outside_the_body(field: str) -> None:
    assert content_of({**ENTRY, field: float(ENTRY[field])}) == content_of(ENTRY)
