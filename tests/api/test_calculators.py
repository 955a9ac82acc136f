"""The desk's calculators: right against outside values, and refusing what they cannot tell."""

import math
from collections.abc import Iterator
from typing import Any

import pytest
from flask import Flask
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.api.calculating import CASES, CELLAR, LOOP_29, THIGH
from tests.people import START_MS, AtDesk, Clock, enlist

from undercroft.documents.calculators import CurveName
from undercroft.documents.inputs import InputLine, lines_of
from undercroft.domain.strength import EQUATIONS, HANDBOOK
from undercroft.services.calculators import CALCULATORS, calculate
from undercroft.services.clock import DAY_MS, day_of


def asks(coach: AtDesk, key: str, inputs: Any) -> Any:
    return coach.post(f"/desk/calculators/{key}", {"inputs": inputs})


@pytest.fixture
def desk(sqlite_app: Flask, clock: Clock) -> AtDesk:
    return enlist(sqlite_app, clock, "Ottilie Brandt", "ottilie@example.org")


def test_every_calculator_agrees_with_values_from_outside(desk: AtDesk) -> None:
    for key, inputs, expected, within, source in CASES:
        answer = asks(desk, key, inputs)
        assert answer.status_code == 200, (key, source, answer.text)
        found = {one["name"]: one["value"] for one in answer.json["result"] if one["unit"] != "N"}
        for name, value in expected.items():
            assert found[name] == pytest.approx(value, abs=max(within, 1e-9)), (key, name, source)


def test_every_calculator_is_held_against_a_value_from_outside() -> None:
    assert {key for key, *_ in CASES} == set(CALCULATORS)


def test_the_list_gives_formula_source_range_doubt_and_limits(desk: AtDesk) -> None:
    listed = desk.get("/desk/calculators").json["calculators"]
    assert [one["key"] for one in listed] == list(CALCULATORS)
    for one in listed:
        assert all(one[word] for word in ("name", "formula", "source", "range", "doubt")), one
        told = [*one["inputs"], *(part for line in one["inputs"] for part in line["of"])]
        assert all(line["label"] != line["name"] for line in told), one["key"]
        assert all(len(line["choice_names"]) == len(line["choices"]) for line in told), one["key"]
    pulley = {line["name"]: line for line in listed[-1]["inputs"]}
    assert pulley["stack_kg"]["unit"] == "kg"
    assert (pulley["efficiency"]["least"], pulley["efficiency"]["most"]) == (0.7, 1)
    assert pulley["efficiency"]["default"] == 0.98


def test_a_choice_says_which_inputs_it_asks_for(desk: AtDesk) -> None:
    listed = {one["key"]: one for one in desk.get("/desk/calculators").json["calculators"]}
    when = {line["name"]: line["when"] for line in listed["cuff-pressure"]["inputs"]}
    assert when["systolic"] == {"name": "basis", "one_of": ["equation", "padding"]}
    assert when["measured_by"] == {"name": "basis", "one_of": ["measured"]}
    assert when["limb"] is None
    asked = {name for name, one in when.items() if one and "equation" in one["one_of"]}
    always = {name for name, one in when.items() if one is None}
    assert set(THIGH) == always | asked


def test_the_cuff_says_before_any_number_for_whom_it_is(desk: AtDesk) -> None:
    listed = {one["key"]: one for one in desk.get("/desk/calculators").json["calculators"]}
    caution = listed["cuff-pressure"]["caution"]
    for words in ("trained to measure", "no advice", "licensed clinician", "local rules"):
        assert words in caution


def test_every_repetition_curve_can_be_chosen() -> None:
    assert {one.value for one in CurveName} == {HANDBOOK.name, *(one.key for one in EQUATIONS)}


@pytest.mark.parametrize(
    ("key", "inputs", "path", "right"),
    [
        ("pulley", {}, "inputs.stack_kg", "needed"),
        ("pulley", {"stack_kg": "50"}, "inputs.stack_kg", "at most 400 kg"),
        ("pulley", {"stack_kg": 50, "efficiency": 1.2}, "inputs.efficiency", "at most 1"),
        ("pulley", {"stack_kg": 50, "weight": 1}, "inputs.weight", "remove it"),
        ("maximum-from-set", {"load_kg": 100, "reps": 16}, "inputs.reps", "at most 15"),
        ("maximum-from-set", {"load_kg": 100, "reps": 9, "rir": 7}, "inputs.rir", "at most 15"),
        ("reps-at-load", {"load_kg": 50, "maximum_kg": 100}, "inputs.load_kg", "0.650 to 1"),
        ("reps-at-load", {"load_kg": 101, "maximum_kg": 100}, "inputs.load_kg", "0.650 to 1"),
        ("band-force", {**LOOP_29, "length_m": 2.7}, "inputs.length_m", "2.6 or less"),
        (
            "band-force",
            {**LOOP_29, "length_m": 1.5, "readings": [{"length_m": 1.045, "force_n": 9}]},
            "inputs.readings.0",
            "1.06 m or more",
        ),
        (
            "landmine",
            {"bar_kg": 20, "bar_centre_m": 1.1, "plates_kg": 0, "plates_at_m": 1.8, "hand_m": 1.5,
             "hand_height_m": 1.6},
            "inputs.hand_height_m",
            "below 1.55",
        ),
        (
            "tipping",
            {"bar_kg": 20, "spacing_m": 0.6, "left_kg": 1, "left_at_m": 0.7, "play_m": 0.3},
            "inputs.play_m",
            "below 0.3",
        ),
        ("cuff-pressure", {**THIGH, "width_mm": 50}, "inputs.width_mm", "180"),
        ("cuff-pressure", {**THIGH, "age": 60}, "inputs.age", "18 to 35"),
        ("cuff-pressure", {**THIGH, "limb": "upper-arm"}, "inputs.limb", "measure it"),
        ("cuff-pressure", {**THIGH, "percent": 80}, "inputs.percent", "40 to 50"),
        ("cuff-pressure", {**THIGH, "basis": "padding"}, "inputs.girth_cm", "give it"),
        ("plates", {"bar_kg": 20, "plates": CELLAR, "target_kg": 50, "upper_kg": 10},
         "inputs.upper_kg", "at least 20"),
        ("plates", {"bar_kg": 20, "plates": [], "target_kg": 50}, "inputs.plates", "give 1 to 24"),
    ],
)  # fmt: skip
def test_what_cannot_be_told_is_refused_by_name(
    desk: AtDesk, key: str, inputs: Any, path: str, right: str
) -> None:
    answer = asks(desk, key, inputs)
    assert answer.status_code == 422, answer.text
    found = {one["path"]: one["right"] + one["what"] for one in answer.json["errors"]}
    assert right in found[path]


def test_a_measured_pressure_grows_old(desk: AtDesk) -> None:
    measured = {
        "basis": "measured", "limb": "upper-arm", "width_mm": 50, "material": "nylon",
        "percent": 80, "measured_mmhg": 140, "measured_by": "a nurse", "position": "sitting",
    }  # fmt: skip
    fresh = {**measured, "measured_on": day_of(START_MS - 5 * DAY_MS).isoformat()}
    old = {**measured, "measured_on": day_of(START_MS - 40 * DAY_MS).isoformat()}
    assert asks(desk, "cuff-pressure", fresh).json["result"][0]["value"] == pytest.approx(112)
    answer = asks(desk, "cuff-pressure", old)
    assert answer.status_code == 422
    assert answer.json["errors"][0]["path"] == "inputs.measured_on"


def test_an_unknown_calculator_is_answered_with_the_known_ones(desk: AtDesk) -> None:
    answer = asks(desk, "horoscope", {})
    assert answer.status_code == 404
    assert "band-force" in answer.json["detail"]


def test_a_bar_that_cannot_tip_has_no_limit(desk: AtDesk) -> None:
    inputs = {"bar_kg": 20, "spacing_m": 1.1, "left_kg": 300, "left_at_m": 0.5}
    answer = asks(desk, "tipping", inputs).json
    assert [one["name"] for one in answer["result"]] == [
        "Left support bears",
        "Right support bears",
    ]
    assert answer["notes"] == ["nothing here can turn it over"]


def values_of(line: InputLine) -> st.SearchStrategy[Any]:
    if line.choices:
        return st.sampled_from(line.choices)
    if line.kind == "list":
        return st.lists(st.fixed_dictionaries({o.name: values_of(o) for o in line.of}), max_size=4)
    if line.kind == "whole number":
        return st.integers(int(line.least or 0), int(line.most or 9))
    if line.kind == "number":
        return st.floats(line.least, line.most, exclude_min=line.above)
    return st.just("2026-02-01") if line.kind == "date" else st.text(max_size=3)


def inputs_of(key: str) -> st.SearchStrategy[dict[str, Any]]:
    lines = lines_of(CALCULATORS[key].inputs)
    needed = {line.name: values_of(line) for line in lines if line.needed}
    others = {line.name: values_of(line) for line in lines if not line.needed}
    return st.fixed_dictionaries(needed, optional=others)


@pytest.mark.parametrize("key", CALCULATORS)
def test_within_its_limits_every_input_gives_finite_numbers_or_a_named_refusal(
    key: str, desk: AtDesk
) -> None:
    @settings(
        max_examples=60, deadline=None, database=None,
        suppress_health_check=list(HealthCheck),
    )  # fmt: skip
    @given(inputs=inputs_of(key))
    def ask(inputs: dict[str, Any]) -> None:
        answer = asks(desk, key, inputs)
        assert answer.status_code in (200, 422), answer.text
        if answer.status_code == 422:
            assert all(one["path"].startswith("inputs.") for one in answer.json["errors"])
        else:
            assert all(math.isfinite(value) for value in numbers(answer.json))

    ask()


def numbers(answer: Any) -> Iterator[float]:
    return (one["value"] for one in answer["result"])


def test_a_doubt_is_that_of_the_band_at_hand() -> None:
    readings = [{"length_m": 1.2 + 0.2 * n, "force_n": 60.0 + 30 * n} for n in range(4)]
    for count, words in ((0, "20%"), (1, "8%"), (4, "1%")):
        inputs = {**LOOP_29, "length_m": 1.25, "readings": readings[:count]}
        _, result = calculate("band-force", inputs, START_MS)
        assert result.doubt.startswith(words)
