"""Plates over the sets of an exercise: fewest handlings, against listing every order."""

from collections.abc import Iterable, Sequence
from itertools import pairwise, permutations, product
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.domain.plates.kits import CELLAR, CELLAR_BAR, bars, kits, plates

from undercroft.domain.errors import LoadError
from undercroft.domain.handling import HandlingPlan, handlings_between, plan
from undercroft.domain.implements import fixed_dumbbells
from undercroft.domain.kit import Bar, Dumbbell, Plate
from undercroft.domain.loads import Aim, nearest
from undercroft.domain.plates import PlateTable, loadable

Order = tuple[float, ...]
Cost = tuple[int, int, int]


def aims(*kg: float) -> list[Aim]:
    return [Aim(mass) for mass in kg]


def sides(found: HandlingPlan) -> list[Order]:
    return [step.fit.load.side for step in found.steps]


def test_a_ramp_leaves_the_inner_plates_where_they_are() -> None:
    found = plan(loadable(CELLAR_BAR, CELLAR), aims(60, 100, 130))
    assert sides(found) == [(20,), (20, 20), (20, 20, 15)]
    assert (found.handlings, found.proven) == (3, True)


def test_a_back_off_takes_off_only_what_is_outermost() -> None:
    found = plan(loadable(CELLAR_BAR, CELLAR), aims(100, 60))
    assert sides(found) == [(20, 20), (20,)]
    assert [p.mass_kg for p in found.steps[1].take_off] == [20]
    assert found.steps[1].put_on == ()


def test_a_small_plate_that_stays_for_all_sets_goes_on_first() -> None:
    """Ten kilograms a side on and off again around a 2.5 that every set needs."""
    found = plan(loadable(CELLAR_BAR, plates({10: 3, 2.5: 1})), aims(45, 65, 45))
    assert sides(found) == [(10, 2.5), (10, 2.5, 10), (10, 2.5)]
    assert found.handlings == 4


def test_one_plate_more_is_hung_where_it_saves_handlings() -> None:
    """20 then 25 a side: leaving the 20 on for a 5 is one handling, changing it for the 25 two."""
    found = plan(loadable(CELLAR_BAR, plates({25: 1, 20: 1, 5: 1})), aims(60, 70))
    assert sides(found) == [(20,), (20, 5)]


def test_without_tolerance_every_set_has_its_nearest_load() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    wishes = [56.0, 77.0, 98.0, 112.0, 126.0, 140.0, 144.2, 133.0, 126.0]
    found = plan(table, aims(*wishes))
    assert [s.fit.load.kg for s in found.steps] == [nearest(table, w).load.kg for w in wishes]
    assert [s.fit.off_kg for s in found.steps] == [nearest(table, w).off_kg for w in wishes]


def test_tolerance_gives_up_a_little_of_the_load_for_a_handling() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    strict, loose = plan(table, aims(60, 101)), plan(table, aims(60, 101), tolerance=0.02)
    assert (sides(strict)[1], strict.handlings) == ((20, 20, 0.5), 3)
    assert (sides(loose)[1], loose.handlings) == ((20, 20), 2)
    assert loose.steps[1].fit.off_kg == -1


def test_tolerance_never_passes_the_upper_bound() -> None:
    table = loadable(CELLAR_BAR, plates({20: 2, 1.25: 1}))
    assert sides(plan(table, [Aim(99)], tolerance=0.03)) == [(20, 20)]
    assert sides(plan(table, [Aim(99, upper_kg=99.9)], tolerance=0.03)) == [(20, 1.25)]


def test_stripping_at_the_end_counts_when_asked_for() -> None:
    table = loadable(CELLAR_BAR, CELLAR)
    assert plan(table, aims(60, 100), strip=True).handlings == 4


def test_an_exercise_without_sets_needs_no_handling() -> None:
    assert plan(loadable(CELLAR_BAR, CELLAR), []) == HandlingPlan((), 0, True)


def test_fixed_dumbbells_have_nothing_to_handle() -> None:
    table = fixed_dumbbells([Dumbbell(12.0, 2), Dumbbell(16.0, 2)], pair=True)
    found = plan(table, aims(12, 15))
    assert [s.fit.load.kg for s in found.steps] == [12, 16]
    assert found.handlings == 0


@pytest.mark.parametrize("tolerance", [-0.01, 1.0, float("nan")])
def test_a_tolerance_that_is_no_share_is_refused(tolerance: float) -> None:
    with pytest.raises(LoadError, match=r"tolerance: is .*; should be a share from 0 up to 1"):
        plan(loadable(CELLAR_BAR, CELLAR), aims(60), tolerance)


@pytest.mark.parametrize("case", range(300))
def test_the_plan_is_as_cheap_as_the_best_of_all_orders_of_all_stacks(case: int) -> None:
    rng = Random(case)
    kit = tuple(
        Plate(rng.choice((20.0, 15.0, 10.0, 5.0, 2.5)), 2 * rng.randint(1, 2), 0.02)
        for _ in range(rng.randint(1, 4))
    )
    table = loadable(Bar("bar", "Bar", 20.0, sleeve_length_m=rng.choice((0.10, 0.06))), kit)
    wishes = [rng.choice(table.loads).kg + rng.uniform(-1, 1) for _ in range(rng.randint(1, 6))]
    tolerance = rng.choice((0.0, 0.0, 0.05, 0.15))
    strip = rng.random() < 0.3
    found = plan(table, aims(*wishes), tolerance, strip)
    assert found.proven
    assert cost_of(found, wishes, tolerance, strip) == cheapest(table, wishes, tolerance, strip)


def cost_of(found: HandlingPlan, wishes: Sequence[float], tolerance: float, strip: bool) -> Cost:
    """The plan's handlings counted afresh from its stacks, its misses in grams, its plates."""
    stacks = [(), *sides(found), *([()] if strip else [])]
    handlings = sum(between(a, b) for a, b in pairwise(stacks))
    assert handlings == found.handlings
    loads = [step.fit.load.kg for step in found.steps]
    return handlings, grams_missed(loads, wishes, tolerance), sum(map(len, sides(found)))


def cheapest(table: PlateTable, wishes: Sequence[float], tolerance: float, strip: bool) -> Cost:
    """Shortest path through every order of every multiset that fits, for every allowed load."""
    orders = list(all_orders(table))
    ways: dict[Order, Cost] = {(): (0, 0, 0)}
    for wish in wishes:
        allowed = [o for o in orders if is_allowed(table, load_of(o), wish, tolerance)]
        ways = {
            order: min(
                (
                    cost[0] + between(before, order),
                    cost[1] + grams_missed([load_of(order)], [wish], tolerance),
                    cost[2] + len(order),
                )
                for before, cost in ways.items()
            )
            for order in allowed
        }
    return min((c[0] + (len(o) if strip else 0), c[1], c[2]) for o, c in ways.items())


def all_orders(table: PlateTable) -> Iterable[Order]:
    for counts in product(*(range(sort.count + 1) for sort in table.sorts)):
        stack = [s.mass_kg for s, n in zip(table.sorts, counts, strict=True) for _ in range(n)]
        if len(stack) * 0.02 <= table.sleeves.length_m + 1e-9:
            yield from set(permutations(stack))


def load_of(order: Order) -> float:
    return 20.0 + 2 * sum(order)


def is_allowed(table: PlateTable, kg: float, wish: float, tolerance: float) -> bool:
    return kg == nearest(table, wish).load.kg or abs(kg - wish) <= tolerance * wish


def grams_missed(loads: Sequence[float], wishes: Sequence[float], tolerance: float) -> int:
    """Misses count only where loads may be chosen."""
    if not tolerance:
        return 0
    return sum(int(abs(kg - w) * 1000 + 1e-6) for kg, w in zip(loads, wishes, strict=True))


def between(a: Order, b: Order) -> int:
    shared = next((n for n, (x, y) in enumerate(zip(a, b, strict=False)) if x != y), None)
    return len(a) + len(b) - 2 * (min(len(a), len(b)) if shared is None else shared)


@given(bars, kits, st.lists(st.integers(20, 160), min_size=1, max_size=6))
@settings(max_examples=60, deadline=None)
def test_following_the_steps_builds_the_stacks(
    bar: Bar, kit: tuple[Plate, ...], wishes: list[int]
) -> None:
    sleeve: list[Plate] = []
    for step in plan(loadable(bar, kit), aims(*wishes)).steps:
        for plate in step.take_off:
            assert sleeve.pop() == plate
        sleeve.extend(step.put_on)
        assert tuple(sleeve) == step.fit.load.plates


@given(bars, kits, st.lists(st.integers(20, 160), min_size=1, max_size=6))
@settings(max_examples=60, deadline=None)
def test_no_plan_costs_more_than_each_sets_own_plates_heaviest_first(
    bar: Bar, kit: tuple[Plate, ...], wishes: list[int]
) -> None:
    table = loadable(bar, kit)
    own = [(), *(nearest(table, wish).load.plates for wish in wishes)]
    found = plan(table, aims(*wishes))
    assert found.handlings <= sum(handlings_between(a, b) for a, b in pairwise(own))


def test_a_gym_with_more_stacks_than_can_be_weighed_still_gets_exact_loads() -> None:
    """Twelve sorts of eight: the plan is good, not proven the best, and says so."""
    kit = tuple(Plate(0.5 + 1.25 * n, 8, 0.012) for n in range(12))
    table = loadable(CELLAR_BAR, kit)
    wishes = [61.3, 97.1, 141.9, 183.4, 201.7]
    found = plan(table, aims(*wishes))
    assert [s.fit.load.kg for s in found.steps] == [nearest(table, w).load.kg for w in wishes]
    own = [(), *(nearest(table, wish).load.plates for wish in wishes)]
    assert found.handlings <= sum(handlings_between(a, b) for a, b in pairwise(own))
    assert not found.proven


def test_in_such_a_gym_a_plan_of_few_handlings_is_proven_all_the_same() -> None:
    """A stack too large for the list would by itself cost more handlings than the whole plan."""
    kit = tuple(Plate(0.5 + 1.25 * n, 8, 0.012) for n in range(12))
    found = plan(loadable(CELLAR_BAR, kit), aims(41, 62))
    assert (found.handlings, found.proven) == (2, True)


def test_stacks_of_a_dozen_different_plates_are_planned_too() -> None:
    """So many that not even what lies beneath the heaviest stack alone can be listed."""
    kit = tuple(Plate(0.5 + 2.0**-n, 2, 0.005) for n in range(14))
    table = loadable(Bar("bar", "Bar", 20.0), kit)
    wishes = [table.loads[-1].kg, 30.0, table.loads[-1].kg - 4]
    found = plan(table, aims(*wishes))
    assert [s.fit.load.kg for s in found.steps] == [nearest(table, w).load.kg for w in wishes]
    assert not found.proven
