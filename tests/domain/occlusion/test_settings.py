"""The settings table: each threshold with its mark and source, and the published ones as seen."""

from dataclasses import fields

import pytest

from undercroft.domain.occlusion import BASIS, LIMITS, Mark, OcclusionSettings


def test_every_threshold_says_why_and_how_well_it_is_founded():
    assert set(BASIS) == {one.name for one in fields(OcclusionSettings)}
    assert all(len(one.source) > 15 for one in BASIS.values())
    assert all(isinstance(one.mark, Mark) for one in BASIS.values())


@pytest.mark.parametrize(
    ("name", "value", "mark"),
    [
        ("most_load_percent", 40, Mark.P_FROM_MEMORY),
        ("least_load_percent", 20, Mark.P_FROM_MEMORY),
        ("most_pressure_percent", 80, Mark.P_FROM_MEMORY),
        ("wear_warn_s", 600, Mark.P_FROM_MEMORY),
        ("wear_stop_s", 900, Mark.COMMON_PRACTICE),
        ("break_s", 180, Mark.COMMON_PRACTICE),
        ("days_a_week", 3, Mark.P_FROM_MEMORY),
        ("gap_stop_h", 36, Mark.SEEN),
        ("gap_warn_h", 48, Mark.OWN_CHOICE),
        ("most_estimated_percent", 50, Mark.OWN_CHOICE),
        ("equation_error_mmhg", 15.289, Mark.SEEN),
        ("screening_months", 6, Mark.OWN_CHOICE),
        ("after_check_h", (24, 48, 72), Mark.SECOND_HAND),
    ],
)
def test_thresholds_keep_the_mark_of_their_source(name, value, mark):
    assert getattr(LIMITS, name) == value
    assert BASIS[name].mark is mark
