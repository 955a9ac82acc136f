"""Exercises looked up: for themselves, and for one athlete in that athlete's cellar."""

from typing import Any

import pytest
from tests.fixtures import athlete_data, kit_data
from tests.people import AtDesk


def for_athlete(coach: AtDesk, athlete: str) -> dict[str, Any]:
    answer = coach.get(f"/desk/athletes/{athlete}/exercises")
    assert answer.status_code == 200, answer.text
    return {one["key"]: one for one in answer.json["exercises"]}


def saves(coach: AtDesk, athlete: str, **facts: Any) -> None:
    document = {**athlete_data(), **facts}
    path = f"/desk/athletes/{athlete}/document"
    assert coach.post(path, {"document": document}).status_code == 200


def test_a_start_height_comes_from_stature_until_a_tape_was_read(
    coach: AtDesk, athlete: str
) -> None:
    saves(coach, athlete, stature_m=1.8, ranges=[])
    way = for_athlete(coach, athlete)["deadlift"]["way"]
    assert way == {"start_cm": 23.0, "end_cm": 74.0, "range_cm": 51.0, "measured": False}
    tape = {"exercise": "deadlift", "start_height_m": 0.225, "range_m": 0.487}
    saves(coach, athlete, stature_m=1.8, ranges=[tape])
    way = for_athlete(coach, athlete)["deadlift"]["way"]
    assert way == {"start_cm": 22.5, "end_cm": 71.2, "range_cm": 48.7, "measured": True}


def test_a_pulldown_ends_below_its_start(coach: AtDesk, athlete: str) -> None:
    saves(coach, athlete, stature_m=1.8, ranges=[])
    way = for_athlete(coach, athlete)["pulldown"]["way"]
    assert way["end_cm"] == way["start_cm"] - way["range_cm"]


def test_what_would_tell_a_height_that_is_not_known(coach: AtDesk, athlete: str) -> None:
    seen = for_athlete(coach, athlete)
    assert (seen["deadlift"]["way"], seen["deadlift"]["told_by"]) == (None, "stature")
    assert (seen["plank"]["way"], seen["plank"]["told_by"]) == (None, "tape")


def test_without_a_kit_only_the_body_is_at_hand(coach: AtDesk, athlete: str) -> None:
    answer = coach.get(f"/desk/athletes/{athlete}/exercises").json
    assert answer["kit"] is None
    seen = {one["key"]: one["lacking"] for one in answer["exercises"]}
    assert seen["push-up"] == []
    assert seen["bench-press"] == ["straight bar", "support", "bench"]
    assert seen["landmine-row"] == ["landmine"]


def test_a_kit_lacks_what_was_not_written_down(coach: AtDesk, athlete: str) -> None:
    kit = {**kit_data(), "things": ["Bench"]}
    assert coach.post(f"/desk/athletes/{athlete}/kit", {"document": kit}).status_code == 200
    seen = for_athlete(coach, athlete)
    assert seen["bench-press"]["lacking"] == []
    assert seen["step-up"]["lacking"] == ["box"]


def test_an_injury_flags_the_exercises_to_be_avoided(coach: AtDesk, athlete: str) -> None:
    hurt = {"where": "left shoulder", "note": "since spring", "avoid": ["dip"]}
    saves(coach, athlete, name="Runa Falk", injuries=[hurt])
    seen = for_athlete(coach, athlete)
    assert seen["dip"]["avoid"] == ["left shoulder"]
    assert seen["push-up"]["avoid"] == []
    avoided = coach.get("/desk/exercises/dip").json["avoided_by"]
    where = {"where": "left shoulder", "note": "since spring"}
    assert avoided == [{"id": athlete, "name": "Runa Falk", **where}]


def test_another_coachs_injured_are_not_told(
    coach: AtDesk, athlete: str, other_coach: AtDesk
) -> None:
    saves(coach, athlete, injuries=[{"where": "knee", "avoid": ["dip"]}])
    assert other_coach.get("/desk/exercises/dip").json["avoided_by"] == []


@pytest.mark.parametrize("key", ["levitation", "Dip"])
def test_an_exercise_that_nobody_knows_is_not_found(coach: AtDesk, key: str) -> None:
    answer = coach.get(f"/desk/exercises/{key}")
    assert answer.status_code == 404
    assert answer.json["detail"].startswith("there is no such exercise")
