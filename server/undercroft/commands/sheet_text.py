"""A load sheet as lines of text."""

from collections.abc import Iterator, Mapping

from undercroft.domain.load_sheet import (
    ForceCurve,
    LoadSheet,
    SheetExercise,
    SheetImplement,
    SheetLoad,
    SheetOcclusion,
    SheetSet,
    Target,
)

Labels = Mapping[float, str]
"""Names of plates that are not simply their kilograms, by those kilograms."""


def sheet_lines(sheet: LoadSheet) -> Iterator[str]:
    """The whole session, exercise by exercise."""
    day = f"{sheet.on:%A %-d %B %Y}" if sheet.on else ""
    yield f"{sheet.week_name} · {sheet.name} · {day} · about {sheet.minutes} min"
    yield f"{sheet.athlete} at {sheet.kit}. Needs: {', '.join(sheet.needs)}"
    labels = {plate.kg: plate.label for plate in sheet.plates if plate.label}
    for exercise in sheet.exercises:
        yield ""
        yield from _exercise_lines(exercise, labels)


def _exercise_lines(exercise: SheetExercise, labels: Labels) -> Iterator[str]:
    known = exercise.maximum
    told = f", 1RM {known.kg:.1f} kg ({known.low_kg:.0f}-{known.high_kg:.0f})" if known else ""
    yield f"{exercise.name} · {exercise.method.value} · {exercise.implement.name}{told}"
    if exercise.rest:
        yield f"  rest {exercise.rest.from_s}-{exercise.rest.to_s} s. {exercise.cue}".rstrip()
    yield from (f"  rig: {line}" for line in exercise.rig)
    for step in exercise.ramp:
        load = exercise.loads[step.load]
        hang = hanging(load, exercise.implement, labels)
        yield f"  warm-up  {counted(step.reps)}  {load.kg:g} kg  {hang}  ({step.share:.0%})"
    for one in exercise.sets:
        yield _set_line(one, exercise, labels)
    yield from _order_lines(exercise, labels)
    if exercise.occlusion is not None:
        yield from (f"  {line}" for line in occlusion_lines(exercise.occlusion))
    if exercise.notes or exercise.locked:
        others = ", ".join(other.name for other in exercise.alternatives)
        if others:
            yield f"  instead, with what stands here: {others}"
    for line in (*exercise.notes, *exercise.cautions, exercise.locked):
        if line:
            yield f"  ! {line}"


def _set_line(one: SheetSet, exercise: SheetExercise, labels: Labels) -> str:
    asked = f"  set {one.number}  {target_words(one.target)}"
    if one.load is None:
        return f"{asked}  {one.why}"
    load = exercise.loads[one.load]
    off = (
        f"{one.off_kg or 0:+.2f} kg off the wish" if abs(one.off_kg or 0) >= 0.005 else "as wished"
    )
    hang = hanging(load, exercise.implement, labels)
    felt = f"  {curve_words(one.curve)}" if one.curve else ""
    return f"{asked}  {load.kg:g} kg  {hang}  {off}{felt}  ({one.why})"


def curve_words(curve: ForceCurve) -> str:
    """The resistance through the lift in kg, with its doubt."""
    ends = f"{curve.start_kg:.1f} at the start, {curve.mean_kg:.1f} on average"
    return f"{{{ends}, {curve.end_kg:.1f} at the end, ±{curve.doubt_kg:.1f}}}"


def occlusion_lines(of: SheetOcclusion) -> Iterator[str]:
    """What holds with the wrap or cuff on, and the load of the next time."""
    yield of.rung
    if of.most_tightness is not None:
        yield f"tightness at most {of.most_tightness} of 10"
    if of.pressure_mmhg is not None:
        yield f"pressure {of.pressure_mmhg} mmHg ({of.pressure_basis})"
    yield (
        f"about {clock(of.wear_s)} min on, off by {clock(of.limit_s)} at the very most, then"
        f" {clock(of.break_s)} off; {of.gap_h} h since the last time"
    )
    if of.next is not None:
        n = of.next
        yield (
            f"next time {n.up_kg:g} kg if the last set went above {n.last_over}, {n.down_kg:g} if"
            f" the first stayed under {n.first_under}, {n.tenth_kg:g} and a question if all"
            f" together stayed under {n.total_under}, else {n.hold_kg:g}"
        )


def clock(seconds: int) -> str:
    """Minutes and seconds."""
    return f"{seconds // 60}:{seconds % 60:02}"


def _order_lines(exercise: SheetExercise, labels: Labels) -> Iterator[str]:
    for name, order in (("load", exercise.loading), ("strip", exercise.stripping)):
        if order is not None:
            moves = ", ".join(
                f"{m.side.value} {labels.get(m.kg) or f'{m.kg:g}'}" for m in order.moves
            )
            yield f"  {name} in this order: {moves} (margin {order.margin:g})"
            if order.advice:
                yield f"    {order.advice}"


def hanging(load: SheetLoad, implement: SheetImplement, labels: Labels) -> str:
    """What to hang or choose, in words."""
    if load.piece_kg is not None:
        return f"[{load.piece_kg:g} kg dumbbell]"
    if load.pin_kg is not None:
        added = "".join(f" + {kg:g}" for kg in load.add_ons_kg)
        return f"[pin {load.pin_kg:g}{added}]"
    plates = " + ".join(labels.get(kg) or f"{kg:g}" for kg in load.side)
    return f"[{_where(implement)}: {plates}]" if plates else "[nothing added]"


def _where(implement: SheetImplement) -> str:
    if implement.kind.startswith("dumbbell"):
        return "each end"
    return "each side" if implement.sides == 2 else "on it"


def counted(number: int) -> str:
    """So many repetitions."""
    return "1 rep" if number == 1 else f"{number} reps"


def target_words(target: Target) -> str:
    """What is asked of the athlete in a set."""
    parts = []
    if target.blocks:
        parts.append("+".join(map(str, target.blocks)) + " reps")
    elif target.reps is not None:
        parts.append(counted(target.reps))
    if target.seconds is not None:
        parts.append(f"{target.seconds:g} s")
    if target.distance_m is not None:
        parts.append(f"{target.distance_m:g} m")
    if target.to_failure:
        parts.append("to failure")
    elif target.rir is not None:
        parts.append(f"{target.rir:g} in reserve")
    return ", ".join(parts) or "as it comes"
