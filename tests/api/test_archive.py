"""Everything about an athlete in one document."""

from tests.people import AtDesk, Phone

from undercroft.services import archive
from undercroft.store import database


def test_what_could_not_be_placed_goes_along_with_why(coach: AtDesk, device: Phone) -> None:
    sound = device.writes.done("squat.1")
    device.syncs(sound, {**device.writes.done("squat.2"), "kind": "set.juggled"})
    database.connect()
    kept = archive.of_athlete(device.athlete_id)
    database.disconnect()
    assert [entry["id"] for entry in kept["entries"]] == [sound["id"]]
    (held,) = kept["held"]
    assert held["sent"]["kind"] == "set.juggled"
    assert held["problem"]["code"] == "unknown-kind"
    assert held["device"] == device.id
