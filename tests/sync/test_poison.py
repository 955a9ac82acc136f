"""Fault 21: a poisoned entry at the head of the outbox."""

import json
from typing import Any

import pytest
from tests.people import AtDesk, Phone, statuses
from tests.sync.asking import positions

POISON: list[Any] = [
    None,
    7,
    "text",
    [],
    [[[[]]]],
    {},
    {"id": None},
    {"id": "\x00"},
    {"id": "\ud800"},
    {"id": {"a": 1}},
    {"n": -1},
    {"n": 10**40},
    {"n": True},
    {"v": 0},
    {"v": "1"},
    {"kind": ["set.done"]},
    {"kind": "\x00"},
    {"replaces": 5},
    {"at": "yesterday"},
    {"at": "2026-02-30T00:00:00Z"},
    {"at": "2026-02-03T18:04:11"},
    {"revision": 0},
    {"revision": 2**40},
    {"session": None},
    {"session": "W1 mon"},
    {"set": None},
    {"set": "a\x00b"},
    {"body": None},
    {"body": {"load_kg": "92.5"}},
    {"body": {"load_kg": True}},
    {"body": {"reps": 3.5}},
    {"body": {"rir": 0.3}},
    {"body": {"side": "both"}},
    {"body": {"note": "unknown field"}},
    {"body": {"\ud800": 1}},
    {"extra": 1},
]


@pytest.mark.parametrize("poison", POISON, ids=repr)
def test_21_a_poisoned_entry_at_the_head_is_held_and_blocks_none_behind_it(
    coach: AtDesk, device: Phone, poison: Any
) -> None:
    head = device.writes.done("squat.1")
    if isinstance(poison, dict) and poison:
        poison = {**head, **poison}
    behind = device.writes.many(3)
    answer = device.syncs(poison, *behind)
    assert statuses(answer) == ["held", "stored", "stored", "stored"]
    assert set(answer["verdicts"][0]["problem"]) == {"code", "where", "what", "right"}
    (held,) = coach.held(device.athlete_id)
    assert held["sent"] == poison, "it is kept as it came"
    again = device.syncs(poison, *behind)
    assert statuses(again) == ["held"] + ["duplicate"] * 3
    assert again["verdicts"][0]["position"] == answer["verdicts"][0]["position"]
    positions(device.athlete_id)


def test_21_a_number_beyond_all_bounds_is_held_too(coach: AtDesk, device: Phone) -> None:
    entry = json.dumps(device.writes.done("squat.1")).replace("92.5", "1e999")
    behind = json.dumps(device.writes.done("squat.2"))
    asks = json.dumps(device.asks()).replace("[]", f"[{entry}, {behind}]")
    answer = device.browser.post("/api/v1/sync", data=asks, content_type="application/json")
    assert statuses(answer.json) == ["held", "stored"]
    assert coach.held(device.athlete_id)[0]["sent"]["body"]["load_kg"] == "1e999"
