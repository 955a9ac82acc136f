"""What a session tells, and when: whatever the coach sends meanwhile and the athlete swaps."""

from typing import Any

import pytest
from tests.fixtures import athlete_data, kit_data
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS


def block(*sessions: Any, key: str = "b") -> dict[str, Any]:
    week = {"key": "w1", "name": "Week 1", "sessions": list(sessions)}
    return {"key": key, "name": f"Block {key}", "weeks": [week]}


def session(key: str, *exercises: Any, day: int = 1) -> dict[str, Any]:
    return {"key": key, "name": key.upper(), "day": day, "exercises": list(exercises)}


def lift(key: str, exercise: str, method: str = "straight", **fields: Any) -> dict[str, Any]:
    one = {"key": f"{key}.1", "reps": 5, "rir": 2, "load": {"basis": "percent", "percent": 60}}
    return {"key": key, "exercise": exercise, "method": method, "sets": [one], **fields}


@pytest.fixture
def ready(coach: AtDesk, athlete: str) -> str:
    document = athlete_data()
    day = document["maxima"][0]["on"]
    known = {"kind": "tested", "on": day}
    document["maxima"] += [
        {"lift": "front-squat", "kg": 90, **known},
        {"lift": "goblet-squat", "kg": 40, **known},
    ]
    for name, data in (("document", document), ("kit", kit_data())):
        answer = coach.post(f"/desk/athletes/{athlete}/{name}", {"document": data})
        assert answer.status_code == 200, answer.text
    return athlete


def send(coach: AtDesk, athlete: str, document: Any, block_id: str = "", **more: Any) -> str:
    """Write and send; the id of the block."""
    path = f"/desk/blocks/{block_id}" if block_id else "/desk/blocks"
    saved = coach.post(path, {"document": document}).json
    assert saved["faults"] == []
    answer = coach.post(f"/desk/blocks/{saved['id']}/send", {"athletes": [athlete], **more}).json
    assert answer["refused"] == []
    return str(saved["id"])


def did(phone: Phone, key: str, set_: str, kg: float, revision: int = 1, **body: Any) -> Any:
    outcome = {"load_kg": kg, "reps": 5, "rir": 2, **body}
    return phone.writes.entry("set.done", outcome, session=key, set=set_, revision=revision)


def said(phone: Phone, kind: str, key: str, revision: int = 1) -> Any:
    body = {"rpe": 7, "minutes": 40} if kind == "session.finished" else {}
    return phone.writes.entry(kind, body, session=key, revision=revision)


def maxima(coach: AtDesk, athlete: str) -> dict[str, float]:
    found = coach.get(f"/desk/athletes/{athlete}").json["maxima"]
    return {one["lift"]: one["kg"] for one in found}


def test_a_set_speaks_for_the_lift_of_the_revision_it_was_done_from(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    id_ = send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    device.syncs(said(device, "session.started", "s1"))
    send(coach, ready, block(session("s1", lift("e", "front-squat"))), id_)
    before = maxima(coach, ready)
    device.syncs(did(device, "s1", "e.1", 100), said(device, "session.finished", "s1"))
    after = maxima(coach, ready)
    assert after["back-squat"] > before["back-squat"]
    assert after["front-squat"] == before["front-squat"]


def test_a_session_that_the_coach_dropped_meanwhile_still_tells(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    both = block(session("s1", lift("e", "back-squat")), session("s2", lift("f", "bench-press")))
    id_ = send(coach, ready, both)
    send(coach, ready, block(session("s2", lift("f", "bench-press"))), id_)
    lines = [said(device, "session.started", "s1"), did(device, "s1", "e.1", 100)]
    device.syncs(*lines, said(device, "session.finished", "s1"))
    assert maxima(coach, ready)["back-squat"] > 105


def test_a_session_left_open_counts_once_the_next_block_begins(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    send(coach, ready, block(session("a1", lift("e", "back-squat")), key="a"))
    device.syncs(said(device, "session.started", "a1"), did(device, "a1", "e.1", 100))
    send(coach, ready, block(session("b1", lift("e", "bench-press")), key="b"))
    assert maxima(coach, ready)["back-squat"] == 105
    device.syncs(said(device, "session.started", "b1", revision=2))
    assert maxima(coach, ready)["back-squat"] > 105


def test_to_open_a_session_under_an_older_revision_does_not_tell_from_which_it_was_done(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    id_ = send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    device.syncs(said(device, "session.opened", "s1"))
    send(coach, ready, block(session("s1", lift("e", "front-squat"))), id_)
    before = maxima(coach, ready)
    device.syncs(did(device, "s1", "e.1", 80, 2), said(device, "session.finished", "s1", 2))
    after = maxima(coach, ready)
    assert after["front-squat"] != before["front-squat"]
    assert after["back-squat"] == before["back-squat"]


def test_pain_before_a_session_does_not_freeze_its_sheet(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    id_ = send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    pain = {"where": "left knee", "level": 2}
    device.syncs(device.writes.entry("pain.reported", pain, session="s1", revision=1))
    send(coach, ready, block(session("s1", lift("e", "front-squat"))), id_)
    (sheet,) = [item["body"] for item in device.reads_all() if item["kind"] == "sheet"]
    assert sheet["exercises"][0]["exercise"] == "front-squat"


def test_a_late_set_of_an_overtaken_session_counts_at_once(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    two = block(session("s1", lift("e", "back-squat")), session("s2", lift("f", "bench-press")))
    send(coach, ready, two)
    device.syncs(said(device, "session.started", "s1"), said(device, "session.started", "s2"))
    device.syncs(did(device, "s1", "e.1", 100))
    assert maxima(coach, ready)["back-squat"] > 105


def test_a_swapped_exercise_speaks_for_itself_and_so_do_sets_added_to_it(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    swap = {"exercise": "e", "to": "goblet-squat"}
    where = {"session": "s1", "revision": 1}
    device.syncs(
        said(device, "session.started", "s1"),
        device.writes.entry("exercise.swapped", swap, **where),
        did(device, "s1", "e.1", 30),
        device.writes.entry("set.added", {"exercise": "e"}, set="extra", **where),
        did(device, "s1", "extra", 32),
        said(device, "session.finished", "s1"),
    )
    after = maxima(coach, ready)
    assert after["back-squat"] == 105
    assert after["goblet-squat"] != 40


def test_a_set_added_to_a_speed_exercise_says_nothing_of_a_maximum(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    speed = lift("e", "bench-press", method="speed", rest={"from_s": 75, "to_s": 90})
    send(coach, ready, block(session("s1", speed)))
    before = maxima(coach, ready)["bench-press"]
    where = {"session": "s1", "revision": 1}
    device.syncs(
        said(device, "session.started", "s1"),
        device.writes.entry("set.added", {"exercise": "e"}, set="extra", **where),
        did(device, "s1", "extra", 30, rir=4),
        said(device, "session.finished", "s1"),
    )
    assert maxima(coach, ready)["bench-press"] == before


def test_a_test_that_was_corrected_counts_as_corrected(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    first = device.writes.entry("max.tested", {"lift": "deadlift", "kg": 250}, revision=None)
    right = device.writes.entry(
        "max.tested", {"lift": "deadlift", "kg": 150}, revision=None, replaces=first["id"]
    )
    device.syncs(first)
    device.syncs(right)
    assert maxima(coach, ready)["deadlift"] == pytest.approx(150)


def test_a_phone_that_is_decades_ahead_does_not_freeze_a_lift(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    device.writes.at = "2062-02-03T18:04:11.250+01:00"
    device.syncs(device.writes.entry("max.tested", {"lift": "deadlift", "kg": 150}, revision=None))
    points = coach.get(f"/desk/athletes/{ready}/maxima/deadlift").json["points"]
    assert [point["on"] for point in points] == ["2026-02-03"]


def test_two_sessions_of_one_day_follow_each_other_as_the_coach_wrote_them(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    last = {"key": "e.1", "reps": 5, "load": {"basis": "last", "start_kg": 20}}
    rows = {"key": "e", "exercise": "dumbbell-row", "method": "straight", "sets": [last]}
    document = block(
        session("morning", {**rows}),
        session("evening", {**rows, "sets": [{**last, "key": "e.2"}]}),
        session("friday", {**rows, "sets": [{**last, "key": "e.3"}]}, day=5),
    )
    send(coach, ready, document)
    for key, set_, kg in (("morning", "e.1", 20), ("evening", "e.2", 25)):
        begin, end = said(device, "session.started", key), said(device, "session.finished", key)
        device.syncs(begin, did(device, key, set_, kg), end)
    assert wished(coach, ready, document) == 25


def test_a_cleared_set_is_no_longer_what_was_lifted_last_time(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    last = {"key": "e.1", "reps": 5, "load": {"basis": "last", "start_kg": 20}}
    rows = {"key": "e", "exercise": "dumbbell-row", "method": "straight", "sets": [last]}
    document = block(session("s1", rows), session("s2", rows, day=3))
    send(coach, ready, document)
    done = did(device, "s1", "e.1", 30)
    device.syncs(
        said(device, "session.started", "s1"), done, said(device, "session.finished", "s1")
    )
    where = {"session": "s1", "set": "e.1", "revision": 1}
    device.syncs(device.writes.entry("set.cleared", {}, replaces=done["id"], **where))
    assert wished(coach, ready, document) == 20


def test_the_time_before_it_counts_again_where_the_last_time_is_taken_back(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    last = {"key": "e.1", "reps": 5, "load": {"basis": "last", "start_kg": 20}}
    rows = {"key": "e", "exercise": "dumbbell-row", "method": "straight", "sets": [last]}
    document = block(*(session(f"s{day}", rows, day=day) for day in (1, 3, 5)))
    send(coach, ready, document)
    for key, kg in (("s1", 30), ("s3", 35)):
        done = did(device, key, "e.1", kg)
        begin, end = said(device, "session.started", key), said(device, "session.finished", key)
        device.syncs(begin, done, end)
    where = {"session": "s3", "set": "e.1", "revision": 1}
    device.syncs(device.writes.entry("set.cleared", {}, replaces=done["id"], **where))
    assert wished(coach, ready, document) == 30


def test_a_session_that_moves_to_an_earlier_day_leaves_no_last_time_on_the_later_one(
    coach: AtDesk, ready: str, device: Phone, clock: Clock
) -> None:
    last = {"key": "e.1", "reps": 5, "load": {"basis": "last", "start_kg": 20}}
    rows = {"key": "e", "exercise": "dumbbell-row", "method": "straight", "sets": [last]}
    days = {"mon": 1, "wed": 3, "fri": 5}
    document = block(*(session(key, rows, day=day) for key, day in days.items()))
    id_ = send(coach, ready, document, starts_on="2026-02-02")
    clock.passes(5 * DAY_MS)
    send(coach, ready, document, id_, starts_on="2026-02-09")
    begin, end = said(device, "session.started", "wed"), said(device, "session.finished", "wed")
    device.syncs(begin, did(device, "wed", "e.1", 25), end)
    device.syncs(did(device, "mon", "e.1", 30, 2), said(device, "session.finished", "mon", 2))
    assert wished(coach, ready, document) == 30
    # That it was begun a week before, from the first sending, comes in last.
    device.syncs(said(device, "session.started", "mon", 1))
    assert wished(coach, ready, document) == 25


def wished(coach: AtDesk, athlete: str, document: Any) -> float:
    """Kilograms of the first set of the last session, which nobody has begun, were it sent now."""
    sheets = coach.post("/desk/loads", {"athlete": athlete, "document": document}).json["sheets"]
    return float(sheets[-1]["exercises"][0]["sets"][0]["wish_kg"])


def test_a_postponed_session_is_dated_by_the_sending_that_it_was_done_from(
    coach: AtDesk, ready: str, device: Phone, clock: Clock
) -> None:
    document = block(session("s1", lift("e", "back-squat")))
    id_ = send(coach, ready, document, starts_on="2026-02-02")
    clock.passes(5 * DAY_MS)
    send(coach, ready, document, id_, starts_on="2026-02-09")
    lines = [said(device, "session.started", "s1", 2), did(device, "s1", "e.1", 100, 2)]
    device.syncs(*lines, said(device, "session.finished", "s1", 2))
    points = coach.get(f"/desk/athletes/{ready}/maxima/back-squat").json["points"]
    assert [point["on"] for point in points] == ["2026-01-12", "2026-02-09"]


def test_a_sheet_that_cannot_be_worked_out_any_more_stays_as_it_was(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    device.reads_all()
    document = {**athlete_data(), "maxima": []}
    coach.post(f"/desk/athletes/{ready}/document", {"document": document})
    assert [item for item in device.reads_all() if item["kind"] == "sheet"] == []


def test_the_next_block_sent_early_leaves_the_days_before_it(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    now = block(
        session("a1", lift("e", "back-squat")),
        session("a2", lift("f", "bench-press"), day=5),
        key="a",
    )
    send(coach, ready, now, starts_on="2026-02-02")
    later = block(session("b1", lift("e", "back-squat")), key="b")
    send(coach, ready, later, starts_on="2026-02-09")
    sheets = [item["body"] for item in device.reads_all() if item["kind"] == "sheet"]
    assert {"a1", "a2", "b1"} <= {sheet["session"] for sheet in sheets}


def test_only_the_next_sessions_are_worked_out_again_at_once(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    weeks = [
        {
            "key": f"w{w}",
            "name": f"Week {w}",
            "sessions": [
                session(f"w{w}-{d}", lift(f"w{w}-{d}", "back-squat"), day=d) for d in (1, 4)
            ],
        }
        for w in range(1, 11)
    ]
    send(coach, ready, {"key": "long", "name": "Long", "weeks": weeks})
    device.reads_all()
    device.syncs(said(device, "session.started", "w1-1"), did(device, "w1-1", "w1-1.1", 100))
    feed = device.syncs(said(device, "session.finished", "w1-1"))["feed"]
    assert len([item for item in feed if item["kind"] == "sheet"]) == 12
