"""A fault while loads are worked out again: nothing done is lost, and it is made up for."""

from typing import Any

import pytest
from tests.api.test_replanning import block, did, lift, maxima, ready, said, send, session
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import MINUTE_MS
from undercroft.services.squad import OVERDUE

__all__ = ["ready"]


@pytest.fixture
def failed(
    coach: AtDesk, ready: str, device: Phone, monkeypatch: pytest.MonkeyPatch
) -> dict[str, float]:
    """A session that ended while replanning failed; what was known of maxima before it."""

    def fails(*_: Any) -> None:
        raise ArithmeticError("no such load")

    send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    before = maxima(coach, ready)
    with monkeypatch.context() as broken:
        broken.setattr("undercroft.services.replan.replan", fails)
        device.syncs(
            said(device, "session.started", "s1"),
            did(device, "s1", "e.1", 100),
            said(device, "session.finished", "s1"),
        )
    return before


def attention(coach: AtDesk) -> list[str]:
    (line,) = coach.get("/desk/squad").json["athletes"]
    return [one["text"] for one in line["attention"]]


def test_the_coach_sees_that_loads_have_not_followed(
    coach: AtDesk, failed: dict[str, float]
) -> None:
    assert OVERDUE in attention(coach)


def test_the_next_sync_with_nothing_to_say_makes_up_for_it(
    coach: AtDesk, ready: str, device: Phone, failed: dict[str, float], clock: Clock
) -> None:
    device.reads_all()
    clock.passes(10 * MINUTE_MS)
    assert "tracker" in {item["kind"] for item in device.reads_all()}
    assert maxima(coach, ready)["back-squat"] > failed["back-squat"]
    assert OVERDUE not in attention(coach)


def test_so_does_the_coach_by_opening_the_athletes_page(
    coach: AtDesk, ready: str, failed: dict[str, float], clock: Clock
) -> None:
    assert maxima(coach, ready) == failed, "a second try at once would fail like the first"
    clock.passes(10 * MINUTE_MS)
    assert maxima(coach, ready)["back-squat"] > failed["back-squat"]


def test_a_fault_that_stays_is_tried_again_and_stays_on_the_list(
    coach: AtDesk,
    device: Phone,
    failed: dict[str, float],
    clock: Clock,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    tries = []

    def fails(*given: Any) -> None:
        tries.append(given)
        raise ArithmeticError("no such load")

    monkeypatch.setattr("undercroft.services.replan.replan", fails)
    for minutes in (9, 1, 9, 1):
        clock.passes(minutes * MINUTE_MS)
        device.syncs()
    assert len(tries) == 2
    assert [entry.kind for entry in tries[1][1]][-1] == "session.finished"
    assert OVERDUE in attention(coach)


def test_sets_of_a_session_whose_beginning_is_held_count_at_once(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    send(coach, ready, block(session("s1", lift("e", "back-squat"))))
    device.syncs(device.writes.entry("message", {"text": "here"}))
    device.writes.n -= 1
    answer = device.syncs(said(device, "session.started", "s1"))
    assert [verdict["status"] for verdict in answer["verdicts"]] == ["held"]
    device.syncs(did(device, "s1", "e.1", 100))
    assert maxima(coach, ready)["back-squat"] > 105
