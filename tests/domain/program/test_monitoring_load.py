"""Session load, monotony, strain, weighted load and reliability, against pandas and worked weeks.

"Derived": our own arithmetic from the inputs named. "Seen": stood on a page that was read.
"""

from datetime import date
from statistics import pstdev

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from undercroft.domain.errors import DomainError
from undercroft.domain.program.monitoring import (
    Rated,
    daily_loads,
    session_load,
    smoothed_loads,
    week_load,
    week_loads,
    weighted,
)
from undercroft.domain.program.monitoring.reliability import (
    error_from_cv,
    least_change,
    typical_error,
    worthwhile_change,
)
from undercroft.domain.program.monitoring.session_load import monotony_of
from undercroft.domain.program.monitoring.smoothed import (
    LONG_DAYS,
    REMEMBERED,
    rolling_ratio,
    weight,
)

FOSTER_WEEK = (420, 0, 540, 300, 0, 480, 0)
TWO_WEEKS = (300, 0, 450, 0, 500, 0, 0, 350, 0, 480, 0, 520, 0, 0)

loads = st.lists(st.floats(0, 2000), min_size=7, max_size=7)


class TestWeek:
    def test_monotony_and_strain_with_the_sample_standard_deviation(self):
        # Derived; the formula was seen (Foster 1998, 2001, in several descriptions).
        week = week_load(FOSTER_WEEK)
        assert week.load == 1740
        assert week.mean == pytest.approx(248.571, abs=0.001)
        assert week.sd == pytest.approx(243.545, abs=0.001)
        assert week.monotony == pytest.approx(1.0206, abs=0.001)
        assert week.strain == pytest.approx(1775.91, abs=0.1)

    def test_the_populations_standard_deviation_would_give_more(self):
        # Derived: SD 225.479, monotony 1.1024, strain 1918.20; the two differ by √(6/7).
        week = week_load(FOSTER_WEEK)
        assert pstdev(FOSTER_WEEK) == pytest.approx(225.479, abs=0.001)
        assert week.monotony == pytest.approx(1.1024 * np.sqrt(6 / 7), abs=0.001)
        assert week.strain == pytest.approx(1918.20 * np.sqrt(6 / 7), abs=0.1)

    def test_a_printed_mean_and_deviation_give_the_printed_monotony(self):
        # Worked example seen: mean 790, SD 897, printed as 0.88.
        assert monotony_of(790, 897) == pytest.approx(0.881, abs=0.001)

    @pytest.mark.parametrize("load", [0, 300, 0.1])
    def test_seven_equal_days_have_no_monotony_rather_than_an_infinite_one(self, load):
        week = week_load((load,) * 7)
        assert (week.sd, week.monotony, week.strain) == (0, None, None)

    def test_a_week_has_seven_days(self):
        with pytest.raises(DomainError, match="seven, with 0 for each day of rest"):
            week_load((420, 540, 300, 480))

    @given(loads)
    def test_it_agrees_with_numpy(self, days):
        week = week_load(days)
        sd = np.std(days, ddof=1)
        assert week.sd == pytest.approx(sd, abs=1e-6)
        if week.monotony is not None and sd > 1e-6:
            assert week.monotony == pytest.approx(np.mean(days) / sd, rel=1e-6)
            assert week.strain == pytest.approx(np.sum(days) * np.mean(days) / sd, rel=1e-6)

    @given(loads, st.floats(0.1, 10))
    def test_monotony_does_not_depend_on_the_unit(self, days, times):
        one, other = week_load(days), week_load([times * day for day in days])
        if one.monotony is not None and other.monotony is not None and one.sd > 1e-3:
            assert other.monotony == pytest.approx(one.monotony, rel=1e-6)

    def test_the_order_of_days_does_not_matter(self):
        assert week_load(FOSTER_WEEK).strain == pytest.approx(
            week_load(tuple(reversed(FOSTER_WEEK))).strain
        )


class TestSessions:
    def test_load_is_effort_times_minutes(self):
        assert session_load(6, 70) == 420

    @pytest.mark.parametrize(("rpe", "minutes"), [(11, 60), (-1, 60), (5, -1)])
    def test_what_cannot_be_is_refused(self, rpe, minutes):
        with pytest.raises(DomainError):
            session_load(rpe, minutes)

    def test_days_of_rest_are_zero_and_two_sessions_of_a_day_add_up(self):
        monday, wednesday = date(2026, 11, 2), date(2026, 11, 4)
        done = [Rated(monday, 5, 60), Rated(monday, 3, 20), Rated(wednesday, 7, 50)]
        assert daily_loads(done, monday, date(2026, 11, 5)) == (360, 0, 350, 0)

    def test_a_session_without_a_rating_is_said_and_not_guessed(self):
        monday = date(2026, 11, 2)
        done = [Rated(monday, 5, 60), Rated(date(2026, 11, 10), None, 55)]
        first, second = week_loads(done, monday, 2)
        assert (first.load, first.unrated) == (300, 0)
        assert (second.load, second.unrated) == (0, 1)


class TestWeightedLoad:
    def test_the_weights_of_seven_and_twenty_eight_days(self):
        assert weight(7) == pytest.approx(0.25, abs=1e-6)  # formula seen, Williams et al. 2017
        assert weight(28) == pytest.approx(0.0689655, abs=1e-6)

    def test_two_worked_weeks(self):
        # Derived with pandas, seeded by the first day.
        last = smoothed_loads(TWO_WEEKS)[-1]
        assert last.short == pytest.approx(147.931, abs=0.001)
        assert last.long == pytest.approx(222.436, abs=0.001)
        assert last.short / last.long == pytest.approx(0.66505, abs=0.00001)
        assert last.change_percent == pytest.approx(-33.495, abs=0.001)

    @given(st.lists(st.floats(0, 3000), min_size=1, max_size=90), st.sampled_from([7, 28, 3]))
    def test_it_equals_pandas(self, days, span):
        expected = pd.Series(days).ewm(span=span, adjust=False).mean()
        assert weighted(days, span) == pytest.approx(tuple(expected), rel=1e-9, abs=1e-9)

    @given(st.lists(st.floats(0, 3000), min_size=1, max_size=60))
    def test_it_stays_between_the_lightest_and_the_heaviest_day(self, days):
        for one in smoothed_loads(days):
            assert min(days) - 1e-6 <= one.short <= max(days) + 1e-6
            assert min(days) - 1e-6 <= one.long <= max(days) + 1e-6

    def test_the_long_average_settles_after_twenty_eight_days(self):
        days = smoothed_loads([100.0] * 30)
        assert [one.settled for one in days] == [False] * 27 + [True] * 3

    @given(st.lists(st.floats(0, 3000), min_size=400, max_size=420))
    def test_what_lies_a_year_back_is_felt_no_more(self, days):
        recent = days[-REMEMBERED.days :]
        whole, since = weighted(days, LONG_DAYS)[-1], weighted(recent, LONG_DAYS)[-1]
        assert since == pytest.approx(whole, abs=1e-7)

    def test_no_load_has_no_change_rather_than_an_infinite_one(self):
        assert smoothed_loads([0, 0])[-1].change_percent is None

    def test_the_rolling_ratio_hangs_on_whether_the_week_is_in_both_parts(self):
        # Derived: 1500 over the mean of four weeks with it, or of the three before it.
        weeks = (1000, 1000, 1000, 1500)
        assert rolling_ratio(weeks, coupled=True) == pytest.approx(1.3333, abs=0.0001)
        assert rolling_ratio(weeks, coupled=False) == pytest.approx(1.5, abs=0.0001)
        assert rolling_ratio((0, 0, 0, 9), coupled=True) == 4  # coupled, it cannot exceed 4


class TestReliability:
    FIRST, SECOND = (100, 120, 140, 85, 110), (102.5, 117.5, 142.5, 87.5, 110)

    def test_typical_error_and_what_follows_from_it(self):
        # Derived; formulas of Hopkins, seen. The worthwhile change is of test 1, noise left in.
        error = typical_error(self.FIRST, self.SECOND)
        assert error == pytest.approx(1.5811, abs=0.001)
        assert least_change(error) == pytest.approx(4.3827, abs=0.001)
        assert worthwhile_change(self.FIRST) == pytest.approx(4.1473, abs=0.001)

    def test_the_tests_own_noise_is_no_spread_between_people(self):
        assert worthwhile_change(self.FIRST, error=1.5811) < worthwhile_change(self.FIRST)
        assert worthwhile_change(self.FIRST, error=1000) == 0

    def test_two_and_a_half_kilograms_on_a_hundred_and_forty_are_below_what_a_test_can_tell(self):
        # CV 4.2 % seen (Grgic et al. 2020); the rest derived.
        error = error_from_cv(140, 4.2)
        assert error == pytest.approx(5.88, abs=0.01)
        assert least_change(error) == pytest.approx(16.30, abs=0.01)
        assert least_change(error) > 2.5

    def test_a_published_error_in_kilograms_agrees_with_its_percentage(self):
        # Banyard et al. 2017, seen: CV 2.1 % of 140.3 kg, published as 2.9 kg.
        assert error_from_cv(140.3, 2.1) == pytest.approx(2.9, abs=0.1)

    def test_tests_of_different_people_are_refused(self):
        with pytest.raises(DomainError, match="3 and 2 results"):
            typical_error((1, 2, 3), (1, 2))
