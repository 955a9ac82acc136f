"""Held entries: nothing is overwritten, everything waits for a person."""

from tests.people import AtDesk, Clock, Phone, statuses
from tests.sync.asking import positions, stored
from werkzeug.test import TestResponse


def accept(coach: AtDesk, phone: Phone, position: int) -> TestResponse:
    return coach.post(f"/desk/athletes/{phone.athlete_id}/held/{position}/accept")


def test_the_same_id_with_other_content_is_held_and_overwrites_nothing(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    entry = device.writes.done("squat.1", reps=3)
    other = {**entry, "body": {**entry["body"], "reps": 8}}
    device.syncs(entry)
    answer = device.syncs(other)
    assert statuses(answer) == ["held"]
    assert answer["verdicts"][0]["problem"]["code"] == "id-taken"
    (item,) = second_device.reads_all()
    assert item["body"] == entry
    assert coach.held(device.athlete_id)[0]["sent"] == other


def test_the_order_of_fields_is_no_content(device: Phone) -> None:
    entry = device.writes.done("squat.1")
    turned = dict(reversed(entry.items()))
    turned["body"] = dict(reversed(entry["body"].items()))
    device.syncs(entry)
    assert statuses(device.syncs(turned)) == ["duplicate"]


def test_the_same_number_under_another_id_is_held(device: Phone) -> None:
    """Two phones from one backup count on from the same number."""
    device.syncs(device.writes.done("squat.1"))
    device.writes.n = 0
    answer = device.syncs(device.writes.done("squat.2"))
    assert statuses(answer) == ["held"]
    assert answer["verdicts"][0]["problem"]["code"] == "n-taken"


def test_the_same_number_of_another_device_is_no_conflict(
    device: Phone, second_device: Phone
) -> None:
    device.syncs(device.writes.done("squat.1"))
    assert statuses(second_device.syncs(second_device.writes.done("squat.2"))) == ["stored"]


def test_a_conflict_within_one_batch_is_seen_as_well(device: Phone) -> None:
    entry = device.writes.done("squat.1")
    other = {**entry, "set": "squat.2"}
    device.writes.n = 0
    same_number = device.writes.done("squat.3")
    answer = device.syncs(entry, entry, other, same_number)
    assert statuses(answer) == ["stored", "duplicate", "held", "held"]


def test_an_accepted_entry_counts_and_reaches_every_device(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    coach.revokes(device)
    entry = device.writes.done("squat.1")
    device.syncs(entry)
    (held,) = coach.held(device.athlete_id)
    assert accept(coach, device, held["position"]).json == {"id": entry["id"]}
    (item,) = second_device.reads_all()
    assert (item["kind"], item["key"], item["body"]) == ("entry", entry["id"], entry)
    assert stored(device) == [entry["id"]]
    assert coach.held(device.athlete_id) == []
    assert statuses(device.syncs(entry)) == ["duplicate"]
    positions(device.athlete_id)


def test_its_own_device_hears_of_it_too(coach: AtDesk, device: Phone) -> None:
    device.syncs(device.writes.done("squat.1"))
    device.writes.n = 0
    copied = device.writes.done("squat.2")
    device.syncs(copied)
    (held,) = coach.held(device.athlete_id)
    accept(coach, device, held["position"])
    assert [item["key"] for item in device.reads_all()] == [copied["id"]]


def test_one_whose_id_is_taken_counts_under_a_new_one(
    coach: AtDesk, device: Phone, second_device: Phone
) -> None:
    entry = device.writes.done("squat.1", reps=3)
    other = {**entry, "body": {**entry["body"], "reps": 8}}
    device.syncs(entry, other)
    (held,) = coach.held(device.athlete_id)
    new_id = accept(coach, device, held["position"]).json["id"]
    bodies = [item["body"] for item in second_device.reads_all()]
    assert [body["id"] for body in bodies] == [entry["id"], new_id]
    assert [body["body"]["reps"] for body in bodies] == [3, 8]
    assert statuses(device.syncs(entry, other)) == ["duplicate", "duplicate"]
    assert coach.held(device.athlete_id) == []
    positions(device.athlete_id)


def test_one_that_cannot_be_read_cannot_count_and_stays(coach: AtDesk, device: Phone) -> None:
    device.syncs({**device.writes.done("squat.1"), "body": {"reps": "three"}})
    (held,) = coach.held(device.athlete_id)
    refused = accept(coach, device, held["position"])
    assert refused.status_code == 422
    assert refused.json["errors"][0]["path"] == "body.reps"
    assert len(coach.held(device.athlete_id)) == 1


def test_one_is_accepted_once(coach: AtDesk, device: Phone) -> None:
    coach.revokes(device)
    device.syncs(device.writes.done("squat.1"))
    (held,) = coach.held(device.athlete_id)
    assert accept(coach, device, held["position"]).status_code == 200
    assert accept(coach, device, held["position"]).status_code == 404


def test_a_stored_entry_is_not_there_to_be_accepted(coach: AtDesk, device: Phone) -> None:
    position = device.syncs(device.writes.done("squat.1"))["verdicts"][0]["position"]
    assert accept(coach, device, position).status_code == 404


def test_a_held_entry_says_when_it_came_and_from_where(
    coach: AtDesk, device: Phone, clock: Clock
) -> None:
    coach.revokes(device)
    clock.passes(3_600_000)
    device.syncs(device.writes.done("squat.1"))
    (held,) = coach.held(device.athlete_id)
    assert held["device"] == device.id
    assert held["received_at"] == "2026-02-02T03:40:00.000Z"
