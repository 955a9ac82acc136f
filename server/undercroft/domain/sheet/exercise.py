"""One exercise of a session, worked out."""

from dataclasses import replace

from undercroft.domain.exercise import Exercise
from undercroft.domain.load_sheet import SheetExercise, SheetImplement, SheetSet, Target
from undercroft.domain.program.block import ExercisePlan, SetPlan
from undercroft.domain.sheet import levers, rigging
from undercroft.domain.sheet.day import Day, implement_for, maximum_on, piece_for
from undercroft.domain.sheet.loading import load_sets
from undercroft.domain.sheet.occlusion import clinics_own, with_occlusion
from undercroft.domain.sheet.reckoning import reckon, wishes_of
from undercroft.domain.sheet.swaps import alternatives
from undercroft.domain.sheet.tipping import light_bar, orders
from undercroft.domain.sheet.turns import asked_rir, gives_evidence
from undercroft.domain.sheet.uses import rig_uses, uses_of
from undercroft.domain.sheet.wishes import WishedLoad
from undercroft.domain.sheet.words import cautions


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
    done = replace(done, alternatives=alternatives(day, plan, done))
    return with_occlusion(day, plan, done)


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
    piece = piece_for(day, plan)
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
        uses=uses_of(day, exercise, piece),
    )


def _loaded(
    day: Day, plan: ExercisePlan, wishes: list[WishedLoad], sheet: SheetExercise
) -> SheetExercise:
    piece = piece_for(day, plan)
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
        uses=(*sheet.uses, *rig_uses(rig)),
        notes=(*sheet.notes, *rig.notes, *arm.notes),
    )
    return _with_orders(day, done)


def _with_orders(day: Day, sheet: SheetExercise) -> SheetExercise:
    both = orders(day, sheet)
    return sheet if both is None else replace(sheet, loading=both[0], stripping=both[1])
