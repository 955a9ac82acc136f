"""A document is refused whole, with every fault, its place in words and what would be right."""

from collections.abc import Callable
from typing import Any

import pytest

from undercroft.documents.catalogue import catalogue
from undercroft.documents.faults import Fault, FaultyDocument
from undercroft.documents.reading import parse_json, read_athlete, read_block, read_kit


def faults(read: Callable[..., Any], *given: Any) -> tuple[Fault, ...]:
    with pytest.raises(FaultyDocument) as refused:
        read(*given)
    return refused.value.faults


def first_set(block: Any) -> Any:
    return block["weeks"][0]["sessions"][0]["exercises"][0]["sets"][0]


@pytest.mark.parametrize(
    ("field", "value", "what", "right"),
    [
        ("reps", 0, "0 is out of range", "give at least 1 and at most 200 repetitions"),
        ("reps", 2.5, "2.5 is no whole number", "give at least 1 and at most 200 repetitions"),
        ("reps", "5", "'5' is no number", "give at least 1 and at most 200 repetitions"),
        ("reps", True, "True is no number", "give at least 1 and at most 200 repetitions"),
        ("rir", -1, "-1 is out of range", "give at least 0 and at most 10 repetitions in reserve"),
        ("to_failure", "yes", "'yes' is neither", "write true or false"),
        ("weight", 50, "not known here", "remove it or correct its spelling"),
    ],
)
def test_a_set_says_which_field_is_wrong_and_what_would_be_right(
    block_data: Any, field: str, value: Any, what: str, right: str
) -> None:
    first_set(block_data)[field] = value
    [fault] = faults(read_block, block_data, catalogue())
    assert fault.where == f"week 1, Monday, exercise 1 (back-squat), set 1, {field}"
    assert (fault.what, fault.right) == (what, right)


@pytest.mark.parametrize(
    ("load", "what"),
    [
        ({"basis": "percent", "percent": 600}, "600 is out of range"),
        ({"basis": "percent", "percent": 80, "unit": "stone"}, "not known here"),
        ({"basis": "stone", "stone": 12}, "'stone' is not known here"),
        ({"basis": "kg", "kg": -20}, "-20 is out of range"),
        ({"basis": "kg", "kg": float("nan")}, "nan is out of range"),
        ("80 %", "'80 %' is no object"),
    ],
)
def test_a_load_wish_that_cannot_be_meant_is_refused(block_data: Any, load: Any, what: str) -> None:
    first_set(block_data)["load"] = load
    [fault] = faults(read_block, block_data, catalogue())
    assert fault.what == what


def test_an_unknown_exercise_is_answered_with_the_nearest_name(block_data: Any) -> None:
    block_data["weeks"][0]["sessions"][0]["exercises"][0]["exercise"] = "back-squad"
    [fault] = faults(read_block, block_data, catalogue())
    assert "back-squad" in fault.what
    assert "back-squat" in fault.right


def test_a_maximum_of_an_unknown_lift_is_refused(block_data: Any) -> None:
    first_set(block_data)["load"] = {"basis": "percent", "percent": 80, "of": "log-lift"}
    [fault] = faults(read_block, block_data, catalogue())
    assert "log-lift" in fault.what


def test_every_fault_is_reported_at_once(block_data: Any) -> None:
    monday = block_data["weeks"][0]["sessions"][0]["exercises"]
    monday[0]["sets"][0]["reps"] = 0
    monday[1]["sets"][1]["rir"] = 11
    block_data["weeks"][1]["sessions"][2]["day"] = 8
    places = [fault.path for fault in faults(read_block, block_data, catalogue())]
    assert places == [
        "weeks.0.sessions.0.exercises.0.sets.0.reps",
        "weeks.0.sessions.0.exercises.1.sets.1.rir",
        "weeks.1.sessions.2.day",
    ]


def test_a_hold_needs_seconds_and_a_tempo_its_four_figures(block_data: Any) -> None:
    wednesday = block_data["weeks"][0]["sessions"][1]["exercises"]
    del wednesday[3]["sets"][0]["seconds"]
    friday = block_data["weeks"][0]["sessions"][2]["exercises"]
    del friday[1]["details"]["lifting_s"]
    found = faults(read_block, block_data, catalogue())
    assert [fault.where for fault in found] == [
        "week 1, Wednesday, exercise 4 (plank), set 1, seconds",
        "week 1, Friday, exercise 2 (goblet-squat), details, lifting_s",
    ]


@pytest.mark.parametrize(
    ("rule", "field", "right"),
    [
        ({"rule": "add-kg", "kg": 80}, "kg", "give at least -50 and at most 50 kg"),
        ({"rule": "wave", "percents": [70, 160]}, "percent 2", "give more than 0"),
        ({"rule": "light-week", "every": 4, "factor": 60}, "factor", "give at least 0.3"),
        (
            {"rule": "double", "reps_from": 8, "reps_to": 6, "add_kg": 2.5},
            "reps_to",
            "give 8 or more",
        ),
    ],
)
def test_a_progression_says_which_field_is_wrong_and_what_would_be_right(
    block_data: Any, rule: Any, field: str, right: str
) -> None:
    block_data["weeks"][0]["sessions"][0]["exercises"][0]["progression"] = rule
    [fault] = faults(read_block, block_data, catalogue())
    assert fault.where == f"week 1, Monday, exercise 1 (back-squat), progression, {field}"
    assert fault.right.startswith(right)


def test_two_sets_of_a_session_cannot_share_a_key(block_data: Any) -> None:
    sets = block_data["weeks"][0]["sessions"][0]["exercises"][0]["sets"]
    sets[1]["key"] = sets[0]["key"]
    [fault] = faults(read_block, block_data, catalogue())
    assert fault.where == "week 1, Monday, exercise 1 (back-squat), set 2, key"


def test_two_exercises_of_a_session_cannot_share_a_key(block_data: Any) -> None:
    exercises = block_data["weeks"][0]["sessions"][0]["exercises"]
    exercises[1]["key"] = exercises[0]["key"]
    [fault] = faults(read_block, block_data, catalogue())
    name = exercises[1]["exercise"]
    assert fault.where == f"week 1, Monday, exercise 2 ({name}), key"
    assert fault.right == "give it a key of its own"


def test_two_weeks_of_a_block_cannot_share_a_key(block_data: Any) -> None:
    block_data["weeks"][1]["key"] = block_data["weeks"][0]["key"]
    [fault] = faults(read_block, block_data, catalogue())
    assert fault.where == "week 2, key"
    assert fault.right == "give it a key of its own"


def test_exercises_of_two_sessions_may_share_a_key(block_data: Any) -> None:
    monday, wednesday = (s["exercises"] for s in block_data["weeks"][0]["sessions"][:2])
    wednesday[0]["key"] = monday[0]["key"]
    assert read_block(block_data, catalogue()).weeks


@pytest.mark.parametrize(
    ("sort", "change", "where"),
    [
        ("plates", {"mass_kg": -20}, "plate 1, mass_kg"),
        ("plates", {"mass_kg": 20, "mass_lb": 45}, "plate 1, mass_lb"),
        ("bars", {"mass_kg": 0}, "bar 1 (Steel bar), mass_kg"),
        ("bars", {"key": "hex"}, "bar 2 (Hex bar), key"),
        ("supports", {"spacing_m": 5}, "support 1 (Rack), spacing_m"),
        ("bands", {"rest_length_m": 1.3}, "band 1 (thin, marked L), reading 1, length_m"),
    ],
)
def test_a_kit_cannot_hold_what_cannot_be(
    kit_data: Any, sort: str, change: dict[str, Any], where: str
) -> None:
    kit_data[sort][0] |= change
    assert where in [
        fault.where.replace("readings", "reading") for fault in faults(read_kit, kit_data)
    ]


def test_pins_of_a_stack_are_listed_lightest_first(kit_data: Any) -> None:
    kit_data["stacks"][0]["pins_kg"] = [10, 5]
    [fault] = faults(read_kit, kit_data)
    assert fault.where == "stack 1 (Cable tower), pins_kg"


def test_pound_plates_weigh_what_a_pound_weighs(kit_data: Any) -> None:
    """1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959)."""
    kit_data["plates"] = [{"mass_lb": 45, "count": 2, "thickness_m": 0.04}]
    [plate] = read_kit(kit_data).plates
    assert plate.mass_kg == pytest.approx(20.41165665, abs=1e-12)
    assert plate.label == "45 lb"


def test_an_athletes_maximum_is_of_a_lift_that_exists(athlete_data: Any) -> None:
    athlete_data["maxima"][0]["lift"] = "bak-squat"
    athlete_data["maxima"][1]["on"] = "14.1.2026"
    found = {fault.path: fault.right for fault in faults(read_athlete, athlete_data, catalogue())}
    assert found["maxima.0.lift"].startswith("did you mean back-squat")
    assert found["maxima.1.on"] == "write year-month-day, like 2026-03-31"


@pytest.mark.parametrize("text", ['{"key": ', '{"kg": NaN}', '{"kg": 1, "kg": 2}', "[" * 100_000])
def test_text_that_is_no_sound_json_is_refused_with_its_place(text: str) -> None:
    [fault] = faults(parse_json, text)
    assert fault.where
    assert fault.right


@pytest.mark.parametrize("text", ["null\x00byte", "lone \ud800 surrogate", "x" * 2001])
def test_text_that_a_database_cannot_keep_is_refused(block_data: Any, text: str) -> None:
    block_data["note"] = text
    [fault] = faults(read_block, block_data, catalogue())
    assert fault.where == "note"
