"""Adherence, hard sets, tonnage and restricted limbs at the desk, week by week."""

from typing import Any

import pytest
from tests.api.training import entries_of, send, sheets
from tests.api.weeks_done import FORTNIGHT, Effort, comes, does, trains
from tests.fixtures import fixture
from tests.people import AtDesk, Clock, Phone
from tests.store.counting import counted

from undercroft.documents.canonical import to_json
from undercroft.documents.sheet_read import in_short, read_stored_sheet

QUERIES = 10
"""Two for who asks, five for what was sent, one for the phones, two for sheets and entries,
one for the coach's exercises: the sheets of what was sent among the first five."""

SETS = {"w1-mon": 10, "w1-wed": 13, "w1-fri": 7}
"""Sets of each session of the block's two weeks, which are alike."""


@pytest.fixture
def trained(coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock) -> str:
    trains(coach, ready, block, device, *FORTNIGHT)
    return ready


def work(coach: AtDesk, athlete: str) -> list[dict[str, Any]]:
    answer = coach.get(f"/desk/athletes/{athlete}/work")
    assert answer.status_code == 200, answer.text
    return list(answer.json["weeks"])


def counts(week: dict[str, Any]) -> tuple[int, ...]:
    return tuple(week["adherence"].values())


def test_sets_are_done_changed_skipped_or_not_heard_of(
    coach: AtDesk, trained: str, device: Phone, clock: Clock
) -> None:
    """Wednesday of the second week was never begun; no phone was heard since the first Monday."""
    comes(coach, clock, "2026-02-16")
    first, second, now = work(coach, trained)
    assert counts(first) == (30, 30, 0, 0, 0)
    assert counts(second) == (30, 17, 0, 0, 13)
    assert counts(now) == (0, 0, 0, 0, 0)
    device.reads_all()
    comes(coach, clock, "2026-02-17")
    assert counts(work(coach, trained)[1]) == (30, 17, 0, 13, 0)


def test_what_differs_from_the_plan_is_changed_and_what_a_finished_session_lacks_is_skipped(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    started, *sets = entries_of(device, monday)
    sets[0]["body"]["reps"] -= 1
    where = {"session": "w1-mon", "revision": 1}
    over = device.writes.entry("session.finished", {"rpe": 7, "minutes": 50}, **where)
    device.syncs(started, *sets[:4], over)
    comes(coach, clock, "2026-02-09")
    assert counts(work(coach, ready)[0])[:4] == (30, 3, 1, 6)


def test_a_session_that_a_newer_block_took_the_place_of_was_not_missed(
    coach: AtDesk, trained: str, clock: Clock
) -> None:
    comes(coach, clock, "2026-02-09")
    other = coach.post("/desk/blocks", {"document": fixture("blocks", "next-two-weeks")})
    send(coach, other.json["id"], trained)
    comes(coach, clock, "2026-02-16")
    second = work(coach, trained)[1]
    assert counts(second) == (30 + 17, 17, 0, 0, 30)


def test_hard_sets_count_whole_for_what_moves_the_load_and_half_for_what_helps(
    coach: AtDesk, trained: str, clock: Clock
) -> None:
    """Quads: 4 squats at 3 in reserve, 3 goblet squats; speed pulls count apart. Derived."""
    comes(coach, clock, "2026-02-09")
    week = work(coach, trained)[0]
    assert week["hard_sets"]["quads"] == 7
    assert week["hard_sets"]["adductors"] == 3.5
    assert week["untold_sets"] == 0


def test_tonnage_is_repetitions_times_mean_resistance(
    coach: AtDesk, trained: str, clock: Clock
) -> None:
    """Summed here from the results that the desk lists; rows are done on both sides."""
    comes(coach, clock, "2026-02-16")
    sessions = coach.get(f"/desk/athletes/{trained}/results").json["sessions"]
    (friday,) = [one for one in sessions if one["session"] == "w2-fri"]
    (monday,) = [one for one in sessions if one["session"] == "w2-mon"]
    both = {"w2m-c": 2}
    expected = sum(
        both.get(exercise["key"], 1) * one["done"]["reps"] * one["done"]["load_kg"]
        for session in (monday, friday)
        for exercise in session["exercises"]
        for one in exercise["sets"]
    )
    assert work(coach, trained)[1]["tonnage_kg"] == pytest.approx(expected)


def test_the_database_is_asked_as_often_however_much_was_done(coach: AtDesk, trained: str) -> None:
    with counted() as asked:
        work(coach, trained)
    assert len(asked) == QUERIES


def test_an_athlete_to_whom_nothing_was_sent_has_no_weeks(coach: AtDesk, ready: str) -> None:
    assert work(coach, ready) == []


def every_method(coach: AtDesk, ready: str, device: Phone) -> dict[str, Any]:
    document = fixture("blocks", "every-method")
    for week in document["weeks"]:
        for session in week["sessions"]:
            session["exercises"] = [
                one for one in session["exercises"] if one["method"] != "occlusion"
            ]
    block = coach.post("/desk/blocks", {"document": document}).json["id"]
    send(coach, block, ready)
    return sheets(device.reads_all())


def test_bands_count_at_their_mean_over_the_range(coach: AtDesk, ready: str, device: Phone) -> None:
    sheet = every_method(coach, ready, device)["wed"]
    (pull,) = [one for one in sheet["exercises"] if one["method"] == "speed"]
    assert all(one["curve"]["mean_kg"] > pull["loads"][one["load"]]["kg"] for one in pull["sets"])
    does(device, {**sheet, "exercises": [pull]}, Effort("wed", 6, 40))
    (week,) = work(coach, ready)
    expected = sum(one["target"]["reps"] * one["curve"]["mean_kg"] for one in pull["sets"])
    assert week["tonnage_kg"] == pytest.approx(expected)


def test_minutes_of_wear_are_told_by_limb(coach: AtDesk, trained: str, device: Phone) -> None:
    where = {"session": "w1-fri", "revision": 1}
    device.writes.at = "2026-02-06T18:30:00.000+01:00"
    device.syncs(
        device.writes.entry("wrap.on", {"limb": "left-upper-arm"}, **where),
        device.writes.entry("wrap.off", {"limb": "left-upper-arm", "seconds": 300}, **where),
    )
    (limb,) = work(coach, trained)[0]["limbs"]
    assert limb == {"limb": "upper-arm", "side": "left", "minutes": 5, "reps": 0, "sessions": 1}


def test_the_tables_are_the_same_numbers(coach: AtDesk, trained: str, clock: Clock) -> None:
    weeks = work(coach, trained)
    for name in ("adherence", "hard-sets", "tonnage", "occlusion"):
        answer = coach.get(f"/desk/athletes/{trained}/tables/{name}")
        assert answer.status_code == 200, answer.text
    lines = coach.get(f"/desk/athletes/{trained}/tables/tonnage").text.splitlines()
    assert lines[0] == "monday,tonnage_kg,reps,mean_resistance_kg,left_out_sets"
    assert [float(line.split(",")[1]) for line in lines[1:]] == pytest.approx(
        [one["tonnage_kg"] for one in weeks], abs=0.001
    )


def test_a_sheet_in_short_tells_the_same_to_whoever_looks_back(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    for whole in sheets(device.reads_all()).values():
        short = in_short(whole)
        assert read_stored_sheet(short) == read_stored_sheet(whole)
        assert len(to_json(short)) < 0.6 * len(to_json(whole))
