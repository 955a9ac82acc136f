"""From what the coach wrote to kilograms: a set's wish, and the wish at each notch around it."""

from dataclasses import dataclass, replace

from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.wish import (
    AsLastTime,
    BodyMass,
    ByReserve,
    Fixed,
    OfMaximum,
    OfTopSet,
    WhenUnknown,
)
from undercroft.domain.sheet.day import Day, full_strength, maximum_on, strength_at
from undercroft.domain.sheet.turns import planned_set
from undercroft.domain.strength import (
    PlannedSet,
    share,
    wishes_for_set,
    wishes_for_share,
)
from undercroft.domain.strength.reserve import FEWEST, MOST


class UnknownMaximum(LookupError):
    """A wish that needs a maximum nobody knows; the coach did not say how to find it."""

    def __init__(self, lift: str) -> None:
        super().__init__(lift)
        self.lift = lift


@dataclass(frozen=True, slots=True)
class WishedLoad:
    """`kg` is None where there is nothing to load or, `by_feel`, where the athlete finds the load.

    `by_notch_kg` goes with the ladder.
    `of_first` is the share of what is done in the exercise's first set, where that decides.
    """

    kg: float | None
    why: str
    by_notch_kg: tuple[float, ...] = ()
    upper_kg: float | None = None
    percent: float | None = None
    of_first: float | None = None
    by_feel: bool = False


def wished_load(day: Day, plan: ExercisePlan, one: SetPlan, first_kg: float | None) -> WishedLoad:
    """The wish of one set; `first_kg` is the load planned for the exercise's first set.

    Raises UnknownMaximum.
    """
    match one.load:
        case OfMaximum() as wish:
            return _of_maximum(day, plan, one, wish)
        case ByReserve() as wish:
            return _by_reserve(day, plan, one, wish)
        case Fixed(kg=kg):
            return WishedLoad(kg, f"{kg:g} kg as written")
        case AsLastTime() as wish:
            return _as_last_time(day, plan, wish)
        case OfTopSet(percent=percent):
            return _of_top_set(percent, first_kg)
        case BodyMass(add_kg=added):
            return _body(day, added, rigged=plan.rig is not None)
        case _:
            return WishedLoad(None, "nothing to load")


def _of_maximum(day: Day, plan: ExercisePlan, one: SetPlan, wish: OfMaximum) -> WishedLoad:
    lift = wish.of or plan.exercise
    maximum, strength = maximum_on(day, lift), full_strength(day, lift)
    if maximum is None or strength is None:
        return _unknown(wish.when_unknown, lift, one)
    part = wish.percent / 100 * wish.ratio
    times = "" if wish.ratio == 1 else f" × {wish.ratio:g}"
    other = "" if lift == plan.exercise else f" ({day.catalogue[lift].name.lower()})"
    why = f"{wish.percent:g} %{times} of {strength:.1f} kg{other}, {maximum.source}"
    wished = WishedLoad(part * strength, why, percent=wish.percent)
    if lift != plan.exercise or wish.ratio != 1:
        return wished
    return _with_notches(day, lift, one, wished, None)


def _by_reserve(day: Day, plan: ExercisePlan, one: SetPlan, wish: ByReserve) -> WishedLoad:
    lift, reps = plan.exercise, one.reps or FEWEST
    n = reps + wish.rir
    strength = strength_at(day, lift, min(max(n, FEWEST), MOST))
    if strength is None or not FEWEST <= n <= MOST:
        return _unknown(wish.when_unknown, lift, one)
    kg = share(n) * strength
    why = f"{reps} reps with {wish.rir:g} in reserve are {share(n):.0%} of {strength:.1f} kg"
    planned = PlannedSet(reps, wish.rir)
    return _with_notches(day, lift, one, WishedLoad(kg, why), planned)


def _with_notches(
    day: Day, lift: str, one: SetPlan, wished: WishedLoad, planned: PlannedSet | None
) -> WishedLoad:
    """The wish at each notch of the day's table, and the bound that no suggestion passes.

    The table's middle notch is the day's level to the nearest per cent; the ladder's middle is the
    wish itself, so that before any evidence the suggestion is the plan.
    """
    table, known = day.tables.get(lift), day.lift(lift)
    if table is None or known is None or wished.kg is None:
        return wished
    if planned is not None:
        by_notch = wishes_for_set(table, known.state, planned)
    else:
        by_notch = wishes_for_share(table, known.state, (wished.percent or 0) / 100)
    centred = wished.kg / by_notch[len(by_notch) // 2]
    return replace(
        wished,
        by_notch_kg=tuple(kg * centred for kg in by_notch),
        upper_kg=_upper(day, lift, one, wished.kg),
    )


def _upper(day: Day, lift: str, one: SetPlan, planned_kg: float) -> float | None:
    """What the upper end of the maximum's 90 % band could just do for these repetitions.

    The coach's own wish is never cut by it: that is for the checks to find.
    """
    maximum, planned = maximum_on(day, lift), planned_set(one)
    reps = planned.reps if planned else one.reps
    if maximum is None or reps is None or not FEWEST <= reps <= MOST:
        return None
    return max(planned_kg, maximum.high_kg * share(reps))


def _unknown(rule: WhenUnknown, lift: str, one: SetPlan) -> WishedLoad:
    if rule is WhenUnknown.REFUSE:
        raise UnknownMaximum(lift)
    return by_feel(one)


def by_feel(one: SetPlan) -> WishedLoad:
    """The athlete finds the load, as the words say."""
    planned = planned_set(one)
    aim = _reserve_in_words(planned.rir) if planned else "a reserve of two or three"
    reps = f"{one.reps} reps" if one.reps else "the set"
    words = f"no maximum known: start light and add until {reps} leave {aim}"
    return WishedLoad(None, words, by_feel=True)


FELT = 4
"""Nobody can tell a greater reserve from another (common practice)."""


def _reserve_in_words(rir: float) -> str:
    return f"{round(rir * 2) / 2:g} in reserve" if rir <= FELT else f"more than {FELT} in reserve"


def _as_last_time(day: Day, plan: ExercisePlan, wish: AsLastTime) -> WishedLoad:
    last = day.standing.last_kg.get(plan.exercise)
    if last is None:
        words = "nothing done before: start light and find a good load"
        start = f"{wish.start_kg:g} kg to start with" if wish.start_kg else words
        return WishedLoad(wish.start_kg, start, by_feel=wish.start_kg is None)
    added = f" {wish.add_kg:+g} kg" if wish.add_kg else ""
    return WishedLoad(max(0.0, last + wish.add_kg), f"last time {last:g} kg{added}")


def _of_top_set(percent: float, first_kg: float | None) -> WishedLoad:
    kg = None if first_kg is None else first_kg * percent / 100
    why = f"{percent:g} % of what you did in the first set"
    return WishedLoad(kg, why, of_first=percent / 100)


def _body(day: Day, added: float, rigged: bool) -> WishedLoad:
    """With bands the body is a load like another: they take a share of it, or add one."""
    mass = day.athlete.body_mass_kg
    if not added:
        return WishedLoad(mass if rigged else None, "your own body")
    words = f"your own body {added:+g} kg"
    return WishedLoad(None if mass is None else max(0.0, mass + added), words)
