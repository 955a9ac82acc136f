"""What the phone is told of maxima follows what the server knows, to the end."""

from typing import Any

from tests.api.test_replanning import block, did, lift, ready, said, send, session
from tests.fixtures import athlete_data
from tests.people import AtDesk, Phone

__all__ = ["ready"]


def trackers(phone: Phone) -> dict[str, float]:
    """Kilograms by lift, as a phone that takes the whole feed keeps them."""
    kept: dict[str, float] = {}
    phone.cursor = 0
    for item in phone.reads_all():
        if item["kind"] == "tracker":
            kept[item["key"]] = item["body"]["kg"]
        elif item["kind"] == "tracker.withdrawn":
            kept.pop(item["key"], None)
    return kept


def saves(coach: AtDesk, athlete: str, **fields: Any) -> None:
    document = {**athlete_data(), **fields}
    answer = coach.post(f"/desk/athletes/{athlete}/document", {"document": document})
    assert answer.status_code == 200, answer.text


def test_a_maximum_that_the_coach_deletes_is_withdrawn_and_may_come_back(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    assert trackers(device)["front-squat"] == 90
    saves(coach, ready)
    assert "front-squat" not in trackers(device)
    first = athlete_data()["maxima"][0]
    known = {"lift": "front-squat", "kg": 95, "kind": "tested", "on": first["on"]}
    saves(coach, ready, maxima=[first, known])
    assert trackers(device)["front-squat"] == 95


def test_a_lift_that_leans_on_another_moves_with_it(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    leans = [{"lift": "front-squat", "on_lift": "back-squat", "ratio": 0.8}]
    saves(coach, ready, leans=leans)
    send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    before = trackers(device)
    begin, end = said(device, "session.started", "s1"), said(device, "session.finished", "s1")
    device.syncs(begin, did(device, "s1", "e.1", 100), end)
    after = trackers(device)
    assert after["back-squat"] > before["back-squat"]
    assert after["front-squat"] > before["front-squat"]
