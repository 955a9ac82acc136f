"""A block as a table comes back as the identical document, and says where a cell is wrong."""

import json
from pathlib import Path
from typing import Any

import pytest

from undercroft.documents.block import BlockShape
from undercroft.documents.block_csv import write_block_csv
from undercroft.documents.block_table import read_block_csv
from undercroft.documents.canonical import to_json
from undercroft.documents.catalogue import catalogue
from undercroft.documents.cells import guarded, read_object, unguarded, write_object
from undercroft.documents.faults import FaultyDocument
from undercroft.documents.reading import read_block
from undercroft.documents.wish import PROGRESSIONS, WISHES
from undercroft.domain.program.methods import Method

FIXTURES = Path(__file__).parents[2] / "fixtures" / "blocks"


def test_json_and_table_of_a_block_are_the_same_document() -> None:
    from_json = read_block(json.loads((FIXTURES / "two-weeks.json").read_text()), catalogue())
    from_table = read_block_csv((FIXTURES / "two-weeks.csv").read_text(), catalogue())
    assert from_json == from_table


def test_there_and_back_again_is_the_same_to_the_byte() -> None:
    text = (FIXTURES / "two-weeks.csv").read_text()
    block = read_block_csv(text, catalogue())
    assert write_block_csv(block) == text
    assert to_json(BlockShape().dump(block)) == (FIXTURES / "two-weeks.json").read_text()


def everything() -> Any:
    """A block that uses each kind of cell."""
    one = {
        "key": "x-1",
        "reps": 5,
        "load": {"basis": "percent", "percent": 62.5, "of": "deadlift", "point": "lockout"},
    }
    exercise = {
        "key": "x",
        "exercise": "hex-bar-deadlift",
        "method": "speed",
        "details": {"stop_at_loss_percent": 15},
        "implement": "hex-bar",
        "group": "A",
        "rest": {"from_s": 75, "to_s": 90},
        "cue": '=fast, "very" fast',
        "rig": {"part": "bands", "share_percent": 25, "things": ["10", "left"]},
        "warm_up": [],
        "tolerance_percent": 2.5,
        "hold_the_plan": True,
        "progression": {"rule": "wave", "percents": [60, 65, 70], "step_percent": 2.5},
        "sets": [one],
    }
    cluster = {
        "key": "y",
        "exercise": "deadlift",
        "method": "cluster",
        "details": {"block_rest_s": 20},
        "warm_up": [{"reps": 5, "share": 0.4}],
        "sets": [{"key": "y-1", "blocks": [3, 3, 2], "load": {"basis": "kg", "kg": 100}}],
    }
    session = {"key": "s", "name": "One", "day": 1, "exercises": [exercise, cluster]}
    weeks = [
        {"key": "w", "name": "Full", "sessions": [session]},
        {"key": "e", "name": "Empty", "sessions": []},
    ]
    return {"key": "b", "name": "All", "note": "- a\nsecond line ", "weeks": weeks}


def test_every_kind_of_cell_survives() -> None:
    block = read_block(everything(), catalogue())
    assert read_block_csv(write_block_csv(block), catalogue()) == block


@pytest.mark.parametrize("name", ["every-method", "four-weeks", "next-two-weeks", "two-weeks"])
def test_each_block_goes_out_and_comes_in_again_byte_for_byte(name: str) -> None:
    text = (FIXTURES / f"{name}.json").read_text()
    block = read_block(json.loads(text), catalogue())
    table = write_block_csv(block)
    again = read_block_csv(table, catalogue())
    assert to_json(BlockShape().dump(again)) == to_json(BlockShape().dump(block)) == text
    assert write_block_csv(again) == table


def test_every_method_is_in_the_block_that_goes_out_and_in() -> None:
    block = read_block(json.loads((FIXTURES / "every-method.json").read_text()), catalogue())
    sessions = [one for week in block.weeks for one in week.sessions]
    assert {plan.method for one in sessions for plan in one.exercises} == set(Method)


FULL_WISHES: dict[str, Any] = {
    "percent": {
        "percent": 72.5,
        "of": "deadlift",
        "ratio": 0.85,
        "point": "mean",
        "when_unknown": "find",
    },
    "kg": {"kg": 22.25, "in_hand": True},
    "rir": {"rir": 2.5, "when_unknown": "refuse"},
    "last": {"add_kg": -1.25, "start_kg": 40},
    "top-set": {"percent": 90},
    "body": {"add_kg": -17.5},
    "none": {},
}
FULL_RULES: dict[str, Any] = {
    "add-kg": {"kg": 2.5},
    "add-percent": {"percent": -5},
    "percent-by-week": {"percents": [70, 72.5, 75]},
    "wave": {"percents": [70, 75, 80], "step_percent": 2.5},
    "double": {"reps_from": 6, "reps_to": 9, "add_kg": 2.5},
    "falling-reserve": {"rirs": [3, 2.5, 1]},
    "rising-sets": {"sets": [3, 4, 5]},
    "light-week": {"every": 4, "factor": 0.85},
    "repeat": {},
    "test-week": {"every": 6},
}


def plain_squats(**more: Any) -> Any:
    document = everything()
    one = {"key": "x-1", "reps": 5, "load": {"basis": "kg", "kg": 60}, **more.pop("set", {})}
    squat = {"key": "x", "exercise": "back-squat", "method": "straight", "sets": [one], **more}
    document["weeks"][0]["sessions"][0]["exercises"] = [squat]
    return document


@pytest.mark.parametrize("basis", WISHES)
def test_every_load_wish_goes_out_and_comes_in_with_all_that_it_says(basis: str) -> None:
    load = {"basis": basis, **FULL_WISHES[basis]}
    block = read_block(plain_squats(set={"load": load}), catalogue())
    assert read_block_csv(write_block_csv(block), catalogue()) == block


@pytest.mark.parametrize("rule", PROGRESSIONS)
def test_every_progression_goes_out_and_comes_in_with_all_that_it_says(rule: str) -> None:
    progression = {"rule": rule, **FULL_RULES[rule]}
    block = read_block(plain_squats(progression=progression), catalogue())
    assert read_block_csv(write_block_csv(block), catalogue()) == block


def test_written_by_hand_keys_and_empty_columns_may_be_left_out() -> None:
    block = read_block_csv(
        "week,session,day,exercise,method,load,sets,reps,rir,rest\n"
        "One,Heavy,1,back-squat,straight,percent 80,3,5,2,120-180\n"
        "One,Heavy,1,bench-press,straight,rir 2,2,6,,90\n",
        catalogue(),
    )
    squat, bench = block.weeks[0].sessions[0].exercises
    assert [one.key for one in squat.sets] == ["w1-s1-1.1", "w1-s1-1.2", "w1-s1-1.3"]
    assert len(bench.sets) == 2
    assert bench.rest is not None
    assert (bench.rest.from_s, bench.rest.to_s) == (90, 90)


@pytest.mark.parametrize(
    ("row", "where"),
    [
        ("One,Heavy,1,back-squat,straight,percent 80,5,0,", "line 2: week 1, Monday"),
        ("One,Heavy,1,back-squat,straight,percent 80,5,5,soon", "line 2, column rest"),
        ("One,Heavy,1,back-squat,straight,percent 80,99,5,", "line 2, column sets"),
        ("One,Heavy,1,back-squat,straight,kg 20 fast,1,5,", "line 2, column load"),
        ("One,Heavy,1,back-squat,straight,kg 20,1,5,,,,", "line 2"),
    ],
)
def test_a_wrong_cell_is_told_by_its_line(row: str, where: str) -> None:
    header = "week,session,day,exercise,method,load,sets,reps,rest\n"
    with pytest.raises(FaultyDocument) as refused:
        read_block_csv(header + row + "\n", catalogue())
    assert refused.value.faults[0].where.startswith(where)
    assert refused.value.faults[0].right


def test_a_column_that_nobody_knows_is_refused() -> None:
    with pytest.raises(FaultyDocument, match="column 'sessoin' is not known"):
        read_block_csv("week,sessoin\nOne,Heavy\n", catalogue())


@pytest.mark.parametrize("text", ["=1+1", "+44", "-x", "@a", "'=1", "\tx", "plain", "'", "''"])
def test_no_cell_starts_a_formula_and_none_is_changed(text: str) -> None:
    assert not guarded(text).startswith(("=", "+", "-", "@", "\t", "\r"))
    assert unguarded(guarded(text)) == text


def test_an_object_in_a_cell_has_one_spelling() -> None:
    wish = {"basis": "percent", "percent": 80.0, "of": "back-squat"}
    assert write_object(wish, "basis") == "percent 80 of=back-squat"
    assert read_object("percent 80 of=back-squat", "basis") == wish
