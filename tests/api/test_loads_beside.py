"""Loads beside the text of a block that the athlete is in the middle of."""

from typing import Any

from tests.api.training import entries_of, finished, send, sheets
from tests.fixtures import block_data, fixture
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS


def beside(coach: AtDesk, athlete: str, document: Any) -> dict[str, Any]:
    answer = coach.post("/desk/loads", {"athlete": athlete, "document": document})
    assert answer.status_code == 200, answer.text
    return {sheet["session"]: sheet for sheet in answer.json["sheets"]}


def a_week_passes(coach: AtDesk, clock: Clock) -> None:
    """The coach looks in meanwhile: a log-in that nobody uses for a week is over."""
    clock.passes(4 * DAY_MS)
    assert coach.get("/coach/me").status_code == 200
    clock.passes(3 * DAY_MS)


def test_a_block_under_way_goes_on_from_the_monday_it_began_on(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    sent = sheets(device.reads_all())
    a_week_passes(coach, clock)
    shown = beside(coach, ready, block_data())
    assert {key: sheet["on"] for key, sheet in shown.items()} == {
        key: sheet["on"] for key, sheet in sent.items()
    }


def test_a_session_begun_keeps_the_loads_it_was_begun_with(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    sent = sheets(device.reads_all())
    monday = sent["w1-mon"]
    device.syncs(*entries_of(device, monday, extra_rir=2), finished(device, monday))
    shown = beside(coach, ready, block_data())
    assert shown["w1-mon"] == monday
    squat, before = (s["w2-mon"]["exercises"][0]["sets"][0] for s in (shown, sent))
    assert squat["wish_kg"] > before["wish_kg"]


def test_another_block_begins_this_week_with_all_its_sessions(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    a_week_passes(coach, clock)
    shown = beside(coach, ready, {**block_data(), "key": "another"})
    assert len(shown) == 6
    assert shown["w1-mon"]["on"] == "2026-02-09"


def test_a_kit_may_be_called_none(coach: AtDesk, ready: str, block: str) -> None:
    kit = {**fixture("kits", "forge-cellar"), "key": "none"}
    coach.post(f"/desk/athletes/{ready}/kit", {"document": kit})
    assert send(coach, block, ready)["refused"] == []


def test_without_a_kit_nothing_is_sent(coach: AtDesk, athlete: str, block: str) -> None:
    (refused,) = send(coach, block, athlete)["refused"]
    assert "nothing is written down" in {stop["what"] for stop in refused["stops"]}


def test_a_maximum_known_from_long_sets_alone_is_warned_of(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    """With a set of ten or fewer beside them, however long ago, the warning goes."""
    person = coach.get(f"/desk/athletes/{ready}").json["document"]
    person["maxima"] = [one for one in person["maxima"] if one["lift"] != "back-squat"]
    send(coach, block, ready)
    sent = sheets(device.reads_all())
    device.syncs(*done_for(device, sent["w1-mon"], 12))
    coach.post(f"/desk/athletes/{ready}/document", {"document": person})
    assert warned(coach, ready)
    device.syncs(*done_for(device, sent["w2-mon"], 4))
    assert not warned(coach, ready)


def done_for(phone: Phone, sheet: dict[str, Any], reps: int) -> list[dict[str, Any]]:
    where = {"session": sheet["session"], "revision": sheet["revision"]}
    key = sheet["exercises"][0]["sets"][0]["key"]
    body = {"load_kg": 60, "reps": reps, "rir": 2}
    return [
        phone.writes.entry("session.started", {}, **where),
        phone.writes.entry("set.done", body, set=key, **where),
        finished(phone, sheet),
    ]


def warned(coach: AtDesk, athlete: str) -> bool:
    answer = coach.post("/desk/loads", {"athlete": athlete, "document": block_data()})
    return "maximum-from-long-sets" in {one["check"] for one in answer.json["findings"]}
