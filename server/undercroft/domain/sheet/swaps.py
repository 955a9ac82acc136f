"""Other ways to train the same when something fails: ranked, their loads worked out in advance.

First the exercise itself with other bands or none, then what trains the same.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil

from undercroft.domain.at_hand import lacking
from undercroft.domain.exercise import Exercise, instead_of
from undercroft.domain.load_sheet import Alternative, RampSet, SheetExercise, Use, UseKind
from undercroft.domain.loads import Load, LoadTable, nearest, nearest_many
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import Method
from undercroft.domain.program.rig import Part
from undercroft.domain.sheet import rigging
from undercroft.domain.sheet.day import Day, piece_for
from undercroft.domain.sheet.pieces import Piece
from undercroft.domain.sheet.reckoning import wishes_of
from undercroft.domain.sheet.shelf import Shelf, shelve
from undercroft.domain.sheet.swapped_wishes import swapped_wishes
from undercroft.domain.sheet.uses import rig_uses, uses_of
from undercroft.domain.sheet.wishes import WishedLoad
from undercroft.domain.sheet.words import cautions
from undercroft.domain.swap import OTHER_BANDS, UNRIGGED
from undercroft.domain.warmup import WarmUpSet, warm_up

FIRST = 3
"""Offered whatever is missing."""

WITHOUT_EACH = 2
"""Offered at least, where the kit has them, without each thing that the exercise uses."""

AROUND = tuple(1 + step / 100 for step in range(-15, 16, 5))
"""Shares of a wish whose loads go along: fewer than for what is planned."""

BY_FEEL = 20
"""Loads that go along where the athlete finds one."""

RIGS = (UseKind.BANDS, UseKind.CHAINS)


BARE = rigging.Rigged()


@dataclass(frozen=True, slots=True, eq=False)
class _Way:
    exercise: Exercise
    plan: ExercisePlan
    piece: Piece
    uses: tuple[Use, ...]
    wishes: Sequence[WishedLoad]
    key: str = ""
    title: str = ""
    rig: rigging.Rigged = BARE


def alternatives(day: Day, plan: ExercisePlan, sheet: SheetExercise) -> tuple[Alternative, ...]:
    """The best ways for whatever may be missing, best first. None with a wrap or cuff on."""
    if plan.method is Method.OCCLUSION:
        return ()
    chosen: list[_Way] = []
    for way in _ways(day, plan, sheet):
        mine, others = _keys(sheet.uses), [_keys(one.uses) for one in chosen]
        short = any(
            sum(key not in each for each in others) < WITHOUT_EACH for key in mine - _keys(way.uses)
        )
        if len(chosen) < FIRST or short:
            chosen.append(way)
    return tuple(_worked_out(day, way) for way in chosen)


def _keys(uses: Sequence[Use]) -> set[str]:
    return {use.key for use in uses}


def _ways(day: Day, plan: ExercisePlan, sheet: SheetExercise) -> Iterator[_Way]:
    yield from _rigged_otherwise(day, plan, sheet)
    seen = {plan.exercise}
    for other in instead_of(day.catalogue[plan.exercise], day.catalogue):
        swapped = replace(plan, exercise=other.key, implement=None, rig=None)
        piece = piece_for(day, swapped)
        if other.key not in seen and piece is not None and _can_be_done(day, other):
            seen.add(other.key)
            uses = uses_of(day, other, piece)
            yield _Way(other, swapped, piece, uses, swapped_wishes(day, swapped))


def _can_be_done(day: Day, exercise: Exercise) -> bool:
    avoided = any(exercise.key in injury.avoid for injury in day.athlete.injuries)
    return not avoided and not lacking(day.kit, exercise)


def _rigged_otherwise(day: Day, plan: ExercisePlan, sheet: SheetExercise) -> Iterator[_Way]:
    """The exercise itself with bands that do not hang in it as planned, and with nothing."""
    hanging = {use.key for use in sheet.uses if use.kind in RIGS}
    exercise, piece = day.catalogue[plan.exercise], piece_for(day, plan)
    if plan.rig is None or piece is None or not hanging:
        return
    bare = uses_of(day, exercise, piece)
    if plan.rig.part is Part.BANDS and plan.rig.share_percent is not None:
        otherwise = replace(plan, rig=replace(plan.rig, things=()))
        wishes = wishes_of(day, otherwise)
        rig = rigging.rigged(_without_bands(day, hanging), otherwise, exercise, wishes)
        if rig.choice is not None and piece.table is not None:
            left = rigging.for_plates(wishes, plan.sets, rig.choice, piece.table)
            uses = (*bare, *rig_uses(rig))
            yield _Way(exercise, otherwise, piece, uses, left, OTHER_BANDS, "other bands", rig)
    if plan.rig.assists:
        # Without the help it would be the heavier exercise.
        return
    unrigged = replace(plan, rig=None)
    title = f"without {plan.rig.part.value}"
    yield _Way(exercise, unrigged, piece, bare, wishes_of(day, unrigged), UNRIGGED, title)


def _without_bands(day: Day, keys: set[str]) -> Day:
    kit = replace(day.kit, bands=tuple(band for band in day.kit.bands if band.key not in keys))
    return replace(day, kit=kit, laws={k: law for k, law in day.laws.items() if k not in keys})


def _worked_out(day: Day, way: _Way) -> Alternative:
    """With loads for the same sets, as far as they can be known."""
    exercise, plan = way.exercise, way.plan
    table = way.piece.table
    ramp = _ramp(plan, table, way.wishes) if table else ()
    shelf = shelve(_loads(table, way.wishes, ramp) if table else ())
    return Alternative(
        key=f"{exercise.key}.{way.key}" if way.key else "",
        exercise=exercise.key,
        name=f"{exercise.name}, {way.title}" if way.title else exercise.name,
        implement=way.piece.implement,
        loads=shelf.loads,
        sets=tuple(_index(table, shelf, wish) for wish in way.wishes),
        uses=way.uses,
        ramp=tuple(RampSet(o.step.reps, shelf.index(o.fit.load), o.step.share) for o in ramp),
        rig=way.rig.words,
        cue=exercise.cues[0] if exercise.cues else "",
        notes=(*way.rig.notes, *_by_feel_notes(way.wishes)),
        cautions=cautions(day, plan, exercise),
    )


def _by_feel_notes(wishes: Sequence[WishedLoad]) -> tuple[str, ...]:
    words = dict.fromkeys(wish.why for wish in wishes if wish.by_feel)
    return tuple(f"{why[0].upper()}{why[1:]}." for why in words)


def _ramp(
    plan: ExercisePlan, table: LoadTable, wishes: Sequence[WishedLoad]
) -> tuple[WarmUpSet, ...]:
    first = wishes[0]
    if not first.kg or plan.warm_up == ():
        return ()
    part = None if first.percent is None else first.percent / 100
    return warm_up(first.kg, table, part, plan.warm_up)


def _loads(
    table: LoadTable, wishes: Sequence[WishedLoad], ramp: Sequence[WarmUpSet]
) -> Iterator[Load]:
    yield from (one.fit.load for one in ramp)
    for kg in {wish.kg for wish in wishes if wish.kg is not None}:
        yield nearest(table, kg).load
        yield from nearest_many(table, [kg * share for share in AROUND])
    if any(wish.by_feel for wish in wishes):
        step = ceil(len(table.loads) / BY_FEEL)
        yield from (load for load in table.loads[::step] if load.kg > 0)


def _index(table: LoadTable | None, shelf: Shelf, wish: WishedLoad) -> int | None:
    if table is None or wish.kg is None:
        return None
    return shelf.index(nearest(table, wish.kg).load)
