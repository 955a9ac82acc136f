"""The settings table: values as designed, each with its reason."""

from dataclasses import fields

import pytest

from undercroft.domain.strength import BASIS, DEFAULT, StrengthSettings, novice, trained
from undercroft.domain.strength.settings import at


def test_every_setting_says_why():
    assert set(BASIS) == {one.name for one in fields(StrengthSettings)}
    assert all(len(why) > 30 for why in BASIS.values())


def test_a_test_of_the_maximum_is_doubted_as_in_the_literature():
    assert DEFAULT.test_sd == 0.042  # median CV over 32 studies, Grgic et al. 2020, seen
    assert trained().test_sd == 0.025  # above 2.1 % in trained squatters, Banyard et al. 2017, seen


def test_a_novice_moves_faster_and_less_surely():
    assert (DEFAULT.growth_sd, DEFAULT.drift) == (0.015, 0.002)
    assert (novice().growth_sd, novice().drift) == (0.020, 0.010)
    assert novice(trained()).test_sd == 0.025


@pytest.mark.parametrize(
    ("n", "sd"),
    [(1, 0.015), (3, 0.015), (4, 0.019), (5, 0.023), (9, 0.033), (14, 0.04), (15, 0.04)],
)
def test_doubt_of_the_curve_is_linear_between_its_points_and_flat_outside(n, sd):
    assert at(DEFAULT.curve_sd, n) == pytest.approx(sd)


@pytest.mark.parametrize(
    ("rir", "sd"), [(0, 1.0), (2, 1.0), (2.5, 1.15), (3, 1.3), (4, 2.0), (5, 3.0), (9, 3.0)]
)
def test_reserve_is_called_worse_the_further_from_failure(rir, sd):
    # Halperin et al. 2022, Refalo et al. 2024, Hackett et al. 2017 (seen), rounded by us.
    assert at(DEFAULT.reserve_sd, rir) == pytest.approx(sd)
