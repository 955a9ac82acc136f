"""The nearest load and its fewest plates, against an integer program (`scipy.optimize.milp`)."""

from random import Random
from time import perf_counter

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, milp
from tests.domain.plates.kits import random_bar, random_kit

from undercroft.domain.kit import Bar, Plate
from undercroft.domain.loads import Fit, nearest
from undercroft.domain.plates import loadable

KITS = 2_000
Row = NDArray[np.float64]


class Program:
    """Variables: plates a side by sort, whether collars are on, and the miss in kg."""

    def __init__(self, bar: Bar, kit: tuple[Plate, ...], target: float, upper: float) -> None:
        self.bar = bar
        sorts = len(kit)
        masses = [plate.mass_kg for plate in kit]
        per_side = [plate.count // 2 for plate in kit]
        self.load = np.array([*(2 * mass for mass in masses), 2 * bar.collar_mass_kg, 0.0])
        self.miss = np.array([0.0] * (sorts + 1) + [1.0])
        self.plates = np.array([1.0] * sorts + [0.0, 0.0])
        depths = np.array([plate.thickness_m for plate in kit] + [0.0, 0.0])
        some = self.plates - np.array([0.0] * sorts + [1.0, 0.0])
        many = self.plates - np.array([0.0] * sorts + [float(sum(per_side)), 0.0])
        wish = target - bar.mass_kg
        rated = np.inf if bar.rated_load_kg is None else bar.rated_load_kg
        self.rules = [
            LinearConstraint(self.load - self.miss, -np.inf, wish),
            LinearConstraint(self.load + self.miss, wish, np.inf),
            LinearConstraint(self.load, -np.inf, min(upper - bar.mass_kg, rated) + 1e-7),
            LinearConstraint(depths, -np.inf, bar.sleeve_length_m + 1e-9),
            LinearConstraint(some, 0.0, np.inf),
            LinearConstraint(many, -np.inf, 0.0),
        ]
        self.bounds = Bounds(np.zeros(sorts + 2), np.array([*per_side, 1.0, np.inf]))
        self.whole = np.array([1] * (sorts + 1) + [0])

    def least(self, goal: Row, *more: LinearConstraint) -> Row:
        found = milp(
            goal,
            constraints=[*self.rules, *more],
            bounds=self.bounds,
            integrality=self.whole,
            options={"mip_rel_gap": 0.0},
        )
        assert found.success, found.message
        return np.rint(found.x[:-1]) @ np.column_stack([self.load[:-1], self.plates[:-1]])

    def optimum(self, target: float) -> tuple[float, float, int]:
        """Smallest miss, lightest load with that miss, fewest plates a side for that load."""
        nearest_kg = float(self.least(self.miss)[0]) + self.bar.mass_kg
        miss = abs(nearest_kg - target)
        near = LinearConstraint(self.miss, 0.0, miss + 1e-6)
        lightest = float(self.least(self.load, near)[0])
        same = LinearConstraint(self.load, lightest - 1e-6, lightest + 1e-6)
        return miss, lightest + self.bar.mass_kg, int(self.least(self.plates, same)[1])


@pytest.mark.slow
@pytest.mark.timeout(300)
def test_an_integer_program_finds_the_same_optimum_and_takes_a_hundred_times_longer() -> None:
    rng = Random(20)
    program_s = lookup_s = 0.0
    for case in range(KITS):
        bar, kit = random_bar(rng), random_kit(rng)
        table = loadable(bar, kit)
        target = _a_target(rng, [load.kg for load in table.loads])
        upper = rng.choice((np.inf, np.inf, bar.mass_kg + rng.uniform(0, target)))
        start = perf_counter()
        fit = nearest(table, target, None if np.isinf(upper) else upper)
        lookup_s += perf_counter() - start
        start = perf_counter()
        miss, kg, plates = Program(bar, kit, target, upper).optimum(target)
        program_s += perf_counter() - start
        where = f"case {case}: {target} kg, at most {upper}, on {bar} with {kit}"
        assert _told(fit) == (pytest.approx(miss, abs=2e-6), pytest.approx(kg, abs=2e-6), plates), (
            where
        )
    assert program_s / lookup_s > 100


def _told(fit: Fit) -> tuple[float, float, int]:
    return abs(fit.off_kg), fit.load.kg, len(fit.load.plates)


def _a_target(rng: Random, loads: list[float]) -> float:
    """Anywhere on the bar's range and beyond; every fourth time halfway between two loads."""
    if len(loads) > 1 and rng.random() < 0.25:
        at = rng.randrange(len(loads) - 1)
        return (loads[at] + loads[at + 1]) / 2
    return round(rng.uniform(0.8 * loads[0], 1.1 * loads[-1]), 2)
