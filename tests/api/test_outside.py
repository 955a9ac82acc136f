"""Work that names what was never sent is kept, and the coach sees it beside the results."""

from typing import Any

import pytest
from tests.api.training import entries_of, finished, send, sheets
from tests.people import AtDesk, Phone, statuses


def outside(coach: AtDesk, athlete: str) -> list[dict[str, Any]]:
    answer = coach.get(f"/desk/athletes/{athlete}/results")
    assert answer.status_code == 200, answer.text
    return list(answer.json["outside"])


def told(found: list[dict[str, Any]]) -> list[tuple[str, str, list[str]]]:
    return [(one["session"], one["why"], [s["key"] for s in one["sets"]]) for one in found]


def test_a_session_of_a_revision_that_was_never_sent_is_shown_outside_the_plan(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    """As after a backup was restored: the phone has a revision that the server forgot."""
    send(coach, block, ready)
    monday = {**sheets(device.reads_all())["w1-mon"], "revision": 9}
    lines = entries_of(device, monday)
    assert set(statuses(device.syncs(*lines, finished(device, monday)))) == {"stored"}
    (found,) = outside(coach, ready)
    assert (found["revision"], found["why"]) == (9, "revision 9 was not sent to this athlete")
    assert (found["rpe"], found["minutes"]) == (7, 50)
    assert [one["key"] for one in found["sets"]] == sorted(line["set"] for line in lines[1:])
    assert all(one["done"]["reps"] for one in found["sets"])


def test_before_anything_was_sent_everything_is_outside_the_plan(
    coach: AtDesk, device: Phone
) -> None:
    device.syncs(device.writes.done("squat.1", session="monday", reps=4))
    (found,) = outside(coach, device.athlete_id)
    assert [one["done"]["reps"] for one in found["sets"]] == [4]


def test_work_of_a_revision_that_was_never_sent_is_no_fault(
    device: Phone, caplog: pytest.LogCaptureFixture
) -> None:
    device.syncs(device.writes.done("squat.1"), device.writes.done("squat.2"))
    assert caplog.messages == []


def test_work_that_names_no_revision_is_shown(coach: AtDesk, device: Phone) -> None:
    line = {**device.writes.done("squat.1", session="monday"), "revision": None}
    device.syncs(line)
    assert told(outside(coach, device.athlete_id)) == [
        ("monday", "the phone named no revision", ["squat.1"])
    ]


def test_a_session_that_its_revision_does_not_have_is_shown(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    device.syncs(device.writes.done("squat.1", session="w9-sun"))
    assert told(outside(coach, ready)) == [
        ("w9-sun", "revision 1 has no session w9-sun", ["squat.1"])
    ]


def test_a_set_that_its_session_does_not_have_is_shown(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    strange = device.writes.done("sled.1", session="w1-mon")
    device.syncs(*entries_of(device, monday), strange)
    assert told(outside(coach, ready)) == [
        ("w1-mon", "revision 1 has no such sets in this session", ["sled.1"])
    ]


def test_a_set_that_the_athlete_added_to_the_plan_stands_with_its_exercise(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    where = {"session": "w1-mon", "set": "extra"}
    first = monday["exercises"][0]["key"]
    device.syncs(
        *entries_of(device, monday),
        device.writes.entry("set.added", {"exercise": first}, **where),
        device.writes.done("extra", session="w1-mon"),
    )
    assert outside(coach, ready) == []


def test_a_set_added_to_an_exercise_of_no_plan_says_to_which(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    where = {"session": "w1-mon", "set": "extra"}
    device.syncs(
        device.writes.entry("set.added", {"exercise": "sled"}, **where),
        device.writes.done("extra", session="w1-mon"),
    )
    (found,) = outside(coach, ready)
    assert [(one["key"], one["added_to"]) for one in found["sets"]] == [("extra", "sled")]


def test_a_held_entry_of_an_unknown_revision_is_seen_once_it_was_accepted(
    coach: AtDesk, device: Phone
) -> None:
    coach.revokes(device)
    device.syncs({**device.writes.done("squat.1", session="monday"), "revision": 4})
    assert outside(coach, device.athlete_id) == []
    (held,) = coach.held(device.athlete_id)
    coach.post(f"/desk/athletes/{device.athlete_id}/held/{held['position']}/accept")
    assert told(outside(coach, device.athlete_id)) == [
        ("monday", "revision 4 was not sent to this athlete", ["squat.1"])
    ]
