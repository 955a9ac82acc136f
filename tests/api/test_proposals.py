"""The coach decides on the next loads: proposed with reasons, accepted in part, sent again."""

from typing import Any

import pytest
from tests.api.test_replanning import block as draft
from tests.api.test_replanning import did, lift, said, session
from tests.api.test_replanning import send as send_draft
from tests.api.test_saving import meanwhile
from tests.api.test_screening import answers, asked, curls, signs
from tests.api.training import by_kind, entries_of, finished, send, sheets
from tests.fixtures import athlete_data, block_data
from tests.people import AtDesk, Clock, Phone
from tests.store.counting import counted

from undercroft.services import lives, proposals
from undercroft.services.clock import DAY_MS
from undercroft.store import database

__all__ = ["asked", "meanwhile"]


@pytest.fixture
def block(coach: AtDesk) -> str:
    """Two weeks whose squats are written in kilograms, 81 % of 105 kg, and bench presses too."""
    document = block_data()
    for week in document["weeks"]:
        for each in week["sessions"]:
            for exercise in each["exercises"]:
                if exercise["exercise"] in ("back-squat", "bench-press"):
                    in_kilograms(exercise, 85.5 if exercise["exercise"] == "back-squat" else 55.5)
    answer = coach.post("/desk/blocks", {"document": document})
    assert answer.json["faults"] == []
    return str(answer.json["id"])


def in_kilograms(exercise: dict[str, Any], kg: float) -> None:
    for one in exercise["sets"]:
        one["load"] = {"basis": "kg", "kg": kg}
        one.setdefault("rir", 3)


@pytest.fixture
def easier(coach: AtDesk, ready: str, block: str, device: Phone) -> Phone:
    """Monday was done with two repetitions more in reserve than planned."""
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday, extra_rir=2), finished(device, monday))
    return device


def told(coach: AtDesk, athlete: str) -> dict[str, Any]:
    answer = coach.get(f"/desk/athletes/{athlete}/proposals")
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


def sets(found: dict[str, Any], name: str) -> list[dict[str, Any]]:
    """Sets of an exercise by its name, with their sessions."""
    return [
        {**one, "session": each["session"]}
        for each in found["sessions"]
        for exercise in each["exercises"]
        if exercise["name"] == name
        for one in exercise["sets"]
    ]


def loads(chosen: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [{"session": s["session"], "set": s["set"], "kg": s["to_kg"]} for s in chosen]


def accept(coach: AtDesk, athlete: str, revision: int, chosen: Any, **more: Any) -> Any:
    body = {"revision": revision, "sets": loads(chosen), **more}
    return coach.post(f"/desk/athletes/{athlete}/proposals/accept", body)


def test_before_anything_is_sent_there_is_nothing_to_propose(coach: AtDesk, ready: str) -> None:
    assert told(coach, ready) == {"revision": None, "block": "", "waiting": 0, "sessions": []}


def test_before_anything_is_done_nothing_tells_of_another_load(
    coach: AtDesk, ready: str, block: str
) -> None:
    send(coach, block, ready)
    found = told(coach, ready)
    assert found["waiting"] == 0
    squats = sets(found, "Back squat")
    assert {(one["kind"], one["why"]) for one in squats} == {
        ("stays", "nothing that came in since tells of it")
    }


def test_sets_with_more_in_reserve_raise_the_next_ones(
    coach: AtDesk, ready: str, easier: Phone
) -> None:
    found = told(coach, ready)
    squats = sets(found, "Back squat")
    assert {one["session"] for one in squats} == {"w2-mon"}
    assert all(one["kind"] == "proposed" for one in squats)
    assert all(one["from_kg"] == 85.5 < one["to_kg"] for one in squats)
    assert "up: 5 reps at 5 in reserve, planned 3; stays at 81 % of the maximum" in squats[0]["why"]
    assert found["waiting"] == len(squats) + len(sets(found, "Bench press"))


def test_what_told_of_one_lift_still_tells_once_another_became_known_later(
    coach: AtDesk, ready: str, easier: Phone, clock: Clock
) -> None:
    before = [one["why"] for one in sets(told(coach, ready), "Bench press")]
    clock.passes(3 * DAY_MS)
    document = athlete_data()
    known = {"lift": "front-squat", "kg": 80, "kind": "tested", "on": "2026-02-04"}
    document["maxima"].append(known)
    saved = coach.post(f"/desk/athletes/{ready}/document", {"document": document})
    assert saved.status_code == 200, saved.text
    accept(coach, ready, 1, sets(told(coach, ready), "Back squat"))
    assert "3 in reserve, planned 1" in before[0]
    assert [one["why"] for one in sets(told(coach, ready), "Bench press")] == before


def test_what_follows_by_itself_is_told_and_cannot_be_accepted(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    document = athlete_data()
    for maximum in document["maxima"]:
        if maximum["lift"] == "overhead-press":
            maximum.update(kg=44, on="2026-02-03")
    coach.post(f"/desk/athletes/{ready}/document", {"document": document})
    found = told(coach, ready)
    press = sets(found, "Overhead press")[0]
    assert press["kind"] == "follows"
    assert press["from_kg"] < press["to_kg"]
    assert accept(coach, ready, 1, [press]).status_code == 409


def test_one_of_two_is_accepted_and_the_other_goes_on_waiting(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    found = told(coach, ready)
    squats, presses = sets(found, "Back squat"), sets(found, "Bench press")
    answer = accept(coach, ready, 1, squats)
    assert answer.json["stops"] == []
    assert answer.json["revision"] == 2
    after = told(coach, ready)
    assert after["revision"] == 2
    assert {one["kind"] for one in sets(after, "Back squat")} == {"stays"}
    assert sets(after, "Bench press") == presses


def test_the_phone_gets_the_load_and_the_difference_in_words(
    coach: AtDesk, ready: str, easier: Phone
) -> None:
    easier.reads_all()
    squats = sets(told(coach, ready), "Back squat")
    accept(coach, ready, 1, squats)
    feed = easier.reads_all()
    said_now = by_kind(feed, "revision")["2"]["changes"]
    to_kg = squats[0]["to_kg"]
    assert said_now == [f"Week 2, Monday: back squat {to_kg:g} kg instead of 85.5 kg"]
    exercise = sheets(feed)["w2-mon"]["exercises"][0]
    assert {exercise["loads"][one["load"]]["kg"] for one in exercise["sets"]} == {to_kg}


def test_the_block_of_the_coach_stays_as_it_is_written(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    before = coach.get(f"/desk/blocks/{block}").json["document"]
    accept(coach, ready, 1, sets(told(coach, ready), "Back squat"))
    assert coach.get(f"/desk/blocks/{block}").json["document"] == before


def test_what_was_accepted_is_kept_when_the_block_is_sent_again(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    squats = sets(told(coach, ready), "Back squat")
    accept(coach, ready, 1, squats)
    document = coach.get(f"/desk/blocks/{block}").json["document"]
    body = {"athlete": ready, "document": document, "block": block}
    answer = coach.post("/desk/loads", body).json
    assert answer["changes"] == []
    (kept,) = answer["own"]
    assert kept["what"] == f"back squat {squats[0]['to_kg']:g} kg instead of 85.5 kg"


def test_a_session_under_way_keeps_its_loads(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    easier.cursor = 0
    monday = sheets(easier.reads_all())["w2-mon"]
    easier.syncs(*entries_of(easier, monday)[:2])
    assert sets(told(coach, ready), "Back squat") == []


def test_a_load_that_is_not_proposed_any_more_is_refused_and_nothing_is_sent(
    coach: AtDesk, ready: str, easier: Phone
) -> None:
    squats = sets(told(coach, ready), "Back squat")
    squats[0]["to_kg"] += 2.5
    answer = accept(coach, ready, 1, squats)
    assert answer.status_code == 409
    assert "is not proposed any more" in answer.json["detail"]
    assert told(coach, ready)["revision"] == 1


def test_a_revision_sent_meanwhile_is_told(
    coach: AtDesk, ready: str, block: str, easier: Phone
) -> None:
    squats = sets(told(coach, ready), "Back squat")
    send(coach, block, ready)
    assert accept(coach, ready, 1, squats).status_code == 409


def test_a_stop_refuses_what_was_accepted_until_it_is_set_aside(
    coach: AtDesk, ready: str, easier: Phone
) -> None:
    kit = coach.get(f"/desk/athletes/{ready}").json["kit"]
    kit["supports"] = []
    coach.post(f"/desk/athletes/{ready}/kit", {"document": kit})
    found = told(coach, ready)
    squats = sets(found, "Back squat")
    answer = accept(coach, ready, 1, squats).json
    assert answer["revision"] is None
    assert answer["stops"]
    overrules = [
        {**{name: stop[name] for name in ("check", "path", "what")}, "why": "a spotter is there"}
        for stop in answer["stops"]
        if stop["may_overrule"]
    ]
    assert len(overrules) == len(answer["stops"])
    again = accept(coach, ready, 1, squats, overrules=overrules).json
    assert again["revision"] == 2


def test_it_asks_as_many_statements_after_a_year_as_after_a_day(
    coach: AtDesk, ready: str, easier: Phone, clock: Clock
) -> None:
    with counted() as few:
        proposals.proposals(ready, clock.now)
    easier.cursor = 0
    wednesday = sheets(easier.reads_all())["w1-wed"]
    easier.syncs(*entries_of(easier, wednesday), finished(easier, wednesday))
    accept(coach, ready, 1, sets(told(coach, ready), "Back squat"))
    with counted() as more:
        proposals.proposals(ready, clock.now)
    assert len(more) == len(few)


def test_occlusion_work_by_the_repetitions_of_last_time(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    """A first set under two thirds of 15, with 8 kg: down to the next lighter dumbbell."""
    may_curl(coach, asked, device)
    plan = draft(session("mon", eights("a")), session("fri", eights("b"), day=5))
    send_draft(coach, asked, plan)
    device.syncs(
        did(device, "mon", "a.1", 8, reps=9),
        did(device, "mon", "a.2", 8, reps=8),
        said(device, "session.finished", "mon"),
    )
    (friday,) = told(coach, asked)["sessions"]
    curled = friday["exercises"][0]["sets"]
    why = "last time 9-8: first set under two thirds of its target"
    assert {(one["kind"], one["from_kg"], one["to_kg"], one["why"]) for one in curled} == {
        ("proposed", 8, 6, why)
    }


def test_occlusion_work_under_way_tells_nothing_though_a_later_day_was_done(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    may_curl(coach, asked, device)
    rows = lift("c", "dumbbell-row", sets=[{"key": "c.1", "reps": 5, "load": {"basis": "none"}}])
    wednesday, friday = session("wed", rows, day=3), session("fri", eights("b"), day=5)
    send_draft(coach, asked, draft(session("mon", eights("a")), wednesday, friday))
    device.syncs(said(device, "session.started", "wed"), said(device, "session.finished", "wed"))
    device.syncs(said(device, "session.started", "mon"), did(device, "mon", "a.1", 8, reps=9))
    (friday_found,) = told(coach, asked)["sessions"]
    (curls_found,) = friday_found["exercises"]
    assert [one["why"] for one in curls_found["sets"] if "last time" in one["why"]] == []


def may_curl(coach: AtDesk, athlete: str, phone: Phone) -> None:
    """Screened and signed, with a known maximum of the curl."""
    known = {"lift": "dumbbell-curl", "kg": 45, "kind": "tested", "on": "2026-01-20"}
    person = {**athlete_data(), "maxima": [known]}
    coach.post(f"/desk/athletes/{athlete}/document", {"document": person})
    signs(coach, athlete, answers(phone))


def eights(key: str) -> dict[str, Any]:
    plan = curls(key)
    for one in plan["sets"]:
        one["load"] = {"basis": "kg", "kg": 8}
    return plan


def test_loads_are_not_accepted_for_what_was_replaced_while_they_were_worked_out(
    coach: AtDesk, ready: str, block: str, easier: Phone, meanwhile: Any
) -> None:
    squats = sets(told(coach, ready), "Back squat")
    meanwhile(lambda: send(coach, block, ready))
    assert accept(coach, ready, 1, squats).status_code == 409
    assert coach.get(f"/desk/athletes/{ready}").json["revision"] == 2


def test_loads_are_accepted_after_a_backup_was_put_back_although_numbers_have_leapt(
    coach: AtDesk, ready: str, block: str, easier: Phone, clock: Clock
) -> None:
    database.connect()
    lives.begin(clock())
    database.disconnect()
    sent = accept(coach, ready, 1, sets(told(coach, ready), "Back squat"))
    assert sent.status_code == 200, sent.text
    assert sent.json["revision"] > 2
