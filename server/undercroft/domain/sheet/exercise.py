"""One exercise of a session, worked out."""

from dataclasses import dataclass, replace

from undercroft.domain.at_hand import lacking
from undercroft.domain.exercise import Exercise
from undercroft.domain.load_sheet import (
    Alternative,
    SheetExercise,
    SheetImplement,
    SheetSet,
    Target,
)
from undercroft.domain.loads import LoadTable, nearest
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.program.methods import Method
from undercroft.domain.sheet import levers, rigging
from undercroft.domain.sheet.day import Day, implement_for, maximum_on
from undercroft.domain.sheet.loading import load_sets
from undercroft.domain.sheet.occlusion import clinics_own, with_occlusion
from undercroft.domain.sheet.shelf import shelve
from undercroft.domain.sheet.tipping import light_bar, orders
from undercroft.domain.sheet.turns import asked_rir, gives_evidence
from undercroft.domain.sheet.wishes import UnknownMaximum, WishedLoad, wished_load
from undercroft.domain.sheet.words import cautions

MOST_ALTERNATIVES = 3


def work_out_exercise(day: Day, plan: ExercisePlan) -> SheetExercise:
    """The exercise with a load for every set that its kit can make. Raises UnknownMaximum."""
    exercise = day.catalogue[plan.exercise]
    wishes = wishes_of(day, plan)
    sets = tuple(
        _sheet_set(day, plan, number, one, wish)
        for number, (one, wish) in enumerate(zip(plan.sets, wishes, strict=True), start=1)
    )
    unloaded = _unloaded(day, plan, exercise, sets)
    done = unloaded if clinics_own(day, plan) else _loaded(day, plan, wishes, unloaded)
    return with_occlusion(day, plan, done)


@dataclass(frozen=True, slots=True, eq=False)
class Reckoned:
    """What is hung beside the plates, and what is left for them: a wish for each set."""

    rig: rigging.Rigged
    arm: levers.Levered
    for_plates: list[WishedLoad]


def reckon(day: Day, plan: ExercisePlan, wishes: list[WishedLoad], table: LoadTable) -> Reckoned:
    """From wishes for the whole load to wishes for what the table holds."""
    exercise = day.catalogue[plan.exercise]
    rig = rigging.rigged(day, plan, exercise, wishes)
    arm = levers.levered(day, exercise, implement_for(plan, day.catalogue))
    wishes = levers.on_the_sleeve(arm, wishes, plan.sets, table)
    if rig.choice is not None:
        wishes = rigging.for_plates(wishes, plan.sets, rig.choice, table)
    return Reckoned(rig, arm, wishes)


def wishes_of(day: Day, plan: ExercisePlan) -> list[WishedLoad]:
    """The wish of each set, back-off sets after the load that the first one gets.

    Raises UnknownMaximum.
    """
    first = wished_load(day, plan, plan.sets[0], None)
    piece = day.pieces.get(implement_for(plan, day.catalogue))
    first_kg = first.kg
    if first_kg is not None and piece is not None and piece.table is not None:
        first_kg = nearest(piece.table, first_kg).load.kg
    return [first, *(wished_load(day, plan, one, first_kg) for one in plan.sets[1:])]


def _sheet_set(
    day: Day, plan: ExercisePlan, number: int, one: SetPlan, wish: WishedLoad
) -> SheetSet:
    rir = asked_rir(plan, one)
    target = Target(
        reps=one.reps,
        rir=None if rir is None else round(rir * 2) / 2,
        to_failure=one.to_failure,
        percent=wish.percent,
        seconds=one.seconds,
        distance_m=one.distance_m,
        blocks=one.blocks,
    )
    turn = day.turns.get(one.key)
    return SheetSet(key=one.key, number=number, target=target, turn=turn, why=wish.why)


def _unloaded(
    day: Day, plan: ExercisePlan, exercise: Exercise, sets: tuple[SheetSet, ...]
) -> SheetExercise:
    implement = implement_for(plan, day.catalogue)
    piece = day.pieces.get(implement)
    missing = () if piece else (f"No {implement.replace('-', ' ')} stands here.",)
    tells = gives_evidence(plan, implement)
    table = day.tables.get(plan.exercise) if tells else None
    return SheetExercise(
        key=plan.key,
        exercise=plan.exercise,
        name=exercise.name,
        method=plan.method,
        implement=piece.implement if piece else SheetImplement(kind=implement, name="not here"),
        sets=sets,
        rest=plan.rest,
        group=plan.group,
        cue=plan.cue or (exercise.cues[0] if exercise.cues else ""),
        details=plan.details,
        maximum=maximum_on(day, plan.exercise),
        notches=replace(table, hold=plan.hold_the_plan) if table else None,
        notes=missing,
        cautions=cautions(day, plan, exercise),
        alternatives=_alternatives(day, plan, exercise),
    )


def _loaded(
    day: Day, plan: ExercisePlan, wishes: list[WishedLoad], sheet: SheetExercise
) -> SheetExercise:
    piece = day.pieces.get(implement_for(plan, day.catalogue))
    nothing = all(wish.kg is None and not wish.by_feel for wish in wishes)
    if piece is None or piece.table is None or nothing:
        return sheet
    hung = reckon(day, plan, wishes, piece.table)
    rig, arm, wishes = hung.rig, hung.arm, hung.for_plates
    told = tuple(replace(one, why=w.why) for one, w in zip(sheet.sets, wishes, strict=True))
    light = light_bar(day, sheet)
    loaded = load_sets(plan, piece.table, wishes, told, light.margin if light else None)
    sets = levers.with_curves(day, arm, loaded.sets, loaded.shelf.loads)
    if rig.choice is not None:
        sets = rigging.with_curves(sets, loaded.shelf.loads, rig.choice)
    done = replace(
        sheet,
        loads=loaded.shelf.loads,
        ramp=loaded.ramp,
        sets=sets,
        rig=rig.words,
        notes=(*sheet.notes, *rig.notes, *arm.notes),
    )
    return _with_orders(day, done)


def _with_orders(day: Day, sheet: SheetExercise) -> SheetExercise:
    both = orders(day, sheet)
    return sheet if both is None else replace(sheet, loading=both[0], stripping=both[1])


def _alternatives(day: Day, plan: ExercisePlan, exercise: Exercise) -> tuple[Alternative, ...]:
    if plan.method is Method.OCCLUSION:
        return ()
    here = [a for a in exercise.alternatives if day.catalogue[a].implement in day.pieces]
    fit = [a for a in here if _can_be_done(day, day.catalogue[a])]
    return tuple(_alternative(day, plan, a) for a in fit[:MOST_ALTERNATIVES])


def _can_be_done(day: Day, exercise: Exercise) -> bool:
    avoided = any(exercise.key in injury.avoid for injury in day.athlete.injuries)
    return not avoided and not lacking(day.kit, exercise)


def _alternative(day: Day, plan: ExercisePlan, other: str) -> Alternative:
    """The other exercise with loads for the same sets, as far as its own maximum is known."""
    exercise = day.catalogue[other]
    piece = day.pieces[exercise.implement]
    swapped = replace(plan, exercise=other, implement=None)
    chosen = [_swapped_load(day, swapped, one) for one in plan.sets]
    if piece.table is None:
        chosen = [None] * len(chosen)
    fits = [None if kg is None or not piece.table else nearest(piece.table, kg) for kg in chosen]
    shelf = shelve(fit.load for fit in fits if fit is not None)
    return Alternative(
        exercise=other,
        name=exercise.name,
        implement=piece.implement,
        loads=shelf.loads,
        sets=tuple(None if fit is None else shelf.index(fit.load) for fit in fits),
    )


def _swapped_load(day: Day, plan: ExercisePlan, one: SetPlan) -> float | None:
    """A load for the swapped exercise where its own maximum gives one; else found by feel."""
    if day.lift(plan.exercise) is None:
        return None
    try:
        return wished_load(day, plan, one, None).kg
    except UnknownMaximum:
        return None
