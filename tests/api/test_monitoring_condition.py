"""Pain, readiness and body mass at the desk, as the athlete reported them."""

from typing import Any

import pytest
from tests.people import AtDesk, Phone
from tests.store.counting import counted

QUERIES = 3
"""Two for who asks, one for what was reported."""


def condition(coach: AtDesk, athlete: str, weeks: int = 12) -> dict[str, Any]:
    answer = coach.get(f"/desk/athletes/{athlete}/condition?weeks={weeks}")
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


@pytest.fixture
def reported(device: Phone) -> str:
    """Pain told and corrected, readiness and body mass on two days; one long ago."""
    writes = device.writes
    writes.at = "2025-06-01T08:00:00.000+02:00"
    device.syncs(writes.entry("body_mass", {"kg": 71.0}, revision=None))
    writes.at = "2026-02-01T08:00:00.000+01:00"
    pain = writes.entry("pain.reported", {"where": "=knee", "level": 6}, revision=None)
    device.syncs(
        writes.entry("readiness", {"score": 3}, revision=None),
        writes.entry("body_mass", {"kg": 68.4}, revision=None),
        pain,
    )
    mended = {"where": "=knee", "level": 4, "comment": "since the last squat"}
    device.syncs(writes.entry("pain.reported", mended, revision=None, replaces=pain["id"]))
    writes.at = "2026-02-02T01:30:00.000+01:00"
    device.syncs(writes.entry("readiness", {"score": 4, "comment": "slept"}, revision=None))
    return device.athlete_id


def test_each_report_stands_on_the_day_of_the_phone(coach: AtDesk, reported: str) -> None:
    told = condition(coach, reported)
    assert told["readiness"] == [
        {"on": "2026-02-01", "score": 3, "comment": None},
        {"on": "2026-02-02", "score": 4, "comment": "slept"},
    ]
    assert told["body_masses"] == [{"on": "2026-02-01", "kg": 68.4}]
    assert (told["first"], told["last"]) == ("2025-11-17", "2026-02-02")


def test_what_was_corrected_is_told_once(coach: AtDesk, reported: str) -> None:
    assert [one["level"] for one in condition(coach, reported)["pains"]] == [4]


def test_further_back_is_there_when_asked_for(coach: AtDesk, reported: str) -> None:
    assert len(condition(coach, reported, weeks=52)["body_masses"]) == 2


def test_no_cell_of_a_table_is_run_as_a_formula(coach: AtDesk, reported: str) -> None:
    lines = coach.get(f"/desk/athletes/{reported}/tables/pain").text.splitlines()
    assert lines == ["on,where,level,comment", "2026-02-01,'=knee,4,since the last squat"]
    for name, rows in (("readiness", 2), ("body-mass", 1)):
        text = coach.get(f"/desk/athletes/{reported}/tables/{name}").text
        assert len(text.splitlines()) == rows + 1


def test_the_database_is_asked_once_for_all_of_it(coach: AtDesk, reported: str) -> None:
    with counted() as asked:
        condition(coach, reported)
    assert len(asked) == QUERIES
