"""What the desk reads of occlusion work: wear, repetitions beside the expected, the next load."""

from typing import Any

import pytest
from tests.api.test_replanning import block, did, said, send, session
from tests.api.test_results import results
from tests.api.test_screening import TODAY, answers, asked, curls, newest, signs
from tests.people import AtDesk, Phone

__all__ = ["asked"]

ARM = "left-upper-arm"


@pytest.fixture
def opened(coach: AtDesk, asked: str, device: Phone) -> Phone:
    """Two sessions of curls with a wrap, open and sent."""
    signs(coach, asked, answers(device))
    send(coach, asked, block(session("mon", curls("a")), session("fri", curls("b"), day=5)))
    return device


def wrap(phone: Phone, kind: str, clock: str, **body: Any) -> Any:
    at = f"{TODAY}T{clock}:00Z"
    return phone.writes.entry(kind, {"limb": ARM, **body}, session="mon", revision=1, at=at)


def monday(coach: AtDesk, phone: Phone) -> dict[str, Any]:
    (found,) = [one for one in results(coach, phone.athlete_id) if one["session"] == "mon"]
    return found


def test_repetitions_stand_beside_what_can_be_expected(coach: AtDesk, opened: Phone) -> None:
    opened.syncs(did(opened, "mon", "a.1", 6, reps=14, side="left", tightness=4.5))
    (exercise,) = monday(coach, opened)["exercises"]
    assert exercise["occlusion"]["expected"] == [36.0, 14.7]
    assert (exercise["occlusion"]["limb"], exercise["occlusion"]["tightness"]) == ("upper arm", 5)
    done = exercise["sets"][0]["done"]
    assert (done["reps"], done["side"], done["tightness"]) == (14, "left", 4.5)


def test_predicted_wear_stands_beside_the_wear_of_each_limb(coach: AtDesk, opened: Phone) -> None:
    sheet = newest(opened, "sheet", "mon")["exercises"][0]["occlusion"]
    opened.syncs(
        wrap(opened, "wrap.on", "17:00"),
        wrap(opened, "wrap.off", "17:04", seconds=240),
        said(opened, "session.finished", "mon"),
    )
    found = monday(coach, opened)
    assert found["exercises"][0]["occlusion"]["wear_s"] == sheet["wear_s"]
    assert found["worn"] == [
        {"limb": "left upper arm", "seconds": [240.0], "closed": True, "issues": []}
    ]


def test_a_wrap_worn_too_long_and_a_break_too_short_are_told(coach: AtDesk, opened: Phone) -> None:
    opened.syncs(
        wrap(opened, "wrap.on", "17:00"),
        wrap(opened, "wrap.off", "17:16", seconds=960),
        wrap(opened, "wrap.on", "17:17"),
        wrap(opened, "wrap.off", "17:20", seconds=180),
    )
    (worn,) = monday(coach, opened)["worn"]
    told = [(issue["severity"], issue["what"]) for issue in worn["issues"]]
    assert told == [
        ("stop", "16:00 min with the wrap on"),
        ("stop", "wraps off for 1:00 min between exercises"),
    ]


def test_a_wrap_whose_end_was_never_told_is_asked_about(coach: AtDesk, opened: Phone) -> None:
    opened.syncs(wrap(opened, "wrap.on", "17:00"), said(opened, "session.finished", "mon"))
    (worn,) = monday(coach, opened)["worn"]
    assert worn["closed"] is False
    assert worn["issues"][0]["what"] == "no end is recorded of the wrap of 17:00"


def test_the_next_load_follows_from_the_repetitions(coach: AtDesk, opened: Phone) -> None:
    opened.syncs(
        did(opened, "mon", "a.1", 6, reps=15),
        did(opened, "mon", "a.2", 6, reps=18),
        said(opened, "session.finished", "mon"),
    )
    (exercise,) = monday(coach, opened)["exercises"]
    # Nothing rises before the full dose.
    assert exercise["occlusion"]["next"] == {
        "kg": 6.0,
        "why": "last set above its target, but no other load is open here",
    }


def test_both_sides_of_a_set_are_told_and_the_weaker_one_decides(
    coach: AtDesk, opened: Phone
) -> None:
    opened.syncs(
        *(
            did(opened, "mon", key, 6, reps=reps, side=side)
            for key, side, reps in (
                ("a.1", "left", 15),
                ("a.1", "right", 9),
                ("a.2", "left", 15),
                ("a.2", "right", 15),
            )
        ),
        said(opened, "session.finished", "mon"),
    )
    (exercise,) = monday(coach, opened)["exercises"]
    sides = [[(one["side"], one["reps"]) for one in each["sides"]] for each in exercise["sets"]]
    assert sides == [[("left", 15), ("right", 9)], [("left", 15), ("right", 15)]]
    assert "first set under two thirds of its target" in exercise["occlusion"]["next"]["why"]


def test_before_anything_is_done_there_is_no_next_load(coach: AtDesk, opened: Phone) -> None:
    (exercise,) = monday(coach, opened)["exercises"]
    assert exercise["occlusion"]["next"] is None
