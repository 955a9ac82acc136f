"""What an athlete found different in the gym: proposed by the phone, decided at the desk."""

from typing import Any

import pytest
from tests.api.training import by_kind, send, sheets
from tests.fixtures import kit_data
from tests.people import AtDesk, Clock, Phone

from undercroft.services.clock import DAY_MS
from undercroft.services.squad import squad
from undercroft.store import database

READINGS = [{"length_m": 1.5, "kg": 8.2}, {"length_m": 1.25, "kg": 5.1}]


def proposes(phone: Phone, item: str, **change: Any) -> str:
    entry = phone.writes.entry("kit.changed", {"item": item, "change": change})
    phone.syncs(entry)
    return str(entry["id"])


def waiting(coach: AtDesk, athlete: str) -> list[dict[str, Any]]:
    return list(coach.get(f"/desk/athletes/{athlete}/kit/proposals").json["proposals"])


def accepted(coach: AtDesk, athlete: str, proposal: str) -> dict[str, Any]:
    answer = coach.post(f"/desk/athletes/{athlete}/kit/proposals/{proposal}/accept")
    assert answer.status_code == 200, answer.text
    return dict(answer.json["document"])


def count_of(kit: dict[str, Any], mass: float) -> int:
    return int(next(row["count"] for row in kit["plates"] if row["mass_kg"] == mass))


def test_a_lost_plate_changes_nothing_until_the_coach_says_so(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    before = sheets(device.reads_all())["w1-mon"]
    proposal = proposes(device, "Plate 20 kg", kind="gone", list="plates", name=20, count=6)
    (seen,) = waiting(coach, ready)
    assert seen["says"] == "6 plates of 20 kg gone; the kit has 6."
    assert seen["trouble"] is None
    assert device.reads_all() == []
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert "Proposes a change of the kit" in [one["text"] for one in line["attention"]]

    assert count_of(accepted(coach, ready, proposal), 20) == 0
    feed = device.reads_all()
    assert count_of(by_kind(feed, "kit")[""], 20) == 0
    assert by_kind(feed, "kit.decided") == {proposal: {"accepted": True}}
    assert sheets(feed)["w1-mon"]["exercises"] != before["exercises"], "other plates carry it now"
    assert waiting(coach, ready) == []
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert "Proposes a change of the kit" not in [one["text"] for one in line["attention"]]


def test_a_change_that_waits_stands_with_the_squad_until_it_is_decided(
    coach: AtDesk, ready: str, device: Phone, clock: Clock
) -> None:
    proposes(device, "Plate 20 kg", kind="gone", list="plates", name=20, count=6)
    clock.passes(60 * DAY_MS)
    database.connect()
    (line,) = squad(coach.id, clock())
    database.disconnect()
    assert "Proposes a change of the kit" in [one.text for one in line.attention]


def test_what_is_here_again_is_counted_or_written_down_as_it_was(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    bar = kit_data()["bars"][1]
    went = proposes(device, bar["name"], kind="gone", list="bars", name="hex")
    assert waiting(coach, ready)[0]["says"] == "Hex bar gone."
    kit = accepted(coach, ready, went)
    assert "hex" not in [one["key"] for one in kit["bars"]]
    came = proposes(device, bar["name"], kind="back", list="bars", name="hex", row=bar)
    assert bar in accepted(coach, ready, came)["bars"]
    more = proposes(device, "Plate 15 kg", kind="back", list="plates", name=15, count=2)
    assert count_of(accepted(coach, ready, more), 15) == 4


def test_a_bar_weighed_with_and_without_takes_the_difference(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    weighed = {"kind": "bar-weighed", "key": "bar-20", "with_kg": 91.4, "without_kg": 71.8}
    proposal = proposes(device, "Steel bar", **weighed)
    told = "Weighs 19.6 kg (91.4 kg with it, 71.8 kg without); the kit says 20 kg."
    assert waiting(coach, ready)[0]["says"] == told
    assert accepted(coach, ready, proposal)["bars"][0]["mass_kg"] == 19.6


def test_a_band_measured_gets_its_readings_and_the_day(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    """5.1 kg on a hanging scale are 50.01 N at standard gravity."""
    measured = {"kind": "band-measured", "key": "thin-left", "rest_length_m": 1.05}
    proposal = proposes(device, "thin, marked L", **measured, readings=READINGS)
    band = accepted(coach, ready, proposal)["bands"][0]
    assert band["rest_length_m"] == 1.05
    assert band["measured_on"] == device.writes.at[:10]
    assert band["readings"] == [
        {"length_m": 1.25, "force_n": 50.01},
        {"length_m": 1.5, "force_n": 80.41},
    ]


def test_what_is_declined_leaves_the_kit_and_is_told_to_the_phone(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    proposal = proposes(device, "bench", kind="gone", list="things", name="bench")
    device.reads_all()
    path = f"/desk/athletes/{ready}/kit/proposals/{proposal}"
    assert coach.post(f"{path}/decline").status_code == 204
    assert by_kind(device.reads_all(), "kit.decided") == {proposal: {"accepted": False}}
    assert coach.get(f"/desk/athletes/{ready}").json["kit"]["things"] == kit_data()["things"]
    assert coach.post(f"{path}/decline").status_code == 404
    assert coach.post(f"{path}/accept").status_code == 404


def test_a_correction_takes_the_place_of_what_it_corrects(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    first = proposes(device, "Plate 20 kg", kind="gone", list="plates", name=20, count=2)
    change = {"kind": "gone", "list": "plates", "name": 20, "count": 1}
    body = {"item": "Plate 20 kg", "change": change}
    device.syncs(device.writes.entry("kit.changed", body, replaces=first))
    (seen,) = waiting(coach, ready)
    assert seen["says"].startswith("1 plate of 20 kg gone")


def test_a_slip_that_was_taken_back_is_nobodys_business(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    slip = proposes(device, "Plate 20 kg", kind="gone", list="plates", name=20, count=2)
    body = {"item": "Plate 20 kg", "change": {"kind": "withdrawn"}}
    device.syncs(device.writes.entry("kit.changed", body, replaces=slip))
    assert waiting(coach, ready) == []
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert not any("kit" in one["text"] for one in line["attention"])


@pytest.mark.parametrize(
    ("change", "trouble"),
    [
        ({"kind": "gone", "list": "plates", "name": 20, "count": 7}, "the kit has 6"),
        ({"kind": "gone", "list": "bars", "name": "no-such-bar"}, "the kit has no no-such-bar"),
        ({"kind": "back", "list": "bars", "name": "hex"}, "hex is in the kit"),
        ({"kind": "back", "list": "bars", "name": "old"}, "what old was like is not said"),
        ({"kind": "bar-weighed", "key": "bar-20", "with_kg": 70, "without_kg": 71}, "no more than"),
        (
            {
                "kind": "band-measured",
                "key": "thin-left",
                "rest_length_m": 1.04,
                "readings": [*READINGS, {"length_m": 2.7, "kg": 20}],
            },
            "2.5 times its length at rest",
        ),
        (
            {
                "kind": "band-measured",
                "key": "thin-left",
                "rest_length_m": 1.04,
                "readings": [*READINGS, {"length_m": 1.0, "kg": 0}],
            },
            "no longer than the band at rest",
        ),
    ],
)
def test_what_cannot_be_applied_says_why_and_stays(
    coach: AtDesk, ready: str, device: Phone, change: dict[str, Any], trouble: str
) -> None:
    proposal = proposes(device, "a piece", **change)
    (seen,) = waiting(coach, ready)
    assert trouble in seen["trouble"]
    answer = coach.post(f"/desk/athletes/{ready}/kit/proposals/{proposal}/accept")
    assert answer.status_code == 422
    assert len(waiting(coach, ready)) == 1
    assert coach.get(f"/desk/athletes/{ready}").json["kit"]["key"] == "forge-cellar"


@pytest.mark.parametrize(
    "change",
    [
        {"count": 3, "why": ["lent", None]},
        {"kind": "melted"},
        {"kind": "gone", "list": "walls", "name": "north"},
        {"kind": "gone", "list": "plates", "name": 20, "count": "two"},
        {"kind": "back", "list": "bars", "name": "b", "row": {"key": "b"}},
        {"kind": "bar-weighed", "key": "bar-20"},
        {"kind": ["gone"]},
    ],
)
def test_another_shape_is_shown_as_it_is_and_can_be_set_aside(
    coach: AtDesk, ready: str, device: Phone, change: dict[str, Any]
) -> None:
    proposal = proposes(device, "plate 10", **change)
    (seen,) = waiting(coach, ready)
    assert (seen["says"], seen["change"], seen["item"]) == ("", change, "plate 10")
    assert "does not know how to apply it" in seen["trouble"]
    path = f"/desk/athletes/{ready}/kit/proposals/{proposal}"
    assert coach.post(f"{path}/accept").status_code == 422
    assert coach.post(f"{path}/decline").status_code == 204
