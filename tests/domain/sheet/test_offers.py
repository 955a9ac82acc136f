"""Rigs that a kit can make for a share of an exercise's load."""

from typing import Any

import pytest
from tests.domain.sheet.conftest import order
from tests.fixtures import athlete_data, kit_data

from undercroft.documents.wish import RigShape
from undercroft.domain.errors import LoadError
from undercroft.domain.mechanics import About
from undercroft.domain.program.rig import Part, Rig, Route, ShareBase
from undercroft.domain.program.wish import Point
from undercroft.domain.sheet import Offers, Order, day_of_session, offers, work_out

QUARTER = Rig(Part.BANDS, 25.0)

BY_HAND = {
    "key": "shed",
    "name": "The shed",
    "bars": [{"key": "hex", "name": "Hex bar", "mass_kg": 20, "kind": "hex"}],
    "plates": [{"mass_kg": 10, "count": 12, "thickness_m": 0.03}],
    "anchors": [{"key": "ring", "name": "Floor rings", "height_m": 0}],
    "bands": [
        {
            "key": key,
            "label": key,
            "width_mm": 20,
            "thickness_mm": 4,
            "rest_length_m": 0.5,
            "readings": [
                {"length_m": 0.6, "force_n": 45},
                {"length_m": 0.7, "force_n": 75},
                {"length_m": 0.8, "force_n": 98.0665},
                {"length_m": 0.9, "force_n": 115},
            ],
        }
        for key in ("left", "right")
    ],
}
"""Each band pulls 10 kgf at 0.80 m."""

PULLER = {
    "key": "ebba",
    "name": "Ebba Rask",
    "ranges": [{"exercise": "hex-bar-deadlift", "start_height_m": 0.25, "range_m": 0.55}],
}
"""Stands up with the handles 0.80 m above the floor."""


def asked(exercise: str, load: Any, person: Any, kit: Any, **more: Any) -> Order:
    sets = [{"key": "s-1", "reps": 3, "load": load}]
    plan = {"key": "e", "exercise": exercise, "method": "speed", "sets": sets, **more}
    session = {"key": "s", "name": "One", "day": 1, "exercises": [plan]}
    week = {"key": "w", "name": "W", "sessions": [session]}
    return order({"key": "b", "name": "B", "weeks": [week]}, person, kit)


def found(of: Order, rig: Rig = QUARTER) -> Offers:
    return offers(day_of_session(of, "s"), of.block.weeks[0].sessions[0].exercises[0], rig)


def pull(percent: float = 85.0, **more: Any) -> Order:
    load = {"basis": "percent", "percent": percent, "point": "lockout"}
    kit = more.pop("kit", None) or kit_data()
    return asked("hex-bar-deadlift", load, athlete_data(), kit, **more)


def test_a_quarter_of_80_kg_by_hand() -> None:
    """25 % of 80 kg are 20 kg: two bands of 10 kgf each, straight up from the floor."""
    told = found(asked("hex-bar-deadlift", {"basis": "kg", "kg": 80}, PULLER, BY_HAND))
    best = told.offers[0]
    assert (told.load_kg, told.wanted_kg) == (80.0, 20.0)
    assert best.rig.route is Route.SINGLE
    assert best.lockout_kg == pytest.approx(20.0)
    assert best.share_percent == pytest.approx(25.0)
    assert best.start_kg == 0.0
    assert best.unmeasured == ()


@pytest.mark.parametrize("point", [Point.START, Point.MEAN, Point.LOCKOUT])
@pytest.mark.parametrize("base", list(ShareBase))
def test_share_times_its_base_is_what_the_rig_gives_at_the_point(
    point: Point, base: ShareBase
) -> None:
    told = found(pull(), Rig(Part.BANDS, 15.0, base, point))
    assert told.wanted_kg == pytest.approx(0.15 * told.base_kg)
    assert (told.base_kg == told.load_kg) == (base is ShareBase.LOAD)
    for one in told.offers:
        at = {
            Point.START: one.start_kg,
            Point.MEAN: one.mean_kg,
            Point.LOCKOUT: one.lockout_kg,
        }[point]
        assert one.choice.kg == pytest.approx(at)
        assert one.share_percent * told.base_kg / 100 == pytest.approx(at)
        near = abs(one.choice.off_kg) <= 0.05 * told.load_kg
        assert near != any(r.about is About.OFF_SHARE for r in one.choice.remarks)


@pytest.mark.parametrize("point", ["start", "lockout"])
def test_what_is_taken_is_what_the_load_sheet_hangs(point: str) -> None:
    """Every offer, not the best alone: also one that nobody would have chosen for this share."""
    rig = Rig(Part.BANDS, 25.0, point=Point(point))
    for one in found(pull(), rig).offers:
        (sheet,) = work_out(pull(rig=RigShape().dump(one.rig))).sheets
        (exercise,) = sheet.exercises
        (done,) = exercise.sets
        assert exercise.rig == (one.choice.words,)
        assert done.curve is not None
        assert done.load is not None
        plates = exercise.loads[done.load].kg
        assert done.curve.end_kg - plates == pytest.approx(one.lockout_kg, abs=0.01)
        assert done.curve.start_kg - plates == pytest.approx(one.start_kg, abs=0.01)


def test_a_band_from_above_takes_from_the_load() -> None:
    load = {"basis": "percent", "percent": 90, "point": "start"}
    squat = asked("back-squat", load, athlete_data(), kit_data())
    told = found(squat, Rig(Part.BANDS, 15.0, point=Point.START, assists=True))
    assert {one.rig.things[-1] for one in told.offers} == {"beam"}
    for one in told.offers:
        assert one.rig.assists
        assert one.start_kg < one.lockout_kg < 0
        assert one.share_percent == pytest.approx(-100 * one.start_kg / told.load_kg)


PULL_UP_PLACE = {
    **BY_HAND,
    "things": ["pull-up bar"],
    "anchors": [{"key": "bar", "name": "Pull-up bar", "height_m": 1.2, "sides": 1}],
}
IN_THE_LOOP = {
    **PULLER,
    "body_mass_kg": 60,
    "ranges": [{"exercise": "pull-up", "start_height_m": 0.4, "range_m": 0.3}],
}
"""The knee in the loop: 0.80 m below the bar when the arms are straight, 0.50 m at the top."""


def test_a_band_from_above_takes_from_the_body_in_a_pull_up() -> None:
    """Two bands of 10 kgf at 0.80 m, slack at 0.50 m: a third of 60 kg less at the start."""
    rig = {"part": "bands", "share_percent": 33.3, "point": "start", "assists": True}
    pull_up = asked("pull-up", {"basis": "body"}, IN_THE_LOOP, PULL_UP_PLACE, rig=rig)
    best = found(pull_up, Rig(Part.BANDS, 33.3, point=Point.START, assists=True)).offers[0]
    assert (best.start_kg, best.lockout_kg) == pytest.approx((-20.0, 0.0))
    assert best.choice.words.endswith("from Pull-up bar to the body")
    (sheet,) = work_out(asked("pull-up", {"basis": "body"}, IN_THE_LOOP, PULL_UP_PLACE,
                              rig=RigShape().dump(best.rig))).sheets  # fmt: skip
    curve = sheet.exercises[0].sets[0].curve
    assert curve is not None
    assert (curve.start_kg, curve.end_kg) == pytest.approx((40.0, 60.0))


def test_without_bands_the_body_is_no_load_to_choose() -> None:
    pull_up = asked("pull-up", {"basis": "body"}, IN_THE_LOOP, PULL_UP_PLACE)
    (sheet,) = work_out(pull_up).sheets
    assert sheet.exercises[0].sets[0].load is None


def test_chains_are_found_in_the_same_way() -> None:
    load = {"basis": "percent", "percent": 60}
    squat = asked("back-squat", load, athlete_data(), kit_data())
    best = found(squat, Rig(Part.CHAINS, 15.0)).offers[0]
    assert best.rig.things == ("yard-chain",)
    assert best.unmeasured == ("yard chain",)
    assert best.start_kg < best.lockout_kg


def test_bands_that_nobody_measured_are_named() -> None:
    kit = kit_data()
    for band in kit["bands"]:
        del band["readings"]
    for one in found(pull(kit=kit)).offers:
        assert set(one.unmeasured) == {"thin, marked L", "thin, marked R"}
        assert one.doubt_kg == pytest.approx(0.2 * one.lockout_kg)


def test_where_no_band_can_hang_the_loops_that_could_are_told() -> None:
    """From a beam at 2.60 m down to 0.22 m are 2.38 m: 0.95 m lying flat bear 2.5 times of it."""
    told = found(pull(), Rig(Part.BANDS, 15.0, assists=True, route=Route.SINGLE))
    assert told.offers == ()
    assert any("would be stretched to 2.38 m; 2.10 m are the most" in why for why in told.refused)
    assert told.would_do == ("on Ceiling beam, single: a loop that lies 0.95 to 1.89 m flat",)


def test_where_every_anchor_pulls_the_wrong_way_the_right_height_is_told() -> None:
    kit = kit_data()
    kit["anchors"] = [one for one in kit["anchors"] if one["key"] == "beam"]
    told = found(pull(kit=kit))
    assert told.offers == ()
    assert told.would_do == ("an anchor below 0.22 m, the lowest that the hands get",)


@pytest.mark.parametrize(
    ("exercise", "load", "rig", "kit", "words"),
    [
        ("plank", {"basis": "none"}, QUARTER, {}, "a percentage or kilograms"),
        ("deadlift", {"basis": "percent", "percent": 80}, QUARTER, {}, "a maximum of deadlift"),
        ("farmers-carry", {"basis": "kg", "kg": 40}, QUARTER, {}, "two tape readings"),
        ("deadlift", {"basis": "kg", "kg": 80}, QUARTER, {"bands": []}, "one at least, measured"),
        ("deadlift", {"basis": "kg", "kg": 80}, QUARTER, {"anchors": []}, "a peg, post or beam"),
        (
            "deadlift",
            {"basis": "kg", "kg": 80},
            Rig(Part.BANDS, 25.0, ShareBase.MAXIMUM),
            {},
            "a share of the day's load",
        ),
    ],
)
def test_what_cannot_be_looked_for_says_what_would_be_right(
    exercise: str, load: Any, rig: Rig, kit: Any, words: str
) -> None:
    with pytest.raises(LoadError) as refused:
        found(asked(exercise, load, athlete_data(), {**kit_data(), **kit}), rig)
    assert words in refused.value.right
