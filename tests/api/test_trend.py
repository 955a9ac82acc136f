"""A lift's maximum over time, as the desk plots it."""

from tests.people import AtDesk, Phone


def test_a_maximum_tested_on_the_phone_is_told_as_a_test(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    test = device.writes.entry("max.tested", {"lift": "back-squat", "kg": 115}, revision=None)
    device.syncs(test)
    points = coach.get(f"/desk/athletes/{ready}/maxima/back-squat").json["points"]
    assert [(p["on"], p["source"]) for p in points][-1] == ("2026-02-03", "test")
