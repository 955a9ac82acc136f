"""How the load of one set came about, step by step, so that a person can follow by hand.

Every number is read off the objects that the sheet itself was made from: the wish, what is left for
the plates, the loads on the shelf. Nothing is worked out a second time.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from undercroft.domain.errors import DomainError
from undercroft.domain.load_sheet import SheetExercise, SheetLoad, SheetSet
from undercroft.domain.mechanics import rig_kg
from undercroft.domain.mechanics.target import WORDS
from undercroft.domain.occlusion import LIMITS, planned_reps, work_of
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.wish import ByReserve, OfMaximum, Point
from undercroft.domain.sheet.day import Day, piece_for, strength_at
from undercroft.domain.sheet.exercise import work_out_exercise
from undercroft.domain.sheet.explain_maximum import maximum_lines
from undercroft.domain.sheet.reckoning import Reckoned, reckon, wishes_of
from undercroft.domain.sheet.session import Order, day_of_session
from undercroft.domain.sheet.wishes import WishedLoad
from undercroft.domain.sheet.words import summed

SHOWN_NOTCHES = 5
"""To each side of the plan: the most that a session may rise."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the way, with its numbers in lines."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class _Set:
    """One set with everything that its load was made from."""

    day: Day
    plan: ExercisePlan
    one: SetPlan
    sheet: SheetExercise
    done: SheetSet
    wish: WishedLoad
    for_plates: WishedLoad
    hung: Reckoned | None


def set_keys(order: Order) -> tuple[str, ...]:
    """The key of every set of the block, in its order."""
    return tuple(one.key for _, plan in _plans(order) for one in plan.sets)


def explain(order: Order, set_key: str) -> tuple[Step, ...]:
    """The steps from what is known to what hangs, for one set.

    Raises DomainError where the block has no such set, UnknownMaximum where a load cannot be.
    """
    one = _find(order, set_key)
    steps = (
        Step("Maximum", tuple(_maximum(one))),
        Step("Wish", tuple(_wish(one))),
        Step("Bands, chains, lever", tuple(_rig(one))),
        Step("Target", tuple(_target(one))),
        Step("Nearest on each side", tuple(_neighbours(one))),
        Step("Chosen", tuple(_chosen(one))),
        Step("Notches around it", tuple(_notches(one))),
        Step("Bounds of a suggestion", tuple(_bounds(one))),
        Step("With the wrap or cuff on", tuple(_occlusion(one))),
    )
    return tuple(step for step in steps if step.lines)


def _plans(order: Order) -> Iterator[tuple[str, ExercisePlan]]:
    for week in order.block.weeks:
        for session in week.sessions:
            yield from ((session.key, plan) for plan in session.exercises)


def _find(order: Order, set_key: str) -> _Set:
    for session, plan in _plans(order):
        for place, one in enumerate(plan.sets):
            if one.key == set_key:
                return _with_numbers(day_of_session(order, session), plan, place)
    keys = set_keys(order)
    some = ", ".join(keys[:3])
    raise DomainError("set", f"there is none with the key {set_key!r}", f"there are {some} …")


def _with_numbers(day: Day, plan: ExercisePlan, place: int) -> _Set:
    sheet, wishes = work_out_exercise(day, plan), wishes_of(day, plan)
    piece = piece_for(day, plan)
    hung = reckon(day, plan, wishes, piece.table) if piece and piece.table else None
    return _Set(
        day=day,
        plan=plan,
        one=plan.sets[place],
        sheet=sheet,
        done=sheet.sets[place],
        wish=wishes[place],
        for_plates=hung.for_plates[place] if hung else wishes[place],
        hung=hung,
    )


def _maximum(of: _Set) -> Iterator[str]:
    wish = of.one.load
    if isinstance(wish, OfMaximum):
        yield from maximum_lines(of.day, wish.of or of.plan.exercise)
    elif isinstance(wish, ByReserve):
        yield from maximum_lines(of.day, of.plan.exercise)


def _wish(of: _Set) -> Iterator[str]:
    if of.wish.kg is None:
        yield of.wish.why
    else:
        yield from _own_curve(of)
        if of.wish.of_first:
            yield f"the first set is planned with {of.wish.kg / of.wish.of_first:.2f} kg"
        yield f"{of.wish.why}: {of.wish.kg:.2f} kg"
    if of.sheet.locked:
        yield of.sheet.locked


def _own_curve(of: _Set) -> Iterator[str]:
    """Reserve is reckoned from the maximum as it is seen at so many repetitions."""
    if isinstance(of.one.load, ByReserve) and of.one.reps:
        n = of.one.reps + of.one.load.rir
        seen = strength_at(of.day, of.plan.exercise, n)
        if seen is not None:
            yield f"{n:g} to failure; by this athlete's own curve the maximum counts {seen:.2f} kg"


def _rig(of: _Set) -> Iterator[str]:
    if of.hung is None:
        return
    yield from of.hung.rig.words
    choice = of.hung.rig.choice
    if choice is not None:
        parts = (
            f"{rig_kg(choice.curve, point):.1f} kg {WORDS[point]}"
            for point in (Point.START, Point.MEAN, Point.LOCKOUT)
        )
        yield "it gives " + ", ".join(parts)
        point = of.one.load.point if isinstance(of.one.load, OfMaximum) else Point.BAR
        yield f"the wish is meant {WORDS[point]}: {rig_kg(choice.curve, point):.1f} kg of it"
    lever = of.hung.arm.lever
    if lever is not None:
        yield (
            f"lever: bar {lever.bar_kg:g} kg at {lever.bar_centre_m:.2f} m, plates from "
            f"{lever.face_m:.2f} m, hand at {lever.hand_m:.2f} m from the pivot"
        )
    yield from (*of.hung.rig.notes, *of.hung.arm.notes)


def _target(of: _Set) -> Iterator[str]:
    if of.done.wish_kg is not None:
        what = "with bar and collars" if of.sheet.implement.sides == 2 else "in all"
        yield f"{of.done.wish_kg:.2f} kg {what}"
        if of.for_plates.why != of.wish.why:
            yield of.for_plates.why
    elif of.wish.kg is not None:
        yield from of.sheet.notes


def _load(of: _Set, index: int | None) -> SheetLoad | None:
    return None if index is None else of.sheet.loads[index]


def _neighbours(of: _Set) -> Iterator[str]:
    wish = of.done.wish_kg
    for word, index in (("below", of.done.below), ("above", of.done.above)):
        load = _load(of, index)
        if load is not None and wish is not None:
            yield f"{word}: {summed(of.sheet, load)}, {load.kg - wish:+.2f} kg"
        elif of.done.load is not None:
            yield f"{word}: nothing that this kit can make"


def _chosen(of: _Set) -> Iterator[str]:
    load = _load(of, of.done.load)
    if load is None or of.done.off_kg is None or not of.done.wish_kg:
        return
    yield summed(of.sheet, load)
    share = of.done.off_kg / of.done.wish_kg
    yield f"{of.done.off_kg:+.2f} kg off the wish, {share:+.1%}"
    yield from _cable(of, load)
    if load.side:
        yield "from the middle outwards; warm-up and all sets together need the fewest handlings"
    if of.plan.tolerance_percent:
        yield f"any load was allowed within the coach's tolerance, {of.plan.tolerance_percent:g} %"


def _cable(of: _Set, load: SheetLoad) -> Iterator[str]:
    stack = next((one for one in of.day.kit.stacks if one.key == of.sheet.implement.key), None)
    if stack is not None and load.pin_kg is not None:
        yield (
            f"the handle feels it over a travel ratio of {stack.travel_ratio:g} and "
            f"{stack.sheaves} sheaves of {stack.sheave_efficiency:g}: "
            f"kg/({stack.travel_ratio:g} × {stack.sheave_efficiency:g}^{stack.sheaves})"
        )


def _notches(of: _Set) -> Iterator[str]:
    ladder, wishes = of.done.ladder, of.for_plates.by_notch_kg
    if not ladder:
        return
    middle = len(ladder) // 2
    yield "a notch is 1 % of the maximum; the middle is the plan"
    for at in range(middle - SHOWN_NOTCHES, middle + SHOWN_NOTCHES + 1):
        load = of.sheet.loads[ladder[at]]
        yield f"{at - middle:+d}: {wishes[at]:.2f} kg wished, {load.kg:g} kg hung"


def _bounds(of: _Set) -> Iterator[str]:
    load, table = _load(of, of.done.cap), of.sheet.notches
    if not of.done.ladder:
        return
    if load is not None and of.for_plates.upper_kg is not None:
        upper = of.for_plates.upper_kg
        yield f"never above {load.kg:g} kg, the heaviest load of this sheet within {upper:.2f} kg"
        yield "that is what the upper end of the maximum's 90 % band could do, or the plan itself"
    if table is not None and table.hold:
        yield "the coach holds the plan: nothing else is suggested"
    elif table is not None:
        rise = table.rise
        yield f"at most {rise.per_set} notches up from set to set, {rise.in_all} in the session"


def _occlusion(of: _Set) -> Iterator[str]:
    known = of.sheet.occlusion
    if known is None:
        return
    work = work_of(of.plan)
    reps, rests = sum(planned_reps(work.sets)), len(work.sets) - 1
    yield (
        f"on for {reps} reps × {work.rep_s:g} s + {rests} rests × {work.rest_to_s} s"
        f" + {LIMITS.handling_s:g} s to put it on and take it off = {known.wear_s} s"
    )
    yield f"off after {known.limit_s} s at the very most"
    cap = _load(of, of.done.cap)
    if cap is not None and of.sheet.maximum is not None:
        yield f"no load above {cap.kg:g} kg: {cap.kg / of.sheet.maximum.kg:.1%} of the maximum"
    if known.pressure_mmhg is not None:
        yield f"{known.pressure_mmhg} mmHg of {known.pressure_basis}"
