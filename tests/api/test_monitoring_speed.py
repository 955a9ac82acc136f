"""Speed work and load-velocity lines at the desk."""

from typing import Any

import numpy as np
import pytest
from tests.api.training import entries_of, finished, send, sheets
from tests.fixtures import fixture
from tests.people import AtDesk, Phone
from tests.store.counting import counted

from undercroft.domain.program.monitoring import course_of
from undercroft.domain.strength.power import set_power

QUERIES = 10
"""Two for who asks, five for what was sent, two for sheets and entries, one for velocities,
one for the coach's exercises."""

VELOCITIES = (
    (0.90, 0.91, 0.90),
    (0.92, 0.93, 0.92),
    (0.94, 0.95, 0.94),
    (0.97, 0.96, 0.95),
    (0.93, 0.92, 0.92),
    (0.88, 0.87, 0.86),
)
"""Best in the fourth set, tired in the sixth: common practice."""

G = 9.80665


def speed(coach: AtDesk, athlete: str) -> dict[str, Any]:
    answer = coach.get(f"/desk/athletes/{athlete}/speed")
    assert answer.status_code == 200, answer.text
    return {one["exercise"]: one for one in answer.json["exercises"]}


def pulls(phone: Phone, sheet: dict[str, Any], sets: list[dict[str, Any]]) -> None:
    """The pull session with these words of its speed sets instead of the planned ones."""
    phone.writes.at = f"{sheet['on']}T18:00:00.000+01:00"
    lines = entries_of(phone, sheet)
    for line, body in zip(lines[1:], sets, strict=False):
        line["body"] |= body
    phone.syncs(*lines, finished(phone, sheet))


@pytest.fixture
def sent(coach: AtDesk, ready: str, block: str, device: Phone) -> dict[str, Any]:
    send(coach, block, ready)
    return sheets(device.reads_all())


def test_power_of_each_set_and_the_course_over_them(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    pulls(device, sent["w1-wed"], [{"velocities_m_s": list(each)} for each in VELOCITIES])
    (session,) = speed(coach, ready)["hex-bar-deadlift"]["sessions"]
    kg = session["sets"][0]["load_kg"]
    expected = [kg * G * sum(each) / len(each) for each in VELOCITIES]
    assert [one["mean_power_w"] for one in session["sets"]] == pytest.approx(expected, abs=0.05)
    powers = [set_power(kg, each) for each in VELOCITIES]
    assert [one["peak_power_w"] for one in session["sets"]] == pytest.approx(
        [one.peak_w for one in powers], abs=0.05
    )
    course = course_of([one.mean_w for one in powers])
    assert course is not None
    assert session["course"]["best_set"] == course.best == 4
    assert session["course"]["rise_percent"] == pytest.approx(course.rise_percent)
    assert session["course"]["drop_percent"] == pytest.approx(course.drop_percent)


def test_where_nobody_measured_quality_stands_and_is_no_velocity(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    pulls(device, sent["w1-wed"], [{"quality": 4}, {"quality": 5}, {"quality": 3}])
    (session,) = speed(coach, ready)["hex-bar-deadlift"]["sessions"]
    assert [one["quality"] for one in session["sets"]] == [4, 5, 3, None, None, None]
    assert {one["mean_power_w"] for one in session["sets"]} == {None}
    assert session["course"] is None


def test_power_with_bands_goes_by_the_mean_over_the_range(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    document = fixture("blocks", "every-method")
    (week,) = document["weeks"]
    week["sessions"] = [one for one in week["sessions"] if one["key"] == "wed"]
    block = coach.post("/desk/blocks", {"document": document}).json["id"]
    send(coach, block, ready)
    wed = sheets(device.reads_all())["wed"]
    pulls(device, wed, [{"velocities_m_s": [0.8, 0.8, 0.8]}])
    told = speed(coach, ready)["hex-bar-deadlift"]
    first = told["sessions"][0]["sets"][0]
    mean = wed["exercises"][0]["sets"][0]["curve"]["mean_kg"]
    assert first["mean_resistance_kg"] == pytest.approx(mean, abs=0.005)
    assert first["mean_power_w"] == pytest.approx(mean * G * 0.8, abs=0.05)
    assert told["velocity"]["points"] == []


def test_a_line_through_four_loads_gives_the_maximum_at_the_minimal_velocity(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    """Beside numpy's straight line; the hex bar's minimal velocity is 0.25 m/s (seen)."""
    loads, fastest = (60, 75, 90, 105), (1.10, 0.93, 0.79, 0.62)
    sets = [
        {"load_kg": kg, "velocities_m_s": [v, v - 0.02]}
        for kg, v in zip(loads, fastest, strict=True)
    ]
    pulls(device, sent["w1-wed"], sets)
    velocity = speed(coach, ready)["hex-bar-deadlift"]["velocity"]
    slope, intercept = np.polyfit(loads, fastest, 1)
    left = np.array(fastest) - (intercept + slope * np.array(loads))
    line = velocity["line"]
    assert line["slope_m_s_per_kg"] == pytest.approx(slope, abs=1e-6)
    assert line["r2"] == pytest.approx(np.corrcoef(loads, fastest)[0, 1] ** 2, abs=1e-4)
    assert line["standard_error_m_s"] == pytest.approx(np.sqrt((left**2).sum() / 2), abs=1e-4)
    assert line["velocity_at_lightest_m_s"] == pytest.approx(intercept + 60 * slope, abs=1e-4)
    assert line["maximum_kg"] == pytest.approx((0.25 - intercept) / slope, abs=0.05)
    assert line["maximum_low_kg"] < line["maximum_kg"] < line["maximum_high_kg"]
    assert velocity["why_no_line"] == ""


def test_one_load_is_no_line_and_the_desk_is_told_what_is_missing(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    pulls(device, sent["w1-wed"], [{"velocities_m_s": list(each)} for each in VELOCITIES])
    velocity = speed(coach, ready)["hex-bar-deadlift"]["velocity"]
    assert velocity["line"] is None
    assert velocity["why_no_line"] == (
        "Three loads spread over 30 % of the maximum are needed; there is one."
    )
    assert len(velocity["points"]) == len(VELOCITIES)


def test_loads_too_close_together_are_no_line(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    sets = [{"load_kg": kg, "velocities_m_s": [1.6 - kg / 100]} for kg in (60, 65, 70)]
    pulls(device, sent["w1-wed"], sets)
    velocity = speed(coach, ready)["hex-bar-deadlift"]["velocity"]
    assert velocity["line"] is None
    assert "at least 30% is needed" in velocity["why_no_line"]


def test_the_database_is_asked_as_often_however_many_exercises(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    for key in ("w1-wed", "w2-wed"):
        pulls(device, sent[key], [{"velocities_m_s": [0.9]}])
    with counted() as asked:
        speed(coach, ready)
    assert len(asked) == QUERIES


def test_the_tables_are_the_same_numbers(
    coach: AtDesk, ready: str, device: Phone, sent: dict[str, Any]
) -> None:
    pulls(device, sent["w1-wed"], [{"velocities_m_s": list(each)} for each in VELOCITIES])
    (session,) = speed(coach, ready)["hex-bar-deadlift"]["sessions"]
    head, *lines = coach.get(f"/desk/athletes/{ready}/tables/speed").text.splitlines()
    place = head.split(",").index("mean_power_w")
    assert [float(line.split(",")[place]) for line in lines] == [
        one["mean_power_w"] for one in session["sets"]
    ]
    _, *points = coach.get(f"/desk/athletes/{ready}/tables/velocity").text.splitlines()
    assert [float(line.split(",")[-1]) for line in points] == [max(one) for one in VELOCITIES]
