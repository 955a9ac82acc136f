"""One exchange: entries up, verdicts and the feed down."""

from tests.people import AtDesk, Clock, Phone, statuses


def test_a_stored_entry_has_a_verdict_with_its_place_in_the_feed(device: Phone) -> None:
    answer = device.syncs(device.writes.done("squat.1"), device.writes.done("squat.2"))
    assert statuses(answer) == ["stored", "stored"]
    assert [verdict["position"] for verdict in answer["verdicts"]] == [1, 2]
    assert answer["stored_through"] == 2


def test_a_device_does_not_get_its_own_entries_back(device: Phone) -> None:
    device.syncs(device.writes.done("squat.1"))
    assert device.reads_all() == []


def test_the_athletes_other_device_gets_them_as_they_were_written(
    device: Phone, second_device: Phone
) -> None:
    entry = device.writes.done("squat.1", velocities_m_s=[0.41, 0.4], side="left")
    device.syncs(entry)
    (item,) = second_device.reads_all()
    assert item == {"position": 1, "kind": "entry", "key": entry["id"], "body": entry}


def test_another_athletes_device_gets_nothing(device: Phone, other_device: Phone) -> None:
    device.syncs(device.writes.done("squat.1"))
    assert other_device.reads_all() == []


def test_a_zipped_body_is_taken(device: Phone) -> None:
    answer = device.sends(*device.writes.many(50), zipped=True)
    assert statuses(answer.json) == ["stored"] * 50


def test_a_sync_with_nothing_to_say_is_small(device: Phone) -> None:
    device.syncs(device.writes.done("squat.1"))
    answer = device.sends()
    assert answer.status_code == 200
    assert len(answer.data) <= 400


def test_an_outbox_is_never_taken_from_another_device(device: Phone, second_device: Phone) -> None:
    body = device.asks([device.writes.done("squat.1")])
    answer = second_device.post("/sync", body)
    assert answer.status_code == 403
    assert "pair again" in answer.json["detail"]
    assert device.reads_all() == second_device.reads_all() == []


def test_more_than_500_entries_are_too_many_and_none_is_stored(device: Phone) -> None:
    answer = device.sends(*device.writes.many(501))
    assert answer.status_code == 413
    assert device.syncs()["stored_through"] == 0


def test_the_desk_sees_when_a_device_was_last_there(
    coach: AtDesk, device: Phone, athlete: str, clock: Clock
) -> None:
    clock.passes(5 * 3600 * 1000)
    device.syncs()
    (seen,) = coach.get(f"/desk/athletes/{athlete}/devices").json["devices"]
    assert seen["last_used_at"] == "2026-02-02T07:40:00.000Z"
