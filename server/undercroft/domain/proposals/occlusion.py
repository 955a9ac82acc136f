"""The next load of occlusion work, by the repetitions reached last time.

Nothing is proposed while the work is locked, for a clinician's own prescription, or above the cap.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from undercroft.domain.load_sheet import SheetExercise, SheetSet
from undercroft.domain.occlusion import NextLoad, next_step, next_why
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.wish import AsLastTime, Fixed
from undercroft.domain.proposals.proposal import Kind, SetProposal

HAIR = 1e-6

NEVER_DONE = "not done yet: nothing tells of its next load"
NO_TABLE = "no load of it is worked out here, and none is moved"
OTHER_LOAD = "last time it was done with another load than the one planned: decide yourself"
UNEQUAL = "its sets have unequal loads: decide yourself"


@dataclass(frozen=True, slots=True)
class OcclusionDone:
    """The exercise as last done: its sheet's table, and its sets' repetitions and loads in kg."""

    table: NextLoad | None
    reps: tuple[int, ...]
    loads_kg: tuple[float, ...]
    stopped: bool = False


def in_kilograms(plan: ExercisePlan) -> bool:
    """Are its loads written in kilograms, all of them?"""
    return all(isinstance(one.load, Fixed | AsLastTime) for one in plan.sets)


def occlusion_proposals(
    sheet: SheetExercise, done: OcclusionDone | None
) -> tuple[SetProposal, ...]:
    """All sets of the exercise together: the wrap is on for all of them."""
    loads = {_kg(sheet, one) for one in sheet.sets}
    now = next(iter(loads))
    why = _why_not(sheet, done, loads)
    if why or now is None or done is None or done.table is None:
        kind = Kind.STAYS if sheet.locked else Kind.UNKNOWN
        return tuple(_proposal(one, kind, _kg(sheet, one), None, why) for one in sheet.sets)
    asked = next_step(done.table, done.reps, done.stopped)[1]
    to_kg, limit = _capped(sheet, asked)
    why = f"last time {_reps(done.reps)}: {next_why(done.table, done.reps, done.stopped)}{limit}"
    if abs(to_kg - now) < HAIR:
        return tuple(_proposal(one, Kind.STAYS, now, None, why) for one in sheet.sets)
    return tuple(_proposal(one, Kind.PROPOSED, now, to_kg, why) for one in sheet.sets)


def _why_not(sheet: SheetExercise, done: OcclusionDone | None, loads: set[float | None]) -> str:
    if sheet.locked:
        return sheet.locked
    if sheet.occlusion is None or sheet.occlusion.next is None or None in loads:
        return NO_TABLE
    if len(loads) > 1:
        return UNEQUAL
    if done is None or not done.reps:
        return NEVER_DONE
    if done.table is None:
        return NO_TABLE
    hold = done.table.hold_kg
    return OTHER_LOAD if any(abs(kg - hold) > HAIR for kg in done.loads_kg) else ""


def _capped(sheet: SheetExercise, kg: float) -> tuple[float, str]:
    """Within the day's cap, and what is said where it bites."""
    cap = min((sheet.loads[one.cap].kg for one in sheet.sets if one.cap is not None), default=kg)
    return (cap, f"; not above {cap:g} kg, the day's limit") if cap < kg - HAIR else (kg, "")


def _kg(sheet: SheetExercise, one: SheetSet) -> float | None:
    return None if one.load is None else sheet.loads[one.load].kg


def _reps(reps: Sequence[int]) -> str:
    return "-".join(f"{one}" for one in reps)


def _proposal(
    one: SheetSet, kind: Kind, from_kg: float | None, to_kg: float | None, why: str
) -> SetProposal:
    write = None if to_kg is None else Fixed(to_kg)
    return SetProposal(one.key, one.number, kind, from_kg, to_kg, why, write)
