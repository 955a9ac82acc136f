"""What the squad says of screening and of signs in and after occlusion work. All invented."""

from typing import Any

import pytest
from tests.api.test_screening import TODAY, answers, asked, signs
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS
from undercroft.services.squad import squad
from undercroft.store import database

__all__ = ["asked"]


def attention(coach: AtDesk) -> list[tuple[str, str]]:
    (line,) = coach.get("/desk/squad").json["athletes"]
    return [(one["level"], one["text"]) for one in line["attention"]]


def test_a_screening_waits_to_be_read_until_it_is_signed(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    waits = ("soon", "Screening waits to be read")
    assert waits not in attention(coach)
    latest = answers(device)
    assert waits in attention(coach)
    signs(coach, asked, latest)
    assert waits not in attention(coach)
    answers(device)
    assert waits in attention(coach)


def test_a_signature_that_was_withdrawn_lets_it_wait_again(
    coach: AtDesk, asked: str, device: Phone
) -> None:
    page = signs(coach, asked, answers(device))
    number = page["records"][0]["number"]
    coach.post(f"/desk/athletes/{asked}/screening/records/{number}/withdraw")
    assert ("soon", "Screening waits to be read") in attention(coach)


@pytest.mark.parametrize(
    ("kind", "body", "text"),
    [
        (
            "after.check",
            {"hours": 24, "signs": ["sore", "dark-urine"]},
            "Sign after occlusion work: dark urine, like tea or cola",
        ),
        ("wrap.check", {"numb": True}, "Numb under the wrap"),
        (
            "wrap.off",
            {"limb": "left-thigh", "seconds": 960},
            "Wrap beyond its limit: left thigh, 16 min",
        ),
        (
            "session.stopped",
            {"why": "Felt bad", "signs": ["chest-pain", "dizzy"]},
            "Session ended by a sign: pain or pressure in the chest; dizziness, or a cold sweat",
        ),
    ],
)
def test_a_sign_needs_the_coach_now_and_for_a_fortnight(
    coach: AtDesk, device: Phone, clock: Clock, kind: str, body: dict[str, Any], text: str
) -> None:
    session = {"session": "mon"} if kind == "session.stopped" else {}
    device.syncs(device.writes.entry(kind, body, at=f"{TODAY}T09:00:00Z", **session))
    assert [one for one in attention(coach) if one[0] == "now"] == [("now", text)]
    database.connect()
    (line,) = squad(coach.id, clock() + 15 * DAY_MS)
    database.disconnect()
    assert [one for one in line.attention if one.level == "now"] == []


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("after.check", {"hours": 24, "signs": ["sore"]}),
        ("after.check", {"hours": 48, "signs": []}),
        ("wrap.check", {"numb": False, "tightness": 5}),
        ("wrap.off", {"limb": "left-thigh", "seconds": 900}),
    ],
)
def test_what_is_ordinary_needs_nobody(
    coach: AtDesk, device: Phone, kind: str, body: dict[str, Any]
) -> None:
    device.syncs(device.writes.entry(kind, body, at=f"{TODAY}T09:00:00Z"))
    assert [one for one in attention(coach) if one[0] == "now"] == []
