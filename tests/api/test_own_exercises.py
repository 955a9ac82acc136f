"""A coach's own exercises: in blocks like any other, kept for what names them, nobody else's."""

from typing import Any

import pytest
from tests.fixtures import block_data, kit_data
from tests.people import AtDesk, Phone

BARREL = {
    "name": "Barrel lift",
    "implement": "dumbbell",
    "prime": ["glutes", "upper-back"],
    "helpers": ["grip"],
    "needs": ["barrel"],
    "start_share": 0.2,
    "range_share": 0.5,
    "cues": ["Hug it", "Stand tall"],
    "alternatives": ["goblet-squat"],
}


def adds(coach: AtDesk, **facts: Any) -> str:
    answer = coach.post("/desk/exercises", {"document": {**BARREL, **facts}})
    assert answer.status_code == 201, answer.text
    return str(answer.json["key"])


def known(coach: AtDesk) -> dict[str, Any]:
    return {one["key"]: one for one in coach.get("/desk/catalogue").json["exercises"]}


def block_with(key: str) -> dict[str, Any]:
    """The block of two weeks with the exercise as the last of its first session."""
    document = block_data()
    sets = [{"key": "own.1", "reps": 5, "load": {"basis": "kg", "kg": 10}}]
    plan = {"key": "own", "exercise": key, "method": "straight", "sets": sets}
    document["weeks"][0]["sessions"][0]["exercises"].append(plan)
    return document


def sends(coach: AtDesk, athlete: str, document: dict[str, Any]) -> dict[str, Any]:
    answer = coach.post("/desk/blocks", {"document": document})
    assert answer.json["faults"] == []
    sent = coach.post(f"/desk/blocks/{answer.json['id']}/send", {"athletes": [athlete]})
    assert sent.status_code == 200, sent.text
    return dict(sent.json)


def writes_kit(coach: AtDesk, athlete: str) -> None:
    kit = {**kit_data(), "things": [*kit_data()["things"], "barrel"]}
    assert coach.post(f"/desk/athletes/{athlete}/kit", {"document": kit}).status_code == 200


def on_the_sheet(phone: Phone) -> dict[str, Any]:
    """The exercise as the newest sheet of its session tells it to a phone."""
    sheets = [item["body"] for item in phone.reads_all() if item["kind"] == "sheet"]
    first = [sheet for sheet in sheets if sheet["session"] == "w1-mon"][-1]
    return dict(next(one for one in first["exercises"] if one["key"] == "own"))


def test_an_own_exercise_stands_among_the_others(coach: AtDesk) -> None:
    key = adds(coach)
    assert key == "own-barrel-lift"
    assert known(coach)[key].items() >= {**BARREL, "own": True, "archived": False}.items()


def test_another_coach_has_none_of_it(coach: AtDesk, other_coach: AtDesk) -> None:
    key = adds(coach)
    assert key not in known(other_coach)
    assert other_coach.get(f"/desk/exercises/{key}").status_code == 404
    faults = other_coach.post("/desk/blocks", {"document": block_with(key)}).json["faults"]
    assert [fault["what"] for fault in faults] == [f"no exercise '{key}' in the catalogue"]


def test_it_is_sent_with_a_load_and_the_coachs_cue(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    key = adds(coach)
    writes_kit(coach, ready)
    assert sends(coach, ready, block_with(key))["refused"] == []
    told = on_the_sheet(device)
    assert (told["name"], told["cue"]) == ("Barrel lift", "Hug it")
    assert told["loads"][told["sets"][0]["load"]]["kg"] == 10


def test_a_kit_without_what_it_needs_stops_the_sending(coach: AtDesk, ready: str) -> None:
    [refused] = sends(coach, ready, block_with(adds(coach)))["refused"]
    assert "not here: barrel" in {stop["what"] for stop in refused["stops"]}


def test_a_change_reaches_the_sheets_not_begun(coach: AtDesk, ready: str, device: Phone) -> None:
    key = adds(coach)
    writes_kit(coach, ready)
    sends(coach, ready, block_with(key))
    device.reads_all()
    changed = {**BARREL, "name": "Keg lift", "cues": ["Slow off the floor"]}
    assert coach.post(f"/desk/exercises/{key}", {"document": changed}).status_code == 204
    told = on_the_sheet(device)
    assert (told["name"], told["cue"]) == ("Keg lift", "Slow off the floor")


def test_a_change_reaches_the_sheets_that_offer_it_instead(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    barrel = adds(coach)
    key = adds(coach, name="Keg lift", alternatives=[barrel])
    writes_kit(coach, ready)
    sends(coach, ready, block_with(key))
    device.reads_all()
    changed = {**BARREL, "cues": ["Slow off the floor"]}
    assert coach.post(f"/desk/exercises/{barrel}", {"document": changed}).status_code == 204
    offered = {one["exercise"]: one for one in on_the_sheet(device)["alternatives"]}
    assert offered[barrel]["cue"] == "Slow off the floor"


@pytest.mark.parametrize("name", ["Back squat", "back SQUAT", "Barrel lift"])
def test_a_name_that_is_taken_is_refused(coach: AtDesk, name: str) -> None:
    adds(coach)
    answer = coach.post("/desk/exercises", {"document": {**BARREL, "name": name}})
    assert answer.status_code == 422
    assert answer.json["errors"][0]["what"] == f"{name!r} is taken"


def test_no_own_key_is_one_of_the_catalogue(coach: AtDesk) -> None:
    answer = coach.post("/desk/exercises", {"document": {**BARREL, "key": "back-squat"}})
    assert answer.json["key"] == "own-barrel-lift"
    assert coach.post("/desk/exercises/back-squat", {"document": BARREL}).status_code == 404
    assert adds(coach, name="Barrel-lift!") == "own-barrel-lift-2"


@pytest.mark.parametrize(
    ("facts", "path"),
    [
        ({"prime": ["wings"]}, "prime.0"),
        ({"prime": []}, "prime"),
        ({"implement": "broom"}, "implement"),
        ({"range_share": None}, "range_share"),
        ({"hands_sink": True}, "range_share"),
        ({"alternatives": ["levitation"]}, "alternatives.0"),
        ({"name": ""}, "name"),
    ],
)
def test_a_fault_is_told_at_its_place(coach: AtDesk, facts: dict[str, Any], path: str) -> None:
    answer = coach.post("/desk/exercises", {"document": {**BARREL, **facts}})
    assert answer.status_code == 422
    assert path in {fault["path"] for fault in answer.json["errors"]}


def test_what_a_revision_names_is_archived_and_not_removed(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    key = adds(coach)
    writes_kit(coach, ready)
    sends(coach, ready, block_with(key))
    refused = coach.post(f"/desk/exercises/{key}/remove")
    assert refused.status_code == 409
    assert "a block and in a revision" in refused.json["detail"]
    assert "archive it instead" in refused.json["detail"]
    assert coach.post(f"/desk/exercises/{key}/archive").status_code == 204
    assert known(coach)[key]["archived"]
    assert coach.get(f"/desk/athletes/{ready}/results").status_code == 200
    assert on_the_sheet(device)["name"] == "Barrel lift"
    assert coach.post(f"/desk/exercises/{key}/restore").status_code == 204
    assert not known(coach)[key]["archived"]


def test_what_nothing_names_can_be_removed(coach: AtDesk) -> None:
    key, other = adds(coach), adds(coach, name="Keg lift", alternatives=["own-barrel-lift"])
    assert coach.post(f"/desk/exercises/{key}/remove").status_code == 409
    assert coach.post(f"/desk/exercises/{other}/remove").status_code == 204
    assert coach.post(f"/desk/exercises/{key}/remove").status_code == 204
    assert key not in known(coach)


def test_what_a_machine_of_a_kit_is_for_is_not_removed(coach: AtDesk, ready: str) -> None:
    key = adds(coach)
    kit = coach.get(f"/desk/athletes/{ready}").json["kit"]
    kit["stacks"] = [{"key": "sled", "name": "Sled", "pins_kg": [10, 20], "only_for": [key]}]
    assert coach.post(f"/desk/athletes/{ready}/kit", {"document": kit}).status_code == 200
    refused = coach.post(f"/desk/exercises/{key}/remove")
    assert refused.status_code == 409
    assert "in a kit" in refused.json["detail"]


def test_an_archived_exercise_is_nobodys_alternative(coach: AtDesk) -> None:
    key, other = adds(coach), adds(coach, name="Keg lift", alternatives=["own-barrel-lift"])
    coach.post(f"/desk/exercises/{key}/archive")
    assert known(coach)[other]["alternatives"] == []


def test_own_cues_stand_in_place_of_the_catalogues_until_taken_back(
    coach: AtDesk, other_coach: AtDesk
) -> None:
    before = known(coach)["back-squat"]["cues"]
    path = "/desk/exercises/back-squat/cues"
    assert coach.post(path, {"cues": ["Spread the floor"]}).status_code == 204
    seen = known(coach)["back-squat"]
    assert (seen["cues"], seen["own_cues"]) == (["Spread the floor"], True)
    assert known(other_coach)["back-squat"]["cues"] == before
    assert coach.post(path, {"cues": []}).status_code == 204
    assert known(coach)["back-squat"]["cues"] == before
