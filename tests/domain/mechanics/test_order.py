"""The order of loading and stripping, against brute force and against a replay of its own."""

from dataclasses import replace
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.domain.mechanics.replay import (
    both,
    every_order,
    least,
    moves_of,
    places,
    replayed,
)

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.mechanics.order import (
    Move,
    Order,
    Sides,
    best_order,
    loading,
    smallest_margin,
    stripping,
)
from undercroft.domain.mechanics.tipping import Resting
from undercroft.domain.program.finding import Severity
from undercroft.domain.program.methods import Side

STEEL = Bar("steel", "steel bar", 20.0)
LIGHT = Bar("light", "light oscillating bar", 8.0, sleeve_length_m=0.30)
ON_STEEL, ON_LIGHT = Resting(20.0, 1.10), Resting(8.0, 1.10)
P20, P15, P10, P5 = (
    Plate(kg, 4, thick) for kg, thick in ((20, 0.06), (15, 0.045), (10, 0.035), (5, 0.026))
)


def check(bar: Bar, resting: Resting, start: Sides, goal: Sides, hanging: bool) -> Order:
    """The printed order carries out what it says, holds its margin, and none is better."""
    order = best_order(bar, resting, start, goal, hanging)
    first, last = both(bar, start), both(bar, goal)
    printed = moves_of(bar, first, last, order)
    reached, margins = replayed(bar, resting.spacing_m, first, printed, hanging)
    assert reached == last
    assert margins == pytest.approx([move.margin for move in order.moves])
    stands = least(
        bar, resting.spacing_m,
        places(bar, list(first.left), hanging), places(bar, list(first.right), hanging),
    )  # fmt: skip
    assert order.margin == pytest.approx(min([stands, *margins]))
    others = (
        replayed(bar, resting.spacing_m, first, other, hanging)[1]
        for other in every_order(first, last)
    )
    best = max(sorted(round(margin, 9) for margin in one) for one in others)
    assert sorted(margins) == pytest.approx(best)
    return order


stacks = st.lists(st.sampled_from((P20, P15, P10, P5)), max_size=3).map(
    lambda chosen: tuple(sorted(chosen, key=lambda one: -one.mass_kg))
)
bars = st.sampled_from((STEEL, LIGHT, replace(STEEL, collar_mass_kg=2.5)))


@settings(max_examples=40, deadline=None)
@given(bars, st.floats(0.9, 1.25), stacks, stacks, st.booleans())
def test_loading_by_brute_force_and_by_replay(
    bar: Bar, spacing: float, left: tuple[Plate, ...], right: tuple[Plate, ...], hanging: bool
) -> None:
    check(bar, Resting(bar.mass_kg, spacing), Sides(), Sides(left, right), hanging)


@settings(max_examples=30, deadline=None)
@given(bars, stacks, stacks, stacks, stacks)
def test_from_one_loading_to_another_by_brute_force_and_by_replay(
    bar: Bar,
    left: tuple[Plate, ...],
    right: tuple[Plate, ...],
    new_left: tuple[Plate, ...],
    new_right: tuple[Plate, ...],
) -> None:
    start, goal = Sides(left, right), Sides(new_left, new_right)
    check(bar, Resting(bar.mass_kg, 1.10), start, goal, hanging=False)


@settings(max_examples=150, deadline=None)
@given(bars, stacks, stacks, st.booleans(), st.floats(0, 0.05))
def test_the_smallest_margin_alone_is_that_of_the_best_order(
    bar: Bar, start: tuple[Plate, ...], goal: tuple[Plate, ...], hanging: bool, shift: float
) -> None:
    resting = Resting(bar.mass_kg, 1.10, shift)
    order = best_order(bar, resting, Sides(start, start), Sides(goal, goal), hanging)
    alone = smallest_margin(bar, resting, start, goal, hanging)
    assert alone == pytest.approx(order.margin)


@settings(max_examples=30)
@given(bars, stacks, stacks)
def test_stripping_is_loading_backwards(
    bar: Bar, left: tuple[Plate, ...], right: tuple[Plate, ...]
) -> None:
    resting, sides = Resting(bar.mass_kg, 1.10), Sides(left, right)
    on, off = loading(bar, resting, sides), stripping(bar, resting, sides)
    assert off.margin == pytest.approx(on.margin)


@settings(max_examples=30)
@given(bars, stacks, stacks)
def test_left_and_right_are_alike(
    bar: Bar, left: tuple[Plate, ...], right: tuple[Plate, ...]
) -> None:
    resting = Resting(bar.mass_kg, 1.10)
    one = loading(bar, resting, Sides(left, right))
    other = loading(bar, resting, Sides(right, left))
    assert one.margin == pytest.approx(other.margin)
    assert sorted(m.margin for m in one.moves) == pytest.approx(
        sorted(m.margin for m in other.moves)
    )


@settings(max_examples=30)
@given(stacks, st.floats(0.9, 1.2), st.floats(0.001, 0.1))
def test_wider_supports_and_heavier_bars_never_take_margin_away(
    stack: tuple[Plate, ...], spacing: float, wider: float
) -> None:
    sides = Sides(stack, stack)
    here = loading(STEEL, Resting(20.0, spacing), sides)
    assert loading(STEEL, Resting(20.0, spacing + wider), sides).margin >= here.margin - 1e-9
    assert loading(STEEL, Resting(22.0, spacing), sides).margin >= here.margin - 1e-9


def test_a_25_kg_plate_that_sat_safely_flips_the_bar_while_it_is_drawn_off() -> None:
    """It tips at 20.8 kg at the sleeve's end and at 66.7 seated (worked out in the tables)."""
    p25 = Plate(25.0, 2, 0.06)
    order = stripping(STEEL, ON_STEEL, Sides((p25,), (p25,)))
    assert order.margin == pytest.approx(20.75 / 25, abs=0.001)
    assert order.seated == pytest.approx(66.7 / 25, abs=0.01)
    assert order.severity is Severity.STOP


def test_when_even_the_best_order_is_too_near_it_says_so_with_the_numbers() -> None:
    order = loading(STEEL, ON_STEEL, Sides((P20, P20), (P20, P20)))
    assert order.severity is Severity.STOP
    assert order.advice == (
        "Load and strip on the floor, or with one person at each end: the bar turns over with"
        " 20.8 kg on the left and 20 kg come to hang there, a margin of 1.04."
    )


def test_between_1_33_and_2_the_order_is_to_be_kept() -> None:
    order = loading(STEEL, ON_STEEL, Sides((P15,), (P15,)))
    assert order.severity is Severity.WARN
    assert order.margin == pytest.approx(20.75 / 15, abs=0.001)
    assert order.advice.startswith("Keep to this order: the bar turns over with 20.8 kg on the")


def test_from_2_up_nothing_is_said() -> None:
    order = loading(STEEL, ON_STEEL, Sides((P10, P5), (P10, P5)))
    assert order.margin >= 2
    assert (order.severity, order.advice) == (None, "")


def test_one_side_first_is_worse_than_turn_by_turn() -> None:
    """A light bar with two 5 kg plates a side: 2.1 turn by turn; one side first it comes to 4.4
    over 5 × (0.698 - 0.55) + 5 × (0.965 - 0.55)."""
    order = loading(LIGHT, ON_LIGHT, Sides((P5, P5), (P5, P5)))
    one_side = [(side, P5, True) for side in (Side.LEFT, Side.LEFT, Side.RIGHT, Side.RIGHT)]
    _, margins = replayed(LIGHT, 1.10, Sides(), one_side, hanging=False)
    assert min(margins) == pytest.approx(4.4 / (5 * 0.148 + 5 * 0.415))
    assert order.margin > 2.1


def test_of_orders_alike_the_one_that_walks_round_the_bar_least() -> None:
    sides = [move.side for move in loading(STEEL, ON_STEEL, Sides((P10,) * 3, (P10,) * 3)).moves]
    L, R = Side.LEFT, Side.RIGHT
    assert sides == [L, R, R, L, L, R]


def test_collars_go_on_last_and_come_off_first() -> None:
    bar = replace(STEEL, collar_mass_kg=2.5)
    order = loading(bar, ON_STEEL, Sides((P10,), (P10,)))
    assert [move.label for move in order.moves] == ["", "", "collar", "collar"]
    off = stripping(bar, ON_STEEL, Sides((P10,), (P10,)))
    assert [move.label for move in off.moves] == ["collar", "collar", "", ""]


def test_what_stays_on_is_not_moved() -> None:
    order = best_order(STEEL, ON_STEEL, Sides((P20, P5), (P20, P5)), Sides((P20, P10), (P20, P10)))
    assert sorted((move.kg, move.on) for move in order.moves) == [
        (5, False), (5, False), (10, True), (10, True),
    ]  # fmt: skip


def test_hanging_plates_leave_less_margin_than_seated_ones() -> None:
    goal = Sides((P5, P5), (P5, P5))
    swinging, seated = (loading(LIGHT, ON_LIGHT, goal, hanging) for hanging in (True, False))
    assert swinging.seated < seated.seated
    assert swinging.margin <= seated.margin


def test_a_bare_bar_needs_no_order() -> None:
    assert loading(STEEL, ON_STEEL, Sides()) == Order((), inf, inf)


def test_a_move_says_side_plate_and_margin() -> None:
    first = loading(STEEL, ON_STEEL, Sides((P10,), (P10,))).moves[0]
    assert first == Move(Side.LEFT, 10, True, pytest.approx(2.08, abs=0.005), first.seated)
    assert first.seated > first.margin
