"""A block may be done more than once: each time is a run, whose sessions are its own."""

from typing import Any

import pytest
from tests.api.training import by_kind, done_sets, entries_of, finished, send, sheets
from tests.fixtures import block_data
from tests.people import AtDesk, Phone
from tests.store.counting import counted

FIRST, SECOND, THIRD, FIFTH = "2026-02-02", "2026-02-09", "2026-02-16", "2026-03-02"
"""Mondays; the block has two weeks."""


@pytest.fixture
def other(coach: AtDesk) -> str:
    """Another block, with sessions of its own."""
    week = {"key": "o1", "name": "Other", "sessions": [{**block_data()["weeks"][0]["sessions"][0]}]}
    week["sessions"][0]["key"] = "o1-mon"
    document = {"key": "other", "name": "Other", "weeks": [week]}
    return str(coach.post("/desk/blocks", {"document": document}).json["id"])


def does(phone: Phone, sheet: dict[str, Any]) -> None:
    phone.syncs(*entries_of(phone, sheet), finished(phone, sheet))


def runs(phone: Phone) -> list[int]:
    """The run of each revision, as the phone is told."""
    told = by_kind(phone.reads_all(), "revision")
    return [body["run"] for _, body in sorted(told.items())]


def planned(coach: AtDesk, athlete: str) -> list[tuple[int, str, str]]:
    found = coach.get(f"/desk/athletes/{athlete}/results").json["sessions"]
    return [(one["revision"], one["session"], one["state"]) for one in found]


def test_a_block_that_another_one_replaced_begins_anew_on_another_monday(
    coach: AtDesk, ready: str, block: str, other: str, device: Phone
) -> None:
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    send(coach, other, ready, starts_on=SECOND)
    (again,) = send(coach, block, ready, starts_on=FIFTH)["sent"]
    assert (again["revision"], again["sessions"]) == (3, 6)
    new = sheets(device.reads_all())["3/w1-mon"]
    assert (new["revision"], new["on"]) == (3, FIFTH)
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert (line["next"]["session"], line["next"]["on"]) == ("w1-mon", FIFTH)
    assert line["states"]["started_at"] is None


def test_what_was_done_in_each_run_is_shown_with_that_run(
    coach: AtDesk, ready: str, block: str, other: str, device: Phone
) -> None:
    send(coach, block, ready, starts_on=FIRST)
    first = sheets(device.reads_all())["w1-mon"]
    does(device, first)
    send(coach, other, ready, starts_on=SECOND)
    send(coach, block, ready, starts_on=FIFTH)
    device.syncs(*entries_of(device, sheets(device.reads_all())["3/w1-mon"])[:2])
    told = [one for one in planned(coach, ready) if one[1] == "w1-mon"]
    assert told == [(3, "w1-mon", "started"), (1, "w1-mon", "finished")]
    points = coach.get(f"/desk/athletes/{ready}/maxima/back-squat").json["points"]
    assert FIRST in [point["on"] for point in points]


def test_a_block_sent_back_to_its_monday_goes_on(
    coach: AtDesk, ready: str, block: str, other: str, device: Phone
) -> None:
    """The coach sent the wrong one and takes it back."""
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    send(coach, other, ready, starts_on=FIRST)
    (again,) = send(coach, block, ready, starts_on=FIRST)["sent"]
    assert again["sessions"] == 5
    assert all(done_sets(coach, ready, "w1-mon"))


def test_a_block_sent_again_is_the_same_run(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready, starts_on=FIRST)
    send(coach, block, ready)
    assert runs(device) == [1, 1]


def test_a_block_moved_by_a_week_goes_on_with_what_was_done(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    """The athlete was ill for a week."""
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    (again,) = send(coach, block, ready, starts_on=SECOND)["sent"]
    assert again["sessions"] == 5


def test_a_block_of_which_nothing_was_begun_is_only_moved(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready, starts_on=FIRST)
    send(coach, block, ready, starts_on=FIFTH)
    assert runs(device) == [1, 1]
    assert {one[0] for one in planned(coach, ready)} == {2}


def test_a_block_sent_for_the_time_after_its_end_is_done_once_more(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    """What is left of this week stays on the phone beside the next run."""
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    (again,) = send(coach, block, ready, starts_on=THIRD)["sent"]
    assert again["sessions"] == 6
    snapshot = device.get("/snapshot").json["feed"]
    days = {key: sheet["on"] for key, sheet in sheets(snapshot).items()}
    assert (days["w2-fri"], days["2/w2-fri"]) == ("2026-02-13", "2026-02-27")


def test_what_the_coach_takes_out_of_a_later_run_leaves_the_phone(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    send(coach, block, ready, starts_on=THIRD)
    shorter = block_data()
    shorter["weeks"] = shorter["weeks"][:1]
    assert coach.post(f"/desk/blocks/{block}", {"document": shorter}).json["faults"] == []
    send(coach, block, ready)
    gone = by_kind(device.reads_all(), "sheet.withdrawn")
    assert set(gone) == {"2/w2-mon", "2/w2-wed", "2/w2-fri"}


def test_what_another_block_has_replaced_is_told_neither_as_planned_nor_as_missed(
    coach: AtDesk, ready: str, block: str, other: str, device: Phone
) -> None:
    """It left the phone: nobody can have missed it. What is left of the week before stays."""
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    send(coach, other, ready, starts_on=SECOND)
    assert sorted(planned(coach, ready)) == [
        (1, "w1-fri", "planned"),
        (1, "w1-mon", "finished"),
        (1, "w1-wed", "planned"),
        (2, "o1-mon", "planned"),
    ]


def test_a_set_in_a_session_that_an_earlier_run_ended_is_one_under_way(
    coach: AtDesk, ready: str, block: str, other: str, device: Phone
) -> None:
    """Else each set would be taken for news of all runs: ten years of a block, read set by set."""
    send(coach, block, ready, starts_on=FIRST)
    does(device, sheets(device.reads_all())["w1-mon"])
    send(coach, other, ready, starts_on=SECOND)
    send(coach, block, ready, starts_on=FIFTH)
    start, one, *_ = entries_of(device, sheets(device.reads_all())["3/w1-mon"])
    device.syncs(start)
    with counted() as asked:
        device.syncs(one)
    assert not any("replaces" in words and words.startswith("SELECT") for words in asked)
