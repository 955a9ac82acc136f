"""Loads for all sets of one exercise: warm-up ramp, work sets, and the ladders around them."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from typing import NamedTuple

from undercroft.domain.following import loads_after
from undercroft.domain.handling import plan as plan_handling
from undercroft.domain.kit import Plate
from undercroft.domain.load_sheet import RampSet, SheetSet
from undercroft.domain.loads import Aim, Fit, Load, LoadTable, nearest, nearest_many
from undercroft.domain.mechanics import DEFAULT
from undercroft.domain.plates import PlateTable
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.sheet.shelf import Shelf, shelve
from undercroft.domain.sheet.wishes import WishedLoad
from undercroft.domain.steady import Margin, steady_plan
from undercroft.domain.warmup import WarmUpSet, warm_up

AROUND = tuple(1 + step / 100 for step in range(-20, 21))
"""Shares of a wish whose loads go onto the sheet, so that the athlete can step away from it."""

MOST_BY_FEEL = 60
"""Loads offered where the athlete finds the load by feel."""


@dataclass(frozen=True, slots=True)
class Loaded:
    """The exercise's shelf, its warm-up ramp and its sets with their loads filled in."""

    shelf: Shelf
    ramp: tuple[RampSet, ...]
    sets: tuple[SheetSet, ...]


def load_sets(
    plan: ExercisePlan,
    table: LoadTable,
    wishes: Sequence[WishedLoad],
    sets: Sequence[SheetSet],
    margin: Margin | None = None,
) -> Loaded:
    """Choose a load for every set that wishes one; `sets` come back with indices filled in.

    `margin` is given for a bar that may turn over while it is loaded.
    """
    ramp = _ramp(plan, table, wishes)
    fits = _fits(plan, table, ramp, wishes, margin)
    ramp_fits, set_fits = fits[: len(ramp)], fits[len(ramp) :]
    rungs = [_rungs(wish, fit) for wish, fit in zip(wishes, set_fits, strict=True)]
    steps = {one: _around(table, one) for one in dict.fromkeys(rungs)}
    shelf = shelve(_all_loads(table, fits, steps.values(), steps[rungs[0]], wishes))
    ladders = {one: tuple(map(shelf.index, loads)) for one, loads in steps.items()}
    return Loaded(
        shelf,
        tuple(
            RampSet(one.step.reps, shelf.index(fit.load), one.step.share)
            for one, fit in zip(ramp, ramp_fits, strict=True)
            if fit is not None
        ),
        tuple(
            _filled(one, wish, fit, ladders[rung], shelf)
            for one, wish, fit, rung in zip(sets, wishes, set_fits, rungs, strict=True)
        ),
    )


def _ramp(
    plan: ExercisePlan, table: LoadTable, wishes: Sequence[WishedLoad]
) -> tuple[WarmUpSet, ...]:
    first = wishes[0]
    if first.kg is None or first.kg <= 0 or plan.warm_up == ():
        return ()
    part = None if first.percent is None else first.percent / 100
    return warm_up(first.kg, table, part, plan.warm_up)


def _fits(
    plan: ExercisePlan,
    table: LoadTable,
    ramp: Sequence[WarmUpSet],
    wishes: Sequence[WishedLoad],
    margin: Margin | None,
) -> list[Fit | None]:
    """Ramp and sets in turn, loaded with the fewest handlings; None where nothing is wished."""
    aims = [one.target_kg for one in ramp] + [wish.kg for wish in wishes]
    wished = [Aim(kg) for kg in aims if kg is not None]
    tolerance = plan.tolerance_percent / 100
    if margin is not None and isinstance(table, PlateTable):
        found = steady_plan(table, wished, tolerance, margin, DEFAULT.warn_margin)
    else:
        found = plan_handling(table, wished, tolerance)
    steps = iter(found.steps)
    return [None if kg is None else next(steps).fit for kg in aims]


class _Rungs(NamedTuple):
    """Wishes for the notches around a set, and what hangs there: many sets share both."""

    targets_kg: tuple[float, ...]
    stack: tuple[Plate, ...]


def _rungs(wish: WishedLoad, fit: Fit | None) -> _Rungs:
    if wish.kg is None or fit is None:
        return _Rungs((), ())
    targets = wish.by_notch_kg or tuple(wish.kg * share for share in AROUND)
    return _Rungs(targets, fit.load.plates)


def _around(table: LoadTable, rungs: _Rungs) -> tuple[Load, ...]:
    """Loads for the notches, stacked onto what hangs there."""
    if isinstance(table, PlateTable) and rungs.targets_kg:
        return loads_after(table, rungs.stack, rungs.targets_kg)
    return nearest_many(table, rungs.targets_kg)


def _all_loads(
    table: LoadTable,
    fits: Sequence[Fit | None],
    ladders: Iterable[tuple[Load, ...]],
    first_ladder: Sequence[Load],
    wishes: Sequence[WishedLoad],
) -> Iterator[Load]:
    for fit in fits:
        if fit is not None:
            yield from (load for load in (fit.load, fit.below, fit.above) if load is not None)
    yield from chain.from_iterable(ladders)
    if any(wish.kg is None for wish in wishes):
        step = max(1, len(table.loads) // MOST_BY_FEEL)
        yield from (load for load in table.loads[::step] if load.kg > 0)
    for wish in wishes:
        if wish.of_first is not None:
            for load in first_ladder:
                yield nearest(table, load.kg * wish.of_first).load


def _filled(
    one: SheetSet, wish: WishedLoad, fit: Fit | None, ladder: Sequence[int], shelf: Shelf
) -> SheetSet:
    if fit is None or wish.kg is None:
        return replace(one, after=_after(wish, shelf, None))
    load = shelf.index(fit.load)
    cap = None if wish.upper_kg is None else shelf.heaviest_within(wish.upper_kg)
    return replace(
        one,
        wish_kg=round(wish.kg, 3),
        load=load,
        off_kg=round(fit.off_kg, 3),
        below=None if fit.below is None else shelf.index(fit.below),
        above=None if fit.above is None else shelf.index(fit.above),
        ladder=_ladder(ladder, load) if wish.by_notch_kg else (),
        cap=None if cap is None else max(cap, load),
        after=_after(wish, shelf, load),
    )


def _ladder(steps: Sequence[int], planned: int) -> tuple[int, ...]:
    """Indices by notch; the middle is the planned load, also where a tolerance moved that."""
    middle = len(steps) // 2
    return (*steps[:middle], planned, *steps[middle + 1 :])


def _after(wish: WishedLoad, shelf: Shelf, planned: int | None) -> tuple[int, ...]:
    """For each load that the first set may have been done with, the load that follows from it.

    Where that is what is planned anyway, it hangs as planned.
    """
    if wish.of_first is None:
        return ()
    follows = [shelf.nearest(load.kg * wish.of_first) for load in shelf.loads]
    if planned is None:
        return tuple(follows)
    same = shelf.loads[planned].kg
    return tuple(planned if shelf.loads[index].kg == same else index for index in follows)
