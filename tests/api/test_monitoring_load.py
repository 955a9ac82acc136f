"""Session load and weighted load at the desk, beside pandas on the same sessions."""

from datetime import date
from typing import Any

import pandas as pd
import pytest
from tests.api.weeks_done import FORTNIGHT, Effort, comes, trains
from tests.people import PASSWORD, AtDesk, Clock, Phone
from tests.store.counting import counted

from undercroft.domain.program.monitoring import Rated, smoothed_loads, week_loads
from undercroft.services.clock import DAY_MS

MONDAY_AFTER = "2026-02-16"
QUERIES = 9
"""One for the log-in, one for whose athlete it is, four for what was sent and which runs are near,
one for the phones, one for what took place and one for whether anything did before."""


@pytest.fixture
def trained(coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock) -> str:
    trains(coach, ready, block, device, *FORTNIGHT)
    comes(coach, clock, MONDAY_AFTER)
    device.syncs()
    return ready


def load(coach: AtDesk, athlete: str, weeks: int = 12) -> dict[str, Any]:
    answer = coach.get(f"/desk/athletes/{athlete}/load?weeks={weeks}")
    assert answer.status_code == 200, answer.text
    return dict(answer.json)


def daily(coach: AtDesk, athlete: str) -> pd.Series:
    """The load of each day from the results that the desk lists, rest days as zero."""
    sessions = coach.get(f"/desk/athletes/{athlete}/results").json["sessions"]
    done = pd.DataFrame([one for one in sessions if one["state"] == "finished"])
    done["day"] = pd.to_datetime(done["finished_at"].str[:10])
    loads = (done["rpe"] * done["minutes"]).groupby(done["day"]).sum()
    return loads.reindex(pd.date_range("2026-02-02", MONDAY_AFTER), fill_value=0.0)


def test_days_weeks_and_weighted_loads_are_those_of_pandas(coach: AtDesk, trained: str) -> None:
    told, days = load(coach, trained), daily(coach, trained)
    assert [one["load_au"] for one in told["days"]] == days.tolist()
    for name, span in (("weighted_7_days_au", 7), ("weighted_28_days_au", 28)):
        expected = days.ewm(span=span, adjust=False).mean()
        assert [one[name] for one in told["days"]] == pytest.approx(expected.tolist(), abs=0.005)
    weeks = days["2026-02-02":"2026-02-15"].resample("W")
    monotony = weeks.mean() / weeks.std()
    over = [one for one in told["weeks"] if one["whole"]]
    assert [one["load_au"] for one in over] == weeks.sum().tolist()
    assert [one["monotony"] for one in over] == pytest.approx(monotony.tolist(), abs=0.0005)
    strain = weeks.sum() * monotony
    assert [one["strain_au"] for one in over] == pytest.approx(strain.tolist(), abs=0.05)


def test_the_numbers_are_those_of_the_monitoring_functions(coach: AtDesk, trained: str) -> None:
    told, days = load(coach, trained), daily(coach, trained)
    rated = [Rated(day.date(), 1, value) for day, value in days.items() if value]
    expected = week_loads(rated, date(2026, 2, 2), 2)
    assert [one["day_sd_au"] for one in told["weeks"][:2]] == pytest.approx(
        [one.sd for one in expected], abs=0.005
    )
    last = smoothed_loads(days.tolist())[-1]
    assert told["days"][-1]["difference_au"] == pytest.approx(last.difference, abs=0.005)
    assert told["days"][-1]["change_percent"] == pytest.approx(last.change_percent, abs=0.05)
    assert "sample" in told["sd"]
    assert "Impellizzeri" in told["caution"]


def test_a_week_under_way_and_a_week_of_rest_have_no_monotony(
    coach: AtDesk, trained: str, device: Phone, clock: Clock
) -> None:
    comes(coach, clock, "2026-02-24")
    device.syncs()
    rest, under_way = load(coach, trained)["weeks"][-2:]
    assert (rest["whole"], rest["load_au"]) == (True, 0)
    assert (rest["monotony"], rest["strain_au"]) == (None, None)
    assert (under_way["whole"], under_way["monotony"]) == (False, None)


def test_silence_is_no_rest(coach: AtDesk, trained: str, clock: Clock) -> None:
    comes(coach, clock, "2026-02-24")
    told = load(coach, trained)
    assert told["heard_through"] == "2026-02-15"
    assert [one["whole"] for one in told["weeks"]] == [True, True, False, False]


def test_what_a_revoked_phone_still_says_is_not_heard(
    coach: AtDesk, trained: str, device: Phone, clock: Clock
) -> None:
    coach.revokes(device)
    comes(coach, clock, "2026-02-24")
    device.syncs()
    assert load(coach, trained)["heard_through"] == "2026-02-15"


def test_fewer_weeks_shown_leave_the_weighted_loads_as_they_are(
    coach: AtDesk, trained: str
) -> None:
    whole, short = load(coach, trained)["days"], load(coach, trained, weeks=2)["days"]
    assert short == whole[-len(short) :]
    assert short[0]["on"] == "2026-02-09"


def test_a_session_stopped_counts_as_unrated(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    trains(coach, ready, block, device, Effort("w1-mon", 7, 60))
    where = {"session": "w1-wed", "revision": 1}
    device.writes.at = "2026-02-04T18:00:00.000+01:00"
    device.syncs(
        device.writes.entry("session.started", {}, **where),
        device.writes.entry("session.stopped", {"why": "the hall closed"}, **where),
    )
    comes(coach, clock, "2026-02-09")
    (week, _) = load(coach, ready)["weeks"]
    assert (week["load_au"], week["unrated_sessions"]) == (420, 1)


def test_a_phone_whose_clock_is_years_off_loads_the_planned_day(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    trains(coach, ready, block, device, Effort("w1-wed", 7, 60, on="2019-01-01"))
    comes(coach, clock, "2026-02-09")
    days = {one["on"]: one["load_au"] for one in load(coach, ready)["days"]}
    assert days["2026-02-04"] == 420


def test_a_session_outside_the_plan_was_work_all_the_same(
    coach: AtDesk, ready: str, device: Phone, clock: Clock
) -> None:
    where = {"session": "on-the-rocks", "revision": None}
    device.writes.at = "2026-02-04T18:00:00.000+01:00"
    device.syncs(
        device.writes.entry("session.started", {}, **where),
        device.writes.entry("session.finished", {"rpe": 5, "minutes": 90}, **where),
    )
    comes(coach, clock, "2026-02-09")
    days = {one["on"]: one["load_au"] for one in load(coach, ready)["days"]}
    assert days["2026-02-04"] == 450


def test_what_lies_years_back_is_read_no_more_and_rest_since_then_is_still_rest(
    coach: AtDesk, trained: str, clock: Clock
) -> None:
    clock.passes(480 * DAY_MS)
    again = {"email": coach.email, "password": PASSWORD}
    assert coach.browser.post("/api/v1/coach/log-in", json=again).status_code == 200
    told = load(coach, trained)
    assert {one["load_au"] for one in told["days"]} == {0}
    assert {round(one["weighted_28_days_au"], 2) for one in told["days"]} == {0}
    assert all(one["settled"] for one in told["days"])
    assert len(told["weeks"]) == 12


def test_an_athlete_who_did_nothing_has_no_days(coach: AtDesk, ready: str) -> None:
    told = load(coach, ready)
    assert (told["days"], told["weeks"]) == ([], [])


def test_however_much_was_done_the_database_is_asked_as_often(
    coach: AtDesk, trained: str, athlete: str
) -> None:
    with counted() as asked:
        load(coach, trained)
    assert len(asked) == QUERIES


@pytest.mark.parametrize("weeks", [0, 53, "many"])
def test_a_span_that_cannot_be_is_refused(coach: AtDesk, ready: str, weeks: Any) -> None:
    answer = coach.get(f"/desk/athletes/{ready}/load?weeks={weeks}")
    assert answer.status_code == 422


def test_the_tables_of_days_and_weeks_are_the_same_numbers(coach: AtDesk, trained: str) -> None:
    told = load(coach, trained)
    for name in ("days", "weeks"):
        answer = coach.get(f"/desk/athletes/{trained}/tables/{name}")
        assert answer.mimetype == "text/csv"
        lines = answer.text.splitlines()
        assert len(lines) == len(told[name]) + 1
        assert lines[0].split(",") == list(told[name][0])


def test_a_table_that_there_is_not_names_those_there_are(coach: AtDesk, ready: str) -> None:
    answer = coach.get(f"/desk/athletes/{ready}/tables/ratio")
    assert answer.status_code == 404
    assert "hard-sets" in answer.json["detail"]
