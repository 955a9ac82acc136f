"""What a kit has instead when a band breaks, a bar is taken or a ceiling is low."""

from collections.abc import Callable
from typing import Any

import pytest
from tests.fixtures import fixture as load

from undercroft.domain.load_sheet import Alternative, SheetExercise

One = Callable[..., SheetExercise]

BANDS = {"part": "bands", "share_percent": 25}


def percent(of_maximum: float, **more: Any) -> dict[str, Any]:
    return {"basis": "percent", "percent": of_maximum, **more}


def wider(label: str) -> dict[str, Any]:
    """Another band beside the cellar's pair, measured as those are."""
    lengths = {1.25: 60, 1.5: 95, 1.75: 118, 2.0: 138}
    readings = [{"length_m": at, "force_n": force} for at, force in lengths.items()]
    sizes = {"width_mm": 28, "thickness_mm": 4.5, "rest_length_m": 1.05}
    return {"key": label, "label": label, **sizes, "readings": readings}


def without(done: SheetExercise, key: str) -> list[str]:
    """Names of the alternatives that do not ask for it."""
    return [one.name for one in done.alternatives if key not in used(one)]


def used(one: Alternative) -> set[str]:
    return {use.key for use in one.uses}


@pytest.fixture
def banded(one_exercise: One) -> Callable[..., SheetExercise]:
    def work(kit: Any = None) -> SheetExercise:
        wish = percent(70, point="lockout")
        sets = [{"reps": 3, "load": wish}, {"reps": 3, "load": wish}]
        return one_exercise("hex-bar-deadlift", sets, method="speed", kit=kit, rig=BANDS)

    return work


def test_bands_that_hang_are_told_each_by_its_key_for_the_session(banded: One) -> None:
    lasting = {use.key for use in banded().uses if use.lasting}
    assert lasting == {"thin-left", "thin-right"}


def test_without_its_bands_the_exercise_itself_comes_first_with_its_load(banded: One) -> None:
    done = banded()
    first = done.alternatives[0]
    assert (first.key, first.exercise) == ("hex-bar-deadlift.unrigged", "hex-bar-deadlift")
    planned, plain = done.sets[0], first.sets[0]
    assert planned.load is not None
    assert plain is not None
    assert first.loads[plain].kg > done.loads[planned.load].kg


def test_a_second_pair_takes_the_place_of_the_one_that_broke(banded: One) -> None:
    kit = load("kits", "forge-cellar")
    kit["bands"] += [wider("wide-left"), wider("wide-right")]
    done = banded(kit=kit)
    hanging = {use.key for use in done.uses if use.lasting}
    first = done.alternatives[0]
    assert first.key == "hex-bar-deadlift.other-bands"
    assert len(hanging) == len({use.key for use in first.uses if use.lasting}) == 2
    assert not hanging & used(first)
    assert first.rig


def test_help_that_broke_does_not_leave_the_heavier_exercise(one_exercise: One) -> None:
    helped = {"part": "bands", "share_percent": 20, "point": "start", "assists": True}
    sets = [{"reps": 5, "load": {"basis": "kg", "kg": 60}}]
    done = one_exercise("back-squat", sets, rig=helped)
    assert any(use.lasting for use in done.uses)
    assert "back-squat.unrigged" not in {one.key for one in done.alternatives}


def test_for_each_thing_that_fails_something_without_it_is_offered(one_exercise: One) -> None:
    done = one_exercise("back-squat", [{"reps": 5, "load": percent(75)}])
    for use in done.uses:
        assert len(without(done, use.key)) >= 2, use


def test_under_a_low_ceiling_a_press_over_head_gives_way(one_exercise: One) -> None:
    done = one_exercise("overhead-press", [{"reps": 5, "load": percent(75)}])
    assert "ceiling" in {use.key for use in done.uses}
    assert "Half-kneeling landmine press" in without(done, "ceiling")
    assert "Dumbbell overhead press" not in without(done, "ceiling")


def test_kilograms_of_one_exercise_are_none_of_another(one_exercise: One) -> None:
    fixed = {"basis": "kg", "kg": 100}
    done = one_exercise("front-squat", [{"reps": 5, "rir": 2, "load": fixed}])
    back = next(one for one in done.alternatives if one.exercise == "back-squat")
    assert back.sets == (None,)
    assert len(back.loads) > 10, "to choose from by feel"
    assert "leave 2 in reserve" in back.notes[0]


def test_a_share_is_one_of_the_own_maximum_with_loads_around_it(one_exercise: One) -> None:
    done = one_exercise("front-squat", [{"reps": 5, "load": percent(75, when_unknown="find")}])
    back = next(one for one in done.alternatives if one.exercise == "back-squat")
    (planned,) = back.sets
    assert planned is not None
    assert 0 < planned < len(back.loads) - 1
    assert back.ramp, "it is warmed up for like any other"


def test_work_with_a_wrap_on_is_swapped_for_nothing(one_exercise: One) -> None:
    sets = [{"reps": 30, "load": {"basis": "kg", "kg": 22}}]
    details = {"limb": "upper-arm", "restriction": "wrap"}
    done = one_exercise("barbell-curl", sets, method="occlusion", details=details)
    assert done.alternatives == ()
