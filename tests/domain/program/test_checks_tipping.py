"""Bars that turn over on their supports while they are loaded. Statics, worked out by hand."""

from dataclasses import replace

import pytest
from tests.domain.program.checking import finds, found
from tests.domain.program.plans import CELLAR, RACK, exercise, kg, one_day, sets

from undercroft.domain.kit import Bar, BarKind, Kit, Plate, Support
from undercroft.domain.mechanics import Resting, Sides, loading
from undercroft.domain.program.checks.tipping import resting_margin
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Method, UnstableRule

BAR = Bar("bar", "Steel bar", 20)
ASH = Bar("ash", "Ash bar", 8, BarKind.OSCILLATING, sleeve_length_m=0.3)


def gym(*plates: Plate, bar: Bar = BAR, spacing_m: float = 1.1) -> Kit:
    support = Support("stands", "Stands", spacing_m, safeties=True)
    return Kit("gym", "A gym", (bar,), plates, supports=(support,), things=("bench",))


def squat(load: float):
    return one_day(exercise("back-squat", sets(1, 5, kg(load))))


def hung_press(load: float):
    rule = UnstableRule(hanging=True)
    work = sets(2, 10, kg(load))
    return one_day(exercise("oscillating-bar-bench-press", work, Method.UNSTABLE_BAR, details=rule))


class TestStop:
    def test_ten_kilograms_that_swing_on_a_light_bar_are_found(self):
        # The ash bar turns with 8 × 1.1 / (2 × 0.965 - 1.1) = 10.6 kg at the end of its sleeve.
        (one,) = found("bar-tips", hung_press(28), kit=gym(Plate(10, 2, 0.035), bar=ASH))
        assert one.severity is Severity.STOP
        assert one.what == (
            "on stands the bar is about to turn over: 1.06 times what hangs would do it"
        )

    def test_half_of_that_passes(self):
        kit = gym(Plate(5, 2, 0.025), bar=ASH)
        assert not finds("bar-tips", hung_press(18), kit=kit)
        assert not finds("bar-nearly-tips", hung_press(18), kit=kit)

    def test_ordinary_loads_on_an_ordinary_rack_pass(self):
        for load in (60, 100, 140):
            assert not finds("bar-tips", squat(load), kit=gym(Plate(20, 6, 0.035)))
            assert not finds("bar-nearly-tips", squat(load), kit=gym(Plate(20, 6, 0.035)))


class TestWarning:
    def test_a_25_kg_plate_that_rests_safely_turns_the_bar_while_it_is_drawn_off(self):
        # Worked example: at the sleeve's end 20 × 1.1 / (2 × 1.08 - 1.1) = 20.8 kg are the limit.
        (one,) = found("bar-nearly-tips", squat(70), kit=gym(Plate(25, 2, 0.04)))
        assert one.severity is Severity.WARN
        assert one.what == "on stands 0.83 times what hangs would turn the bar over"
        assert "hands on each plate until it rests" in one.right

    def test_the_safe_order_is_given(self):
        (one,) = found("bar-nearly-tips", squat(120), kit=gym(Plate(25, 4, 0.04)))
        sides = [move.split()[-1] for move in one.right.split(": ")[1].split(", ")]
        assert sorted(sides) == ["left", "left", "right", "right"]
        assert sides[0] != sides[1]

    def test_narrow_stands_leave_less(self):
        kit = gym(Plate(20, 2, 0.06), spacing_m=0.9)
        assert finds("bar-nearly-tips", squat(60), kit=kit)

    def test_the_tightest_support_of_the_gym_is_named(self):
        narrow = Support("narrow", "Narrow stands", 0.9, safeties=True)
        kit = replace(CELLAR, supports=(RACK, narrow))
        (one,) = found("bar-nearly-tips", squat(140), kit=kit)
        assert "narrow stands" in one.what

    def test_one_loading_is_told_once(self):
        twice = one_day(
            exercise("back-squat", sets(2, 5, kg(70)), key="a"),
            exercise("bench-press", sets(2, 5, kg(70)), key="b"),
        )
        assert len(found("bar-nearly-tips", twice, kit=gym(Plate(25, 2, 0.04)))) == 1

    def test_a_bar_on_the_floor_cannot_turn_over(self):
        plan = one_day(exercise("deadlift", sets(2, 5, kg(70))))
        assert not finds("bar-nearly-tips", plan, kit=gym(Plate(25, 2, 0.04)))


@pytest.mark.parametrize(
    ("bar", "plate_kg", "thickness_m", "limit_kg"),
    [
        (BAR, 20, 0.060, 22 / (2 * 0.715 - 1.1)),  # 66.7: a thick plate at 0.715 m
        (ASH, 20, 0.035, 8.8 / (2 * 0.7025 - 1.1)),  # 28.9: on the light bar
    ],
)
def test_one_plate_alone_is_what_leaves_least_where_everything_rests(
    bar, plate_kg, thickness_m, limit_kg
):
    stack = (Plate(plate_kg, 2, thickness_m),)
    resting = Resting(bar.mass_kg, 1.1)
    moves = loading(bar, resting, Sides(stack, stack)).moves
    found_margin = resting_margin(bar, resting, moves, stack, hanging=False)
    assert found_margin == pytest.approx(limit_kg / plate_kg, rel=1e-9)
