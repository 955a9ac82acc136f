"""Changes for one athlete are kept apart from the block, and outlast its being sent again."""

from typing import Any

import pytest
from tests.api.test_proposals import accept, easier, in_kilograms, loads, sets, told
from tests.api.training import by_kind, send, sheets
from tests.fixtures import athlete_data, block_data, kit_data
from tests.people import AtDesk, Phone

from undercroft.services import archive
from undercroft.store import database, revisions

__all__ = ["easier"]

SQUATS = {"session": "w2-mon", "exercise": "w2m-a"}


def kilograms(squat: float = 85.5) -> Any:
    document = block_data()
    for week in document["weeks"]:
        for each in week["sessions"]:
            for exercise in each["exercises"]:
                if exercise["exercise"] in ("back-squat", "bench-press"):
                    in_kilograms(exercise, squat if exercise["exercise"] == "back-squat" else 55.5)
    return document


@pytest.fixture
def block(coach: AtDesk) -> str:
    """Two weeks whose squats are written in kilograms."""
    return str(coach.post("/desk/blocks", {"document": kilograms()}).json["id"])


def own(coach: AtDesk, block: str, athlete: str) -> dict[str, Any]:
    answer = coach.get(f"/desk/blocks/{block}/own/{athlete}")
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


def save(coach: AtDesk, block: str, athlete: str, document: Any, as_of: str) -> Any:
    body = {"document": document, "as_of": as_of}
    return coach.post(f"/desk/blocks/{block}/own/{athlete}", body)


def decide(coach: AtDesk, block: str, athlete: str, take: str, *places: Any) -> dict[str, Any]:
    body = {"places": list(places), "take": take}
    answer = coach.post(f"/desk/blocks/{block}/own/{athlete}/decide", body)
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


def squats_of(document: Any) -> Any:
    return document["weeks"][1]["sessions"][0]["exercises"][0]


def lightens(coach: AtDesk, block: str, athlete: str, kg: float = 60.5) -> dict[str, Any]:
    """Week 2's squats are written lighter for this athlete alone."""
    found = own(coach, block, athlete)
    for one in squats_of(found["document"])["sets"]:
        one["load"] = {"basis": "kg", "kg": kg}
    answer = save(coach, block, athlete, found["document"], found["as_of"])
    assert answer.status_code == 200, answer.text
    assert answer.json["faults"] == []
    return dict(answer.json)


def squat_loads(feed: list[dict[str, Any]]) -> set[float]:
    exercise = sheets(feed)["w2-mon"]["exercises"][0]
    return {exercise["loads"][one["load"]]["kg"] for one in exercise["sets"]}


def lines(answer: dict[str, Any]) -> list[tuple[str, str]]:
    return [(one["stand"], one["what"]) for one in answer["changes"]]


def test_an_own_load_reaches_this_athlete_and_the_block_stays(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    saved = lightens(coach, block, ready)
    assert lines(saved) == [("kept", "back squat 60.5 kg instead of 85.5 kg")]
    send(coach, block, ready)
    assert squat_loads(device.reads_all()) == {60.5}
    assert coach.get(f"/desk/blocks/{block}").json["document"] == kilograms()


def test_another_athlete_gets_the_block_as_it_is_written(
    coach: AtDesk, ready: str, block: str
) -> None:
    other = coach.adds_athlete("Tove Lind")
    coach.post(f"/desk/athletes/{other}/document", {"document": athlete_data()})
    coach.post(f"/desk/athletes/{other}/kit", {"document": kit_data()})
    phone = coach.pairs_phone(other)
    lightens(coach, block, ready)
    send(coach, block, ready, other)
    assert squat_loads(phone.reads_all()) == {85.5}
    assert own(coach, block, other)["changes"] == []


def test_accepted_loads_outlast_the_block_sent_again(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    squats = sets(told(coach, ready), "Back squat")
    accept(coach, ready, 1, squats)
    easier.reads_all()
    send(coach, block, ready)
    feed = easier.reads_all()
    assert by_kind(feed, "revision")["3"]["changes"] == []
    assert squat_loads(feed) == {squats[0]["to_kg"]}
    (line,) = own(coach, block, ready)["changes"]
    assert (line["accepted"], line["since"]) == (True, "2026-02-02")


def test_loads_accepted_on_top_of_an_own_change_keep_the_rest_of_it(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    found = own(coach, block, ready)
    squats_of(found["document"])["rest"] = {"from_s": 240, "to_s": 300}
    save(coach, block, ready, found["document"], found["as_of"])
    squats = sets(told(coach, ready), "Back squat")
    accept(coach, ready, 1, squats)
    after = squats_of(own(coach, block, ready)["document"])
    assert after["rest"] == {"from_s": 240, "to_s": 300}
    assert {one["load"]["kg"] for one in after["sets"]} == {squats[0]["to_kg"]}


def test_a_line_changed_since_keeps_the_own_load_and_is_told_until_it_is_decided(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    lightens(coach, block, ready)
    coach.post(f"/desk/blocks/{block}", {"document": kilograms(90)})
    (line,) = own(coach, block, ready)["changes"]
    assert line["stand"] == "clash"
    assert line["beneath"].endswith("back squat 90 kg instead of 85.5 kg")
    send(coach, block, ready)
    assert squat_loads(device.reads_all()) == {60.5}
    assert lines(decide(coach, block, ready, "own", SQUATS)) == [
        ("kept", "back squat 60.5 kg instead of 90 kg")
    ]


def test_a_line_goes_back_to_the_block(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    lightens(coach, block, ready)
    after = decide(coach, block, ready, "block", SQUATS)
    assert after["changes"] == []
    assert after["document"] == kilograms()
    send(coach, block, ready)
    assert squat_loads(device.reads_all()) == {85.5}


def test_a_place_that_is_gone_is_told_and_the_rest_is_sent(
    coach: AtDesk, ready: str, block: str
) -> None:
    lightens(coach, block, ready)
    document = kilograms()
    document["weeks"][1]["sessions"][0]["exercises"].pop(0)
    coach.post(f"/desk/blocks/{block}", {"document": document})
    (line,) = own(coach, block, ready)["changes"]
    assert (line["stand"], line["where"]) == ("gone", "Week 2, Monday")
    assert line["beneath"] == "the block has it no more"
    assert send(coach, block, ready)["refused"] == []
    assert decide(coach, block, ready, "block", SQUATS)["changes"] == []


def test_what_was_sent_is_never_touched_by_an_own_change(
    coach: AtDesk, ready: str, block: str
) -> None:
    send(coach, block, ready)
    database.connect()
    before = revisions.all_revisions(ready)[0].document
    database.disconnect()
    lightens(coach, block, ready)
    send(coach, block, ready)
    database.connect()
    first, second = revisions.all_revisions(ready)
    database.disconnect()
    assert first.document == before
    assert squats_of(second.document)["sets"][0]["load"]["kg"] == 60.5


def test_loads_beside_the_text_and_what_sending_changes_count_them(
    coach: AtDesk, ready: str, block: str
) -> None:
    send(coach, block, ready)
    lightens(coach, block, ready)
    asked = {"athlete": ready, "document": kilograms()}
    plain = coach.post("/desk/loads", asked).json
    assert (plain["changes"], plain["own"]) == ([], [])
    beside = coach.post("/desk/loads", {**asked, "block": block}).json
    assert beside["changes"] == ["Week 2, Monday: back squat 60.5 kg instead of 85.5 kg"]
    assert [one["what"] for one in beside["own"]] == ["back squat 60.5 kg instead of 85.5 kg"]


def test_weeks_unfolded_for_an_athlete_show_own_loads_where_they_stand(
    coach: AtDesk, ready: str, block: str
) -> None:
    lightens(coach, block, ready)
    asked = {"document": kilograms(), "week": "w2", "weeks": 2, "athlete": ready, "block": block}
    answer = coach.post("/desk/unfold", asked)
    assert answer.status_code == 200, answer.text
    (squat,) = [row for row in answer.json["table"] if row["key"] == "w2m-a"]
    assert [{cell["kg"] for cell in week} for week in squat["weeks"]] == [{60.5}, {85.5}]


def test_what_is_found_stands_at_its_line_of_the_text_though_one_above_is_left_out(
    coach: AtDesk, ready: str, block: str
) -> None:
    document = kilograms()
    in_kilograms(document["weeks"][0]["sessions"][0]["exercises"][1], 599)
    coach.post(f"/desk/blocks/{block}", {"document": document})
    found = own(coach, block, ready)
    found["document"]["weeks"][0]["sessions"][0]["exercises"].pop(0)
    assert save(coach, block, ready, found["document"], found["as_of"]).json["faults"] == []
    asked = {"athlete": ready, "document": document, "block": block}
    found_now = coach.post("/desk/loads", asked).json["findings"]
    stops = {one["path"] for one in found_now if one["severity"] == "stop"}
    monday = {path for path in stops if path.startswith("weeks.0.sessions.0.")}
    assert monday
    assert all(path.startswith("weeks.0.sessions.0.exercises.1.") for path in monday)


def test_changes_from_another_tab_are_not_written_over(
    coach: AtDesk, ready: str, block: str
) -> None:
    old = own(coach, block, ready)
    lightens(coach, block, ready)
    answer = save(coach, block, ready, old["document"], old["as_of"])
    assert answer.status_code == 409
    coach.post(f"/desk/blocks/{block}", {"document": kilograms(90)})
    newer = own(coach, block, ready)
    assert newer["as_of"] != old["as_of"]


def test_a_fault_is_told_at_its_place_and_nothing_is_changed(
    coach: AtDesk, ready: str, block: str
) -> None:
    found = own(coach, block, ready)
    squats_of(found["document"])["sets"][0]["reps"] = 0
    answer = save(coach, block, ready, found["document"], found["as_of"]).json
    (fault,) = answer["faults"]
    assert fault["path"] == "weeks.1.sessions.0.exercises.0.sets.0.reps"
    assert answer["as_of"] == found["as_of"]


def test_a_session_of_ones_own_is_refused_with_what_would_be_right(
    coach: AtDesk, ready: str, block: str
) -> None:
    found = own(coach, block, ready)
    sessions = found["document"]["weeks"][0]["sessions"]
    sessions.append({**sessions[0], "key": "extra", "day": 7})
    (fault,) = save(coach, block, ready, found["document"], found["as_of"]).json["faults"]
    assert (fault["where"], fault["right"]) == ("week 1, Sunday", "add the session to the block")


def test_what_does_not_go_together_any_more_is_refused_for_this_athlete_alone(
    coach: AtDesk, ready: str, block: str
) -> None:
    """The coach leaves one exercise in a session, which is the one that this athlete leaves out."""
    found = own(coach, block, ready)
    found["document"]["weeks"][1]["sessions"][0]["exercises"].pop(0)
    save(coach, block, ready, found["document"], found["as_of"])
    document = kilograms()
    document["weeks"][1]["sessions"][0]["exercises"][1:] = []
    coach.post(f"/desk/blocks/{block}", {"document": document})
    (refused,) = send(coach, block, ready)["refused"]
    (stop,) = refused["stops"]
    assert stop["where"].startswith("with the athlete’s own changes, week 2, Monday")
    assert not stop["may_overrule"]


def test_they_go_along_when_the_athlete_goes(coach: AtDesk, ready: str, block: str) -> None:
    lightens(coach, block, ready)
    database.connect()
    (kept,) = archive.of_athlete(ready)["own_changes"]
    database.disconnect()
    assert kept["block"] == block
    (change,) = kept["changes"]["changes"]
    assert change["beneath"]["sets"][0]["load"]["kg"] == 85.5
    assert change["own"]["sets"][0]["load"]["kg"] == 60.5


def test_a_load_accepted_after_another_was_written_for_the_athlete_is_the_later_word(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    squats = sets(told(coach, ready), "Back squat")
    lightens(coach, block, ready)
    answer = coach.post(
        f"/desk/athletes/{ready}/proposals/accept", {"revision": 1, "sets": loads(squats)}
    )
    assert answer.status_code == 200
    after = squats_of(own(coach, block, ready)["document"])
    assert {one["load"]["kg"] for one in after["sets"]} == {squats[0]["to_kg"]}
