"""A lift's maximum over time, as the desk plots it."""

from tests.fixtures import athlete_data
from tests.people import AtDesk, Phone
from tests.store.counting import counted

QUERIES = 5
"""Two for who asks, one for the athlete, one for the trackers, one for the coach's exercises."""


def test_a_maximum_tested_on_the_phone_is_told_as_a_test(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    test = device.writes.entry("max.tested", {"lift": "back-squat", "kg": 115}, revision=None)
    device.syncs(test)
    points = coach.get(f"/desk/athletes/{ready}/maxima/back-squat").json["points"]
    assert [(p["on"], p["source"]) for p in points][-1] == ("2026-02-03", "test")


def test_the_table_of_all_maxima_has_the_points_of_every_lift(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    test = device.writes.entry("max.tested", {"lift": "back-squat", "kg": 115}, revision=None)
    device.syncs(test)
    with counted() as asked:
        head, *lines = coach.get(f"/desk/athletes/{ready}/tables/maxima").text.splitlines()
    assert len(asked) == QUERIES
    assert head.startswith("lift,on,kg,low_kg,high_kg,smooth_kg")
    points = coach.get(f"/desk/athletes/{ready}/maxima/back-squat").json["points"]
    squats = [line.split(",") for line in lines if line.startswith("Back squat,")]
    assert [(row[1], float(row[2])) for row in squats] == [(p["on"], p["kg"]) for p in points]
    assert len({line.split(",")[0] for line in lines}) == len(athlete_data()["maxima"])
