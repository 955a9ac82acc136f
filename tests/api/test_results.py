"""Planned against done, as the desk reads it."""

from datetime import date, timedelta
from typing import Any

import pytest
from tests.api.training import by_kind, done_sets, entries_of, finished, send, sheets
from tests.fixtures import block_data
from tests.people import START_MS, AtDesk, Phone

from undercroft.documents.sheet_read import in_short
from undercroft.store import database, revisions, trackers

FIRST_DAY = date(2026, 2, 2)


def keep_revision(coach: AtDesk, athlete: str, number: int, keys: list[str]) -> None:
    """A revision of one long block with a bare sheet for each session, one a day."""
    revisions.add_revision(
        athlete, number, "long", {"name": "Long"}, FIRST_DAY.isoformat(), [], START_MS, coach.id, 1
    )
    for place, key in enumerate(keys):
        on = FIRST_DAY + timedelta(days=place)
        sheet = {"session": key, "name": key, "week_name": "A", "day": 1, "exercises": []}
        planned = {**sheet, "on": on.isoformat()}
        revisions.keep_sheet(athlete, number, key, 1, planned, in_short(planned))


def results(coach: AtDesk, athlete: str) -> list[dict[str, Any]]:
    answer = coach.get(f"/desk/athletes/{athlete}/results")
    assert answer.status_code == 200, answer.text
    return list(answer.json["sessions"])


def test_a_session_done_stays_in_sight_however_often_the_block_is_sent_again(
    coach: AtDesk, device: Phone
) -> None:
    keys = [f"s{n:02d}" for n in range(20)]
    database.connect()
    keep_revision(coach, device.athlete_id, 1, keys)
    for number in range(2, 16):
        keep_revision(coach, device.athlete_id, number, keys[1:])
    database.disconnect()
    device.syncs(device.writes.entry("session.started", {}, session="s00"))
    found = results(coach, device.athlete_id)
    assert [one["session"] for one in found] == keys[::-1]
    assert [(one["session"], one["revision"]) for one in found if one["state"] == "started"] == [
        ("s00", 1)
    ]


def test_a_session_that_was_stopped_by_mistake_and_went_on_to_its_end_is_finished(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    where = {"session": "w1-mon", "revision": 1}
    device.syncs(
        device.writes.entry("session.started", {}, **where),
        device.writes.entry("session.stopped", {"why": "pain"}, **where),
        device.writes.entry("session.started", {}, **where),
    )
    assert state_of(coach, ready, "w1-mon") == "stopped"
    device.syncs(finished(device, monday))
    assert state_of(coach, ready, "w1-mon") == "finished"


def state_of(coach: AtDesk, athlete: str, session: str) -> str:
    return next(str(o["state"]) for o in results(coach, athlete) if o["session"] == session)


def test_a_session_done_stays_in_sight_among_hundreds_that_are_planned(
    coach: AtDesk, device: Phone
) -> None:
    keys = [f"s{n:03d}" for n in range(280)]
    database.connect()
    keep_revision(coach, device.athlete_id, 1, keys)
    database.disconnect()
    device.syncs(
        *(device.writes.entry("session.started", {}, session=key) for key in ("s003", "s279"))
    )
    found = results(coach, device.athlete_id)
    assert len(found) == 60
    assert {one["session"] for one in found if one["state"] == "started"} == {"s003", "s279"}
    assert [one["on"] for one in found] == sorted((one["on"] for one in found), reverse=True)


def test_the_session_that_is_next_is_not_crowded_out_by_those_done(
    coach: AtDesk, device: Phone
) -> None:
    keys = [f"s{n:03d}" for n in range(100)]
    database.connect()
    keep_revision(coach, device.athlete_id, 1, keys)
    database.disconnect()
    device.syncs(*(device.writes.entry("session.started", {}, session=key) for key in keys[:80]))
    found = [one["session"] for one in results(coach, device.athlete_id)]
    assert found == keys[35:95][::-1]


def test_a_session_that_the_coach_took_out_is_not_shown_as_planned(
    coach: AtDesk, device: Phone
) -> None:
    database.connect()
    keep_revision(coach, device.athlete_id, 1, ["kept", "gone"])
    keep_revision(coach, device.athlete_id, 2, ["kept"])
    database.disconnect()
    assert [one["session"] for one in results(coach, device.athlete_id)] == ["kept"]


def test_two_phones_on_two_revisions_did_one_session(
    coach: AtDesk, ready: str, block: str, device: Phone, second_device: Phone
) -> None:
    """The first began on the first revision, in a cellar; the second has the newer one already."""
    send(coach, block, ready)
    old = sheets(device.reads_all())["w1-mon"]
    send(coach, block, ready)
    new = sheets(second_device.reads_all())["w1-mon"]
    assert (old["revision"], new["revision"]) == (1, 2)
    first = entries_of(device, old)
    device.syncs(*first[:3])
    second_device.syncs(*entries_of(second_device, new)[3:], finished(second_device, new))
    assert all(done_sets(coach, ready, "w1-mon"))
    (shown,) = [one for one in results(coach, ready) if one["session"] == "w1-mon"]
    assert (shown["revision"], shown["state"]) == (1, "finished")


@pytest.mark.parametrize("order", ["{day}/000001/w1-mon", "{day}/000001/00/00/w1-mon"])
def test_a_set_beyond_belief_marks_no_set_of_the_same_keys_in_another_block(
    coach: AtDesk, ready: str, block: str, device: Phone, order: str
) -> None:
    send(coach, block, ready)
    other = coach.post("/desk/blocks", {"document": block_data()}).json["id"]
    send(coach, other, ready)
    feed = device.reads_all()
    sheet = sheets(feed)["w1-mon"]
    assert sorted(by_kind(feed, "revision")) == ["1", "2"]
    for revision in (1, 2):
        device.syncs(*entries_of(device, {**sheet, "revision": revision}))
    key = sheet["exercises"][0]["sets"][0]["key"]
    database.connect()
    trackers.keep_row(ready, "back-squat", order.format(day=sheet["on"]), {"wild": [key]})
    database.disconnect()
    marked = [
        (one["revision"], one_set["key"])
        for one in results(coach, ready)
        for exercise in one["exercises"]
        for one_set in exercise["sets"]
        if one_set["done"] and one_set["done"]["wild"]
    ]
    assert marked == [(1, key)]


def test_an_exercise_that_was_swapped_says_what_was_done_instead(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    squat, press = monday["exercises"][:2]
    where = {"session": "w1-mon", "revision": 1}
    swaps = [
        {"exercise": squat["key"], "to": "front-squat"},
        {"exercise": press["key"], "to": "front-squat"},
        {"exercise": press["key"], "to": press["exercise"]},
    ]
    lines = [device.writes.entry("exercise.swapped", body, **where) for body in swaps]
    lines[2]["replaces"] = lines[1]["id"]
    device.syncs(*lines)
    (shown,) = [one for one in results(coach, ready) if one["session"] == "w1-mon"]
    told = [(one["name"], one["done_instead"]) for one in shown["exercises"][:2]]
    assert told == [(squat["name"], "Front squat"), (press["name"], None)]


def test_what_each_method_records_is_read_at_the_desk(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    first, second, third = [one["key"] for one in monday["exercises"][0]["sets"]][:3]
    where = {"session": "w1-mon", "revision": 1}

    def done(key: str, **body: Any) -> dict[str, Any]:
        return device.writes.entry("set.done", {"load_kg": 60, **body}, set=key, **where)

    device.syncs(
        done(first, reps=3, velocities_m_s=[0.84, 0.82, 0.8]),
        done(second, reps=5, blocks=[2, 2, 1], to_failure=True),
        done(third, side="right", distance_m=30, seconds=18.4),
        done(third, side="left", distance_m=25, seconds=20),
    )
    (shown,) = [one for one in results(coach, ready) if one["session"] == "w1-mon"]
    exercise = shown["exercises"][0]
    fast, blocks, carry = exercise["sets"][:3]
    assert exercise["method"] == monday["exercises"][0]["method"]
    assert (fast["done"]["velocities_m_s"], fast["done"]["mean_m_s"]) == ([0.84, 0.82, 0.8], 0.82)
    assert (blocks["done"]["blocks"], blocks["done"]["to_failure"]) == ([2, 2, 1], True)
    told = [(one["side"], one["distance_m"], one["seconds"]) for one in carry["sides"]]
    assert told == [("left", 25, 20), ("right", 30, 18.4)]
    assert not carry["done"]["two_answers"]


def test_what_the_athlete_wrote_stands_with_the_results_newest_first(
    coach: AtDesk, device: Phone
) -> None:
    first = device.writes.entry("message", {"text": "The short bar is back."})
    second = device.writes.entry("message", {"text": "Can we move Friday?"})
    better = device.writes.entry("message", {"text": "Move Friday?"}, replaces=second["id"])
    device.syncs(first, second, better)
    told = coach.get(f"/desk/athletes/{device.athlete_id}/results").json["messages"]
    assert [one["text"] for one in told] == ["Move Friday?", "The short bar is back."]
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert {"level": "soon", "text": "Wrote: Move Friday? (and 1 before it)"} in line["attention"]


def test_a_warning_sign_outside_a_session_goes_to_the_top(coach: AtDesk, device: Phone) -> None:
    text = "A warning sign, with no session under way."
    device.syncs(device.writes.entry("message", {"text": text}))
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert line["attention"][0] == {"level": "now", "text": f"Wrote: {text}"}
