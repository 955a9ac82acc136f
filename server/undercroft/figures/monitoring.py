"""Session load, weighted load, tonnage, and how large a change must be."""

from datetime import date
from functools import partial
from statistics import mean, pstdev

from undercroft.domain.program.monitoring import DoneSet, Tonnage, tonnage, week_load, weighted
from undercroft.domain.program.monitoring.reliability import (
    error_from_cv,
    least_change,
    typical_error,
    worthwhile_change,
)
from undercroft.domain.program.monitoring.session_load import WeekLoad, monotony_of
from undercroft.domain.program.monitoring.smoothed import rolling_ratio, weight
from undercroft.figures.row import Mark, Row

FOSTER = "Foster 1998, formula"
PANDAS = "pandas ewm(span, adjust=False)"
DAYS = (420.0, 0.0, 540.0, 300.0, 0.0, 480.0, 0.0)
FORTNIGHT = tuple(map(float, (300, 0, 450, 0, 500, 0, 0, 350, 0, 480, 0, 520, 0, 0)))
FIRST, SECOND = (100.0, 120.0, 140.0, 85.0, 110.0), (102.5, 117.5, 142.5, 87.5, 110.0)


def _week() -> WeekLoad:
    return week_load(DAYS)


def _population_monotony() -> float:
    return monotony_of(mean(DAYS), pstdev(DAYS)) or 0.0


def _undefined() -> float:
    """1 where seven equal days have no monotony."""
    return float(week_load((300.0,) * 7).monotony is None)


def _rolling(coupled: bool) -> float:
    return rolling_ratio((1000, 1000, 1000, 1500), coupled) or 0.0


def _worked_example() -> Tonnage:
    sets = ((10, 55.0), (8, 65.0), (6, 75.0))
    on = date(2026, 2, 2)
    return tonnage(
        DoneSet(on, "s", f"k{n}", "bench-press", reps=reps, resistance_kg=kg)
        for n, (reps, kg) in enumerate(sets)
    )


SESSION = "session load"
ROWS = (
    Row(SESSION, "week, arbitrary units", "420, 0, 540, 300, 0, 480, 0", 1740.0,
        lambda: _week().load, 0.0, FOSTER, Mark.DERIVED),
    Row(SESSION, "mean of the days", "the same week", 248.571,
        lambda: _week().mean, 0.001, FOSTER, Mark.DERIVED),
    Row(SESSION, "deviation, n - 1", "the same week", 243.545,
        lambda: _week().sd, 0.001, FOSTER, Mark.DERIVED),
    Row(SESSION, "monotony, n - 1", "the same week", 1.0206,
        lambda: _week().monotony or 0.0, 0.001, FOSTER, Mark.DERIVED),
    Row(SESSION, "strain, n - 1", "the same week", 1775.91,
        lambda: _week().strain or 0.0, 0.1, FOSTER, Mark.DERIVED),
    Row(SESSION, "monotony with the population's deviation", "the same week", 1.1024,
        _population_monotony, 0.001, FOSTER, Mark.DERIVED),
    Row(SESSION, "monotony", "mean 790, deviation 897", 0.881,
        lambda: monotony_of(790, 897) or 0.0, 0.001, "a worked example", Mark.SEEN),
    Row(SESSION, "seven equal days: undefined", "300 each", 1.0,
        _undefined, 0.0, "nothing divided by", Mark.DERIVED),
    Row("weighted load", "λ over 7 days", "2/(N + 1)", 0.25,
        lambda: weight(7), 1e-6, "Williams et al. 2017, formula", Mark.SEEN),
    Row("weighted load", "λ over 28 days", "2/(N + 1)", 0.0689655,
        lambda: weight(28), 1e-6, "Williams et al. 2017, formula", Mark.SEEN),
    Row("weighted load", "over 7, day 14", "300, 0, 450 … 0", 147.931,
        lambda: weighted(FORTNIGHT, 7)[-1], 0.001, PANDAS, Mark.DERIVED),
    Row("weighted load", "over 28, day 14", "300, 0, 450 … 0", 222.436,
        lambda: weighted(FORTNIGHT, 28)[-1], 0.001, PANDAS, Mark.DERIVED),
    *(
        Row("weighted load", f"rolling ratio, {word}", "1000, 1000, 1000, 1500", expected,
            partial(_rolling, coupled), 0.0001,
            "arithmetic", Mark.DERIVED)
        for word, coupled, expected in (("coupled", True, 4 / 3), ("uncoupled", False, 1.5))
    ),
    Row("tonnage", "kg", "10 x 55, 8 x 65, 6 x 75", 1520.0,
        lambda: _worked_example().kg, 0.01, "a worked example", Mark.SEEN),
    Row("tonnage", "mean of a repetition, kg", "10 x 55, 8 x 65, 6 x 75", 63.33,
        lambda: _worked_example().mean_kg or 0.0, 0.01, "a worked example", Mark.SEEN),
    Row("tonnage", "density, kg a minute", "1560 kg in 45 min", 34.67,
        lambda: Tonnage(1560.0).density(45), 0.01, "a worked example", Mark.SEEN),
    Row("change of a test", "typical error, kg", "five people twice", 1.5811,
        lambda: typical_error(FIRST, SECOND), 0.001, "deviation of differences/√2", Mark.DERIVED),
    Row("change of a test", "least change, kg", "five people twice", 4.3827,
        lambda: least_change(typical_error(FIRST, SECOND)), 0.001, "1.96 √2 error", Mark.DERIVED),
    Row("change of a test", "worthwhile change, kg", "the first test", 4.1473,
        lambda: worthwhile_change(FIRST), 0.001, "0.2 of the deviation", Mark.DERIVED),
    Row("change of a test", "least change of a 1RM, kg", "140 kg, CV 4.2 %", 16.30,
        lambda: least_change(error_from_cv(140, 4.2)), 0.01, "CV: Grgic et al. 2020", Mark.DERIVED),
    Row("change of a test", "error of a squat, kg", "140.3 kg, CV 2.1 %", 2.9,
        lambda: error_from_cv(140.3, 2.1), 0.1, "Banyard et al. 2017", Mark.SEEN),
)  # fmt: skip
