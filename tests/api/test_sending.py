"""What may be asked when a block is sent: from which day on, and to whom."""

import pytest
from tests.people import AtDesk


@pytest.mark.parametrize(
    ("day", "what", "right"),
    [
        ("2026-02-04", "2026-02-04 is a Wednesday", "give a Monday: 2026-02-02 or 2026-02-09"),
        ("2026-02-08", "2026-02-08 is a Sunday", "give a Monday: 2026-02-02 or 2026-02-09"),
        ("9999-12-30", "9999-12-30 is more than two years from today", "give a Monday nearer"),
        ("0001-01-01", "0001-01-01 is more than two years from today", "give a Monday nearer"),
        ("2206-02-03", "2206-02-03 is more than two years from today", "give a Monday nearer"),
    ],
)
def test_a_block_starts_on_a_monday_within_two_years(
    coach: AtDesk, ready: str, block: str, day: str, what: str, right: str
) -> None:
    answer = coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready], "starts_on": day})
    assert answer.status_code == 422
    (fault,) = answer.json["errors"]
    assert (fault["where"], fault["what"]) == ("starts_on", what)
    assert fault["right"].startswith(right)


def test_a_monday_two_years_ahead_is_taken(coach: AtDesk, ready: str, block: str) -> None:
    body = {"athletes": [ready], "starts_on": "2028-01-31"}
    answer = coach.post(f"/desk/blocks/{block}/send", body)
    assert [one["athlete"] for one in answer.json["sent"]] == [ready]


def test_an_athlete_named_twice_gets_one_revision(coach: AtDesk, ready: str, block: str) -> None:
    answer = coach.post(f"/desk/blocks/{block}/send", {"athletes": [ready, ready]})
    assert [(one["athlete"], one["revision"]) for one in answer.json["sent"]] == [(ready, 1)]
