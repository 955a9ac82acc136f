"""Plates for a bar that turns over easily: the steadiest plan first, against listing every plan."""

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise, permutations, product
from random import Random

import pytest
from tests.domain.plates.kits import plates

from undercroft.domain.handling import HandlingPlan, Stack, handlings_between, plan
from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import Aim, nearest
from undercroft.domain.mechanics import Resting, Sides, best_order
from undercroft.domain.plates import PlateTable, loadable
from undercroft.domain.steady import stacks_of, steady_plan

WARN = 2.0
LIGHT = Bar("ash", "Ash oscillating bar", 8.0, sleeve_length_m=0.30)
"""A light bar of 8 kg (common practice); it turns over under one 20 kg plate on its way."""

Value = tuple[float, int, int, int]
"""Minus the smallest margin as far as it matters, handlings, grams missed, plates in all sets."""


@cache
def on_the_rack(bar: Bar, start: Stack, goal: Stack) -> float:
    both = Sides(start, start), Sides(goal, goal)
    return best_order(bar, Resting(bar.mass_kg, 1.10), *both).margin


def steadied(
    bar: Bar, table: PlateTable, wishes: Sequence[float], tolerance: float = 0.0
) -> HandlingPlan:
    aims = [Aim(kg) for kg in wishes]
    return steady_plan(table, aims, tolerance, lambda a, b: on_the_rack(bar, a, b), WARN)


def sides(found: HandlingPlan) -> list[tuple[float, ...]]:
    return [step.fit.load.side for step in found.steps]


def test_small_plates_go_on_a_light_bar_where_a_large_one_would_turn_it() -> None:
    table = loadable(LIGHT, plates({20: 1, 10: 1, 5: 2}))
    assert sides(plan(table, [Aim(48)])) == [(20,)]
    assert on_the_rack(LIGHT, (), table.sorts[:1]) < 1, "it would turn over"
    found = steadied(LIGHT, table, [48])
    assert sides(found) == [(5, 5, 10)]
    assert found.handlings == 3


def test_an_ordinary_bar_is_loaded_with_the_fewest_handlings() -> None:
    steel = Bar("steel", "Steel bar", 20.0)
    table = loadable(steel, plates({20: 1, 10: 2, 5: 2}))
    wishes = [40.0, 50.0, 60.0]
    assert steadied(steel, table, wishes) == plan(table, [Aim(kg) for kg in wishes])


def test_where_a_kit_leaves_no_choice_the_plan_stands() -> None:
    table = loadable(LIGHT, plates({20: 1}))
    assert sides(steadied(LIGHT, table, [48])) == [(20,)]


def test_nothing_is_planned_where_nothing_is_wished() -> None:
    assert steadied(LIGHT, loadable(LIGHT, plates({5: 1})), []).steps == ()


@pytest.mark.parametrize("case", range(200))
def test_the_plan_is_the_steadiest_and_then_the_cheapest_of_all(case: int) -> None:
    rng = Random(case)
    kit = tuple(
        Plate(kg, 2 * rng.randint(1, 2), 0.02)
        for kg in rng.sample((20.0, 10.0, 5.0, 2.5, 1.25), rng.randint(1, 3))
    )
    bar = Bar("light", "Light bar", rng.choice((6.0, 8.0, 12.0, 20.0)), sleeve_length_m=0.09)
    table = loadable(bar, kit)
    wishes = [rng.choice(table.loads).kg + rng.uniform(-1, 1) for _ in range(rng.randint(1, 3))]
    tolerance = rng.choice((0.0, 0.0, 0.1, 0.2))
    found = steadied(bar, table, wishes, tolerance)
    best = min(value(bar, way, wishes, tolerance) for way in every_plan(table, wishes, tolerance))
    assert value(bar, stacks_of(found), wishes, tolerance) == best
    assert found.handlings == best[1]


def value(bar: Bar, way: Sequence[Stack], wishes: Sequence[float], tolerance: float) -> Value:
    margin = min(on_the_rack(bar, a, b) for a, b in pairwise([(), *way, ()]))
    handlings = sum(handlings_between(a, b) for a, b in pairwise([(), *way]))
    misses = zip(way, wishes, strict=True)
    grams = sum(int(abs(load_of(bar, one) - kg) * 1000 + 1e-6) for one, kg in misses)
    least = round(min(margin, WARN), 9)
    return -least, handlings, grams if tolerance else 0, sum(map(len, way))


def every_plan(
    table: PlateTable, wishes: Sequence[float], tolerance: float
) -> Iterator[tuple[Stack, ...]]:
    orders = list(all_orders(table))
    own = table.sleeves.own_kg
    yield from product(
        *(
            [
                order
                for order in orders
                for kg in [own + 2 * sum(plate.mass_kg for plate in order)]
                if kg == nearest(table, wish).load.kg or abs(kg - wish) <= tolerance * wish
            ]
            for wish in wishes
        )
    )


def all_orders(table: PlateTable) -> Iterator[Stack]:
    for counts in product(*(range(sort.count + 1) for sort in table.sorts)):
        stack = [sort for sort, n in zip(table.sorts, counts, strict=True) for _ in range(n)]
        if len(stack) * 0.02 <= table.sleeves.length_m + 1e-9:
            yield from set(permutations(stack))


def load_of(bar: Bar, stack: Stack) -> float:
    return bar.mass_kg + 2 * sum(plate.mass_kg for plate in stack)
