"""Bands, chains, a lever and a light bar on a load sheet."""

from collections.abc import Callable
from typing import Any

import pytest
from tests.fixtures import fixture as load

from undercroft.domain.load_sheet import SheetExercise, SheetOrder

One = Callable[..., SheetExercise]
BANDS = {"part": "bands", "share_percent": 25, "point": "lockout"}


def percent(value: float, **more: Any) -> dict[str, Any]:
    return {"basis": "percent", "percent": value, **more}


def banded_pull(one_exercise: One, point: str) -> SheetExercise:
    return one_exercise(
        "hex-bar-deadlift",
        [{"reps": 3, "load": percent(85, point=point)}],
        method="speed",
        rig=BANDS,
    )


def test_bands_make_a_pull_harder_towards_lockout(one_exercise: One) -> None:
    """Common practice, and the reason why they are hung at all."""
    curve = banded_pull(one_exercise, "lockout").sets[0].curve
    assert curve is not None
    assert curve.start_kg < curve.mean_kg < curve.end_kg
    assert list(curve.points_kg) == sorted(curve.points_kg)


def test_the_wish_at_lockout_is_met_by_plates_and_bands_together(one_exercise: One) -> None:
    done = banded_pull(one_exercise, "lockout")
    assert done.maximum is not None
    curve, off = done.sets[0].curve, done.sets[0].off_kg
    assert curve is not None
    assert off is not None
    assert curve.end_kg - off == pytest.approx(0.85 * done.maximum.kg, rel=0.005)


@pytest.mark.parametrize("point", ["bar", "start", "mean", "lockout"])
def test_the_point_that_is_meant_moves_the_plates(one_exercise: One, point: str) -> None:
    done = banded_pull(one_exercise, point)
    one = done.sets[0]
    assert one.load is not None
    assert one.curve is not None
    assert done.maximum is not None
    at = {
        "bar": done.loads[one.load].kg,
        "start": one.curve.start_kg,
        "mean": one.curve.mean_kg,
        "lockout": one.curve.end_kg,
    }
    assert at[point] - (one.off_kg or 0) == pytest.approx(0.85 * done.maximum.kg, rel=0.006)


def test_the_mean_is_work_over_range(one_exercise: One) -> None:
    """By Simpson's rule over the drawn points, within 0.1 %."""
    curve = banded_pull(one_exercise, "lockout").sets[0].curve
    assert curve is not None
    points = curve.points_kg
    odd, even = sum(points[1:-1:2]), sum(points[2:-1:2])
    simpson = (points[0] + 4 * odd + 2 * even + points[-1]) / (3 * (len(points) - 1))
    assert curve.mean_kg == pytest.approx(simpson, rel=1e-3)


def test_the_sheet_says_which_band_hangs_from_where(one_exercise: One) -> None:
    (line,) = banded_pull(one_exercise, "lockout").rig
    assert "thin, marked L" in line
    assert "Platform pegs" in line


def test_banded_sets_say_nothing_of_a_maximum(one_exercise: One) -> None:
    done = one_exercise("hex-bar-deadlift", [{"reps": 3, "load": percent(80)}], rig=BANDS)
    assert done.notches is None


def test_a_kit_without_chains_says_so_and_loads_the_bar_alone(one_exercise: One) -> None:
    done = one_exercise(
        "back-squat",
        [{"reps": 3, "load": percent(60)}],
        method="speed",
        kit=load("kits", "boathouse"),
        rig={"part": "chains", "share_percent": 15},
    )
    assert done.sets[0].load is not None
    assert any(note.startswith("The load shown is without chains") for note in done.notes)


def test_straight_chains_add_what_they_lift_off_the_floor(one_exercise: One) -> None:
    """13 mm chain to DIN 766 weighs 3.90 kg/m (a supplier's table, seen)."""
    done = one_exercise(
        "back-squat",
        [{"reps": 3, "load": percent(60)}],
        method="speed",
        rig={"part": "chains", "share_percent": 15},
    )
    curve = done.sets[0].curve
    assert curve is not None
    travel = 1.72 * 0.34
    assert curve.end_kg - curve.start_kg == pytest.approx(2 * 3.90 * travel, rel=0.02)


def test_a_press_on_the_landmine_gets_lighter_in_the_hand_as_it_rises(one_exercise: One) -> None:
    done = one_exercise(
        "landmine-press",
        [{"reps": 6, "load": {"basis": "kg", "kg": 18, "in_hand": True}}],
        method="one-sided",
        details={"first": "left", "knee_down": "same"},
    )
    curve = done.sets[0].curve
    assert curve is not None
    assert curve.start_kg == pytest.approx(18, abs=0.6)
    assert curve.end_kg < curve.start_kg


def light_bar(one_exercise: One) -> SheetExercise:
    return one_exercise(
        "oscillating-bar-bench-press",
        [{"reps": 10, "load": {"basis": "kg", "kg": 38}}],
        method="unstable-bar",
        details={"hanging": False},
    )


def test_a_light_bar_is_never_stripped_one_side_first(one_exercise: One) -> None:
    stripping = light_bar(one_exercise).stripping
    assert stripping is not None
    sides = [move.side for move in stripping.moves]
    assert len(set(sides[: len(sides) // 2 + 1])) == 2


def test_no_step_of_a_printed_order_passes_its_stated_margin(one_exercise: One) -> None:
    """Replayed by moments alone: both supports of the 8 kg bar, 1.10 m apart, keep a load."""
    done = light_bar(one_exercise)
    for order, stacks in (
        (done.loading, ([], [])),
        (done.stripping, _stacks(done, reverse=True)),
    ):
        assert order is not None
        assert order.margin > 1
        _replay(order, stacks)


def _stacks(done: SheetExercise, reverse: bool) -> tuple[list[float], list[float]]:
    index = done.sets[0].load
    assert index is not None
    side = list(done.loads[index].side)
    return (side[:], side[:]) if reverse else ([], [])


def _replay(order: SheetOrder, stacks: tuple[list[float], list[float]]) -> None:
    thickness = {2.5: 0.019, 10.0: 0.035, 5.0: 0.026, 1.25: 0.015}
    for move in order.moves:
        side = stacks[0 if move.side.value == "left" else 1]
        if move.on:
            side.append(move.kg)
        else:
            assert side.pop() == move.kg
        left, right = (_moment(stack, thickness) for stack in stacks)
        half, mass = 0.55, 8.0
        on_left = (mass * half + left[0] * (left[1] + half) - right[0] * (right[1] - half)) / 1.1
        on_right = mass + left[0] + right[0] - on_left
        assert min(on_left, on_right) > 0


def _moment(stack: list[float], thickness: dict[float, float]) -> tuple[float, float]:
    at, moment = 0.685, 0.0
    for kg in stack:
        moment += kg * (at + thickness[kg] / 2)
        at += thickness[kg]
    mass = sum(stack)
    return mass, moment / mass if mass else 0.0


def test_a_light_bar_gets_small_plates_where_one_large_one_would_turn_it(one_exercise: One) -> None:
    """28 kg: one 10 a side would come within 1.06 of turning the bar while it goes on."""
    sheet = one_exercise(
        "oscillating-bar-bench-press",
        [{"reps": 10, "load": {"basis": "kg", "kg": 28}}],
        method="unstable-bar",
        details={"hanging": False},
        warm_up=[],
    )
    assert sheet.sets[0].load is not None
    assert sheet.loads[sheet.sets[0].load].side == (5, 5)
    assert sheet.loading is not None
    assert sheet.loading.margin >= 2
