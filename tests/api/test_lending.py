"""Own exercises that go along with what is sent to another coach's athlete."""

from typing import Any

import pytest
from tests.api.training import done_sets, entries_of, finished, send, sheets
from tests.fixtures import block_data
from tests.people import AtDesk, Phone
from tests.storing import everything

BARREL = {
    "name": "Barrel lift",
    "implement": "dumbbell",
    "prime": ["glutes"],
    "start_share": 0.2,
    "range_share": 0.5,
    "cues": ["Hug it"],
}
BETTER = {**BARREL, "cues": ["Chin over the rim", "Hug it"]}


def with_barrel(key: str) -> dict[str, Any]:
    document = block_data()
    sets = [{"key": "own.1", "reps": 5, "load": {"basis": "kg", "kg": 10}}]
    plan = {"key": "own", "exercise": key, "method": "straight", "sets": sets}
    document["weeks"][0]["sessions"][0]["exercises"].append(plan)
    return document


def cues_of(coach: AtDesk, key: str) -> list[str]:
    known = coach.get("/desk/catalogue").json["exercises"]
    (found,) = [one["cues"] for one in known if one["key"] == key]
    return list(found)


@pytest.fixture
def barrel(writing_coach: AtDesk) -> str:
    """The writing coach's own exercise."""
    return str(writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"])


@pytest.fixture
def lent(writing_coach: AtDesk, ready: str, barrel: str) -> str:
    """The writing coach's block with it, sent once."""
    block = writing_coach.post("/desk/blocks", {"document": with_barrel(barrel)}).json["id"]
    send(writing_coach, block, ready)
    return str(block)


def bettered(coach: AtDesk, key: str, document: dict[str, Any]) -> None:
    answer = coach.post(f"/desk/exercises/{key}", {"document": document})
    assert answer.status_code == 204, answer.text


def test_own_exercises_go_along_with_what_is_sent(
    coach: AtDesk, writing_coach: AtDesk, ready: str, device: Phone
) -> None:
    key = writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"]
    document = with_barrel(key)
    before = writing_coach.post("/desk/loads", {"athlete": ready, "document": document}).json
    assert before["faults"] == [], "it can be looked at before anything is lent"
    block = writing_coach.post("/desk/blocks", {"document": document}).json["id"]
    send(writing_coach, block, ready)
    coach.post(f"/desk/athletes/{ready}/sharing/{writing_coach.id}/end")
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    assert any(done_sets(coach, ready, "w1-mon"))
    assert key in [one["key"] for one in coach.get("/desk/catalogue").json["exercises"]]


def test_what_is_refused_leaves_nothing_with_the_athletes_coach(
    coach: AtDesk, writing_coach: AtDesk, athlete: str
) -> None:
    key = writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"]
    block = writing_coach.post("/desk/blocks", {"document": with_barrel(key)}).json["id"]
    before = everything()
    answer = writing_coach.post(f"/desk/blocks/{block}/send", {"athletes": [athlete]}).json
    assert answer["refused"], "there is no kit"
    assert everything() == before


def test_a_lift_that_loads_are_a_part_of_goes_along_too(
    coach: AtDesk, writing_coach: AtDesk, ready: str, device: Phone
) -> None:
    key = writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"]
    document = block_data()
    for one in document["weeks"][0]["sessions"][0]["exercises"][1]["sets"]:
        one["load"] = {"basis": "percent", "percent": 50, "of": key, "when_unknown": "find"}
        one["rir"] = 3
    block = writing_coach.post("/desk/blocks", {"document": document}).json["id"]
    send(writing_coach, block, ready)
    assert coach.get(f"/desk/athletes/{ready}/proposals").json["revision"] == 1


def test_an_own_exercise_can_be_written_for_one_athlete_before_it_was_ever_sent(
    coach: AtDesk, writing_coach: AtDesk, ready: str
) -> None:
    key = writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"]
    block = writing_coach.post("/desk/blocks", {"document": with_barrel(key)}).json["id"]
    path = f"/desk/blocks/{block}/own/{ready}"
    found = writing_coach.get(path).json
    found["document"]["weeks"][0]["sessions"][0]["exercises"][-1]["sets"][0]["reps"] = 3
    saved = writing_coach.post(path, {name: found[name] for name in ("document", "as_of")})
    assert [c["what"] for c in saved.json["changes"]] == ["barrel lift 1 × 3 instead of 1 × 5"]
    writing_coach.post(f"/desk/blocks/{block}", {"document": block_data()})
    removed = writing_coach.post(f"/desk/exercises/{key}/remove")
    assert removed.status_code == 409
    assert "an athlete's own changes" in removed.json["detail"]


def test_two_exercises_under_one_key_keep_a_block_from_being_sent(
    coach: AtDesk, writing_coach: AtDesk, ready: str
) -> None:
    coach.post("/desk/exercises", {"document": {**BARREL, "prime": ["lats"]}})
    key = writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"]
    block = writing_coach.post("/desk/blocks", {"document": with_barrel(key)}).json["id"]
    answer = writing_coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]}).json
    (stopped,) = answer["refused"]
    assert "another exercise under the key" in str(stopped)


def test_a_better_note_comes_along_with_the_next_sending(
    coach: AtDesk, writing_coach: AtDesk, ready: str, barrel: str, lent: str, device: Phone
) -> None:
    bettered(writing_coach, barrel, BETTER)
    assert cues_of(coach, barrel) == ["Hug it"], "not before it is sent"
    before = writing_coach.post("/desk/loads", {"athlete": ready, "document": with_barrel(barrel)})
    assert [f for f in before.json["findings"] if f["severity"] == "stop"] == []
    assert "Chin over the rim" in str(before.json["sheets"]), "what will be sent is shown"
    send(writing_coach, lent, ready)
    assert cues_of(coach, barrel) == BETTER["cues"]
    monday = sheets(device.reads_all())["w1-mon"]
    assert "Chin over the rim" in str(monday)


def test_what_was_sent_with_the_older_copy_stays_readable(
    coach: AtDesk, writing_coach: AtDesk, ready: str, barrel: str, lent: str, device: Phone
) -> None:
    bettered(writing_coach, barrel, {**BETTER, "one_sided": True, "name": "Keg lift"})
    send(writing_coach, lent, ready)
    results = coach.get(f"/desk/athletes/{ready}/results")
    assert results.status_code == 200
    assert "Keg lift" in results.text


def test_a_copy_that_its_new_owner_changed_is_theirs(
    coach: AtDesk, writing_coach: AtDesk, ready: str, barrel: str, lent: str
) -> None:
    bettered(coach, barrel, {**BARREL, "cues": ["Not for Runa's knee"]})
    bettered(writing_coach, barrel, BETTER)
    before = everything()
    answer = writing_coach.post(f"/desk/blocks/{lent}/send", {"athletes": [ready]}).json
    assert "another exercise under the key" in str(answer["refused"])
    assert everything() == before
    assert cues_of(coach, barrel) == ["Not for Runa's knee"]


def test_what_keeps_a_block_from_being_sent_is_told_before_it_is_sent(
    coach: AtDesk, writing_coach: AtDesk, ready: str
) -> None:
    coach.post("/desk/exercises", {"document": {**BARREL, "prime": ["lats"]}})
    key = writing_coach.post("/desk/exercises", {"document": BARREL}).json["key"]
    document = with_barrel(key)
    block = writing_coach.post("/desk/blocks", {"document": document}).json["id"]
    asked = {"athlete": ready, "document": document, "block": block}
    told = writing_coach.post("/desk/loads", asked).json["findings"]
    (refused,) = writing_coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready]}).json[
        "refused"
    ]
    assert [one for one in told if one["severity"] == "stop"] == refused["stops"]


def test_an_alternative_that_stayed_behind_makes_no_copy_another_exercise(
    writing_coach: AtDesk, ready: str, barrel: str
) -> None:
    other = {**BARREL, "name": "Keg lift", "alternatives": [barrel]}
    key = writing_coach.post("/desk/exercises", {"document": other}).json["key"]
    block = writing_coach.post("/desk/blocks", {"document": with_barrel(key)}).json["id"]
    send(writing_coach, block, ready)
    send(writing_coach, block, ready)


def test_others_who_train_by_the_copy_get_the_better_note_too(
    coach: AtDesk, writing_coach: AtDesk, ready: str, barrel: str, lent: str
) -> None:
    tove = coach.adds_athlete("Tove Lind")
    kit = coach.get(f"/desk/athletes/{ready}").json["kit"]
    coach.post(f"/desk/athletes/{tove}/kit", {"document": kit})
    document = {**block_data(), "weeks": with_barrel(barrel)["weeks"]}
    for one in document["weeks"][0]["sessions"]:
        one["exercises"] = [e for e in one["exercises"] if e["exercise"] == barrel]
    document["weeks"] = [{**document["weeks"][0], "sessions": document["weeks"][0]["sessions"][:1]}]
    theirs = coach.post("/desk/blocks", {"document": document}).json["id"]
    phone = coach.pairs_phone(tove)
    send(coach, theirs, tove)
    bettered(writing_coach, barrel, BETTER)
    send(writing_coach, lent, ready)
    assert "Chin over the rim" in str(sheets(phone.reads_all()))
