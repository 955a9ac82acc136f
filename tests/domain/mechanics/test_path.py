"""Where the hands start and how far they go."""

from datetime import date

import numpy as np
import pytest

from undercroft.documents.catalogue import catalogue
from undercroft.domain.athlete import Athlete, Range
from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics.path import Path, path_for

DEADLIFT = catalogue()["deadlift"]


def test_tape_readings_of_the_athlete_come_first() -> None:
    taped = Athlete("a", "A", stature_m=1.8, ranges=(Range("deadlift", 0.22, 0.55),))
    assert path_for(taped, DEADLIFT) == Path(0.22, 0.55, rises=True, measured=True)


def test_without_a_tape_stature_stands_in_and_the_path_says_so() -> None:
    path = path_for(Athlete("a", "A", stature_m=1.8), DEADLIFT)
    assert not path.measured
    assert path.range_m == pytest.approx(0.28 * 1.8)


@pytest.mark.parametrize(
    ("stature", "shoulder", "upper_arm", "forearm_and_hand", "grip", "way"),
    [(1.759, 1.444, 0.361, 0.483, 0.10, 0.495), (1.618, 1.314, 0.332, 0.428, 0.09, 0.439)],
)
def test_the_share_of_floor_pulls_is_that_of_the_median_body(
    stature: float,
    shoulder: float,
    upper_arm: float,
    forearm_and_hand: float,
    grip: float,
    way: float,
) -> None:
    """Body sizes of the 50th percentile, men and women (a university's sheet, seen), with a grip
    10 or 9 cm from the fingertips, 2 cm of shoe, a bar 22.5 cm off the floor: 0.495 m, 28.1 % of
    stature, and 0.439 m, 27.1 %."""
    lockout = shoulder - upper_arm - forearm_and_hand + grip + 0.02
    assert lockout - 0.225 == pytest.approx(way, abs=0.002)
    assert DEADLIFT.range_share == pytest.approx(way / stature, abs=0.01)


def test_a_pulldown_goes_down() -> None:
    path = path_for(Athlete("a", "A", stature_m=1.75), catalogue()["pulldown"])
    assert path.start_m == pytest.approx(2.1)
    assert path.end_m == pytest.approx(2.1 - 0.33 * 1.75)
    assert path.height_m(np.array([0.0, 1.0])).tolist() == [path.start_m, path.end_m]


def test_the_exercise_says_whether_its_hands_sink() -> None:
    """A pushdown begins below the head and sinks all the same."""
    lifts = catalogue()
    of = {key: path_for(Athlete("a", "A", stature_m=1.75), lifts[key]) for key in
          ("triceps-pushdown", "overhead-press")}  # fmt: skip
    assert [path.rises for path in of.values()] == [False, True]


@pytest.mark.parametrize("rises", [True, False])
def test_the_place_of_a_height_is_the_inverse_of_the_height_of_a_place(rises: bool) -> None:
    path = Path(1.2, 0.6, rises)
    for s in (0.0, 0.25, 1.0):
        assert path.s_at(float(path.height_m(np.array(s)))) == pytest.approx(s)


def test_a_lift_whose_range_nobody_knows_is_refused() -> None:
    plank = catalogue()["plank"]
    with pytest.raises(LoadError, match="range of plank: is unknown; should be two tape readings"):
        path_for(Athlete("a", "A", stature_m=1.8), plank)
    with pytest.raises(LoadError, match=r"range of deadlift: is unknown; .* or a stature"):
        path_for(Athlete("a", "A", born=date(1990, 1, 1)), DEADLIFT)


@pytest.mark.parametrize(
    ("start", "way", "rises", "message"),
    [
        (-0.1, 0.5, True, "height of the hands at the start in m: is -0.1"),
        (0.2, 0.0, True, "range of the lift in m: is 0.0"),
        (0.2, float("nan"), True, "range of the lift in m: is nan"),
        (0.5, 0.6, False, r"range of the lift in m: is 0\.6; should be 0\.5 at most"),
    ],
)
def test_a_path_that_cannot_be_is_refused(
    start: float, way: float, rises: bool, message: str
) -> None:
    with pytest.raises(LoadError, match=message):
        Path(start, way, rises)
