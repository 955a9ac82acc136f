"""Sheets for paper: the ones that the phone has."""

from tests.api.training import entries_of, send, sheets
from tests.fixtures import block_data
from tests.people import AtDesk, Phone


def test_before_anything_is_sent_there_is_no_sheet(coach: AtDesk, ready: str) -> None:
    answer = coach.get(f"/desk/athletes/{ready}/sheets").json
    assert (answer["name"], answer["revision"], answer["sheets"]) == ("Runa Tealdi", None, [])


def test_they_carry_what_a_phone_would_say_of_a_wrap(coach: AtDesk, ready: str) -> None:
    signs = " ".join(coach.get(f"/desk/athletes/{ready}/sheets").json["wrap_signs"])
    assert "Not today with a fever" in signs
    assert "Numb, tingling" in signs
    assert "Do not try again today." in signs


def test_they_are_the_phones_own_in_the_order_of_the_plan(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    have = sheets(device.reads_all())
    answer = coach.get(f"/desk/athletes/{ready}/sheets").json
    assert [one["session"] for one in answer["sheets"]] == [
        session["key"] for week in block_data()["weeks"] for session in week["sessions"]
    ]
    assert answer["sheets"] == [have[one["session"]] for one in answer["sheets"]]


def test_a_session_that_was_begun_keeps_its_sheet_in_a_newer_revision(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday)[:3])
    send(coach, block, ready)
    shown = coach.get(f"/desk/athletes/{ready}/sheets").json["sheets"]
    assert [one["revision"] for one in shown] == [1, 2, 2, 2, 2, 2]
    assert shown[0] == monday
