"""What a phone could not send, taken in at the desk by its file: as by a sync, and only once."""

from typing import Any

import pytest
from tests.handing import hand_over_text
from tests.people import AtDesk, Phone, statuses
from tests.sync.asking import ids, positions, stored
from werkzeug.test import TestResponse

NAME = "Runa Falk"


def look(coach: AtDesk, athlete: str, text: str) -> TestResponse:
    return coach.post(f"/desk/athletes/{athlete}/hand-over/look", {"text": text})


def take(coach: AtDesk, athlete: str, text: str) -> TestResponse:
    return coach.post(f"/desk/athletes/{athlete}/hand-over", {"text": text})


def taken(coach: AtDesk, athlete: str, text: str) -> dict[str, Any]:
    answer = take(coach, athlete, text)
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


def test_it_says_first_what_is_in_it_and_takes_nothing_in(coach: AtDesk, device: Phone) -> None:
    there = device.writes.done("squat.1")
    device.syncs(there)
    text = hand_over_text(device, NAME, [there, *device.writes.many(2)])
    seen = look(coach, device.athlete_id, text).json
    assert seen == {
        "athlete": NAME,
        "phone": "Runa's phone",
        "revoked": False,
        "made_at": "2026-02-06T08:00:00.000+01:00",
        "count": 3,
        "here": 1,
        "lost": 0,
        "sets": 3,
        "first_at": there["at"],
        "last_at": there["at"],
    }
    assert stored(device) == [there["id"]]


def test_sets_of_one_key_in_two_sessions_are_two(coach: AtDesk, device: Phone) -> None:
    sets = [device.writes.done("squat.1", session=key) for key in ("w1.mon", "w2.mon")]
    seen = look(coach, device.athlete_id, hand_over_text(device, NAME, sets)).json
    assert seen["sets"] == 2


def test_a_later_sync_of_the_same_phone_finds_its_entries_there(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    entries = device.writes.many(3)
    text = hand_over_text(device, NAME, entries)
    assert taken(coach, device.athlete_id, text) == {
        "stored": 3,
        "duplicate": 0,
        "held": 0,
        "lost": 0,
    }
    assert taken(coach, device.athlete_id, text)["duplicate"] == 3
    answer = device.syncs(*entries)
    assert statuses(answer) == ["duplicate"] * 3
    assert answer["stored_through"] == 3
    assert stored(device) == ids(entries)
    assert [item["key"] for item in second_device.reads_all()] == ids(entries)
    positions(device.athlete_id)


def test_what_the_phone_had_sent_meanwhile_is_no_second_entry(coach: AtDesk, device: Phone) -> None:
    entries = device.writes.many(3)
    text = hand_over_text(device, NAME, entries)
    device.syncs(*entries[:2])
    assert taken(coach, device.athlete_id, text) == {
        "stored": 1,
        "duplicate": 2,
        "held": 0,
        "lost": 0,
    }


def test_a_phone_paired_anew_has_numbered_them_anew(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    """Before the first snapshot came, or after the file was made: either way it is one entry."""
    first, second = device.writes.many(2)
    renumbered = {**second, "n": 1}
    assert statuses(second_device.syncs(renumbered)) == ["stored"]
    text = hand_over_text(device, NAME, [first, second])
    assert taken(coach, device.athlete_id, text)["duplicate"] == 1
    assert statuses(second_device.syncs({**first, "n": 2})) == ["duplicate"]
    assert stored(device) == [second["id"], first["id"]]
    assert coach.held(device.athlete_id) == []


def test_one_bad_entry_takes_no_good_one_with_it(coach: AtDesk, device: Phone) -> None:
    good, bad, other = device.writes.many(3)
    bad["body"]["reps"] = "three"
    text = hand_over_text(device, NAME, [good, bad, other, "no entry at all"])
    assert taken(coach, device.athlete_id, text)["stored"] == 2
    assert stored(device) == ids([good, other])
    assert len(coach.held(device.athlete_id)) == 2


def test_a_file_that_breaks_off_gives_what_is_left_of_it(coach: AtDesk, device: Phone) -> None:
    entries = device.writes.many(5)
    text = hand_over_text(device, NAME, entries)
    cut = text[: text.index(entries[3]["id"]) + 60]
    seen = look(coach, device.athlete_id, cut).json
    assert (seen["count"], seen["lost"]) == (3, 2)
    assert taken(coach, device.athlete_id, cut)["stored"] == 3
    assert taken(coach, device.athlete_id, text)["stored"] == 2
    assert stored(device) == ids(entries)


def test_a_file_hurt_in_the_middle_loses_that_place_only(coach: AtDesk, device: Phone) -> None:
    entries = device.writes.many(3)
    text = hand_over_text(device, NAME, entries).replace('"set.done"', '"set\x00', 1)
    assert taken(coach, device.athlete_id, text)["lost"] == 1
    assert stored(device) == ids(entries[1:])


@pytest.mark.parametrize("text", ["", "{}", "[1]", "not a file", '{"format": "other"}', "NaN"])
def test_what_is_no_such_file_is_refused_in_words(coach: AtDesk, device: Phone, text: str) -> None:
    answer = take(coach, device.athlete_id, text)
    assert answer.status_code == 422
    assert answer.json["errors"][0]["right"]


def test_another_athletes_file_is_refused_and_names_the_page(coach: AtDesk, device: Phone) -> None:
    other = coach.adds_athlete("Tilde Moor")
    text = hand_over_text(device, NAME, device.writes.many(1))
    for answer in (look(coach, other, text), take(coach, other, text)):
        assert answer.status_code == 422
        assert "this file is from Runa Falk's phone" in answer.json["detail"]
    assert stored(device) == []


def test_a_phone_of_another_server_is_held_for_the_coach(coach: AtDesk, device: Phone) -> None:
    entries = device.writes.many(2)
    elsewhere = {"id": "0190-elsewhere", "name": NAME}
    text = hand_over_text(device, NAME, entries, device="0190-unknown", athlete=elsewhere)
    assert look(coach, device.athlete_id, text).json["phone"] is None
    assert taken(coach, device.athlete_id, text)["held"] == 2
    assert taken(coach, device.athlete_id, text)["held"] == 2
    (first, second) = coach.held(device.athlete_id)
    assert first["problem"]["code"] == "unknown-device"
    assert [first["sent"], second["sent"]] == entries


def test_a_revoked_phones_entries_are_held_as_by_a_sync(coach: AtDesk, device: Phone) -> None:
    entries = device.writes.many(2)
    coach.revokes(device)
    text = hand_over_text(device, NAME, entries)
    assert look(coach, device.athlete_id, text).json["revoked"]
    assert taken(coach, device.athlete_id, text)["held"] == 2
    assert statuses(device.syncs(*entries)) == ["held", "held"]
    assert len(coach.held(device.athlete_id)) == 2


def test_three_weeks_of_entries_come_in_by_one_file(coach: AtDesk, device: Phone) -> None:
    text = hand_over_text(device, NAME, device.writes.many(1_200))
    assert taken(coach, device.athlete_id, text)["stored"] == 1_200
    positions(device.athlete_id)
