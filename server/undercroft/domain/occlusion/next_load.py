"""The next load by the repetitions reached, as a small table that goes with the sheet.

Up by the smallest step when the last set went above its target (fourth set above 15: PMC7534706
Table 3, seen); down one when the first stayed under two thirds, down a tenth and a question when
the total stayed under half (our own choice). Never above 40 % of the maximum.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import ceil
from types import MappingProxyType

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion.ladder import RUNGS
from undercroft.domain.occlusion.pattern import aims
from undercroft.domain.occlusion.protocol import expected_in
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.work import HAIR, WorkSet

ASK = "Under half of the repetitions: is the wrap too tight, the load wrong, or are you unwell?"


class Step(StrEnum):
    UP = "up"
    HOLD = "hold"
    DOWN = "down"
    DOWN_A_TENTH = "down-a-tenth"


WHY: Mapping[Step, str] = MappingProxyType(
    {
        Step.UP: "last set above its target",
        Step.HOLD: "the repetitions ask for no other load",
        Step.DOWN: "first set under two thirds of its target",
        Step.DOWN_A_TENTH: ASK,
    }
)
"""What the repetitions said, for the line beside the next load."""


@dataclass(frozen=True, slots=True)
class NextLoad:
    """Looked at from top to bottom, in whole repetitions; the first that holds decides.

    sets         a list with fewer sets than this holds the load
    total_under  all repetitions together below this: `tenth_kg`, and the question `ASK`
    first_under  the first set below this: `down_kg`
    last_over    the last set above this: `up_kg`; otherwise `hold_kg`
    """

    sets: int
    total_under: int
    first_under: int
    last_over: int
    up_kg: float
    hold_kg: float
    down_kg: float
    tenth_kg: float


def next_load_table(
    sets: Sequence[WorkSet],
    loads_kg: Sequence[float],
    used_kg: float,
    maximum_kg: float | None,
    exposure: int,
    most_percent: float = LIMITS.most_load_percent,
) -> NextLoad:
    """The table for an exercise done with `used_kg` of the rising loads that the kit can make.

    No step up without a known maximum or before the full dose; `most_percent` is a clinician's
    limit where it is tighter. A clinician's prescription gets no table: do not call this for it.
    """
    if not sets or not loads_kg:
        raise LoadError("sets and loads", "empty", "at least one of each")
    percent = min(most_percent, LIMITS.most_load_percent)
    cap = max(loads_kg) if maximum_kg is None else maximum_kg * percent / 100
    fit = [kg for kg in loads_kg if kg <= cap + HAIR]
    if not fit:
        raise LoadError("loads", f"from {min(loads_kg):g} kg up", f"one of at most {cap:g} kg")
    targets = aims(sets)
    hold = max((kg for kg in fit if kg <= used_kg + HAIR), default=fit[0])
    may_rise = maximum_kg is not None and exposure >= len(RUNGS)
    tenth = hold * (1 - LIMITS.down_percent / 100)
    return NextLoad(
        sets=len(sets),
        total_under=ceil(sum(targets) / 2),
        first_under=ceil(targets[0] * 2 / 3),
        last_over=_last_over(sets),
        up_kg=min((kg for kg in fit if kg > hold + HAIR), default=hold) if may_rise else hold,
        hold_kg=hold,
        down_kg=max((kg for kg in fit if kg < hold - HAIR), default=hold),
        tenth_kg=max((kg for kg in fit if kg <= tenth + HAIR), default=fit[0]),
    )


def next_step(table: NextLoad, reps: Sequence[int], stopped: bool = False) -> tuple[Step, float]:
    """The step that the repetitions ask for, and its load in kg; `stopped` by a sign holds."""
    if stopped or len(reps) < table.sets:
        return Step.HOLD, table.hold_kg
    if sum(reps) < table.total_under:
        return Step.DOWN_A_TENTH, table.tenth_kg
    if reps[0] < table.first_under:
        return Step.DOWN, table.down_kg
    if reps[table.sets - 1] > table.last_over:
        return Step.UP, table.up_kg
    return Step.HOLD, table.hold_kg


def next_why(table: NextLoad, reps: Sequence[int], stopped: bool = False) -> str:
    """Why the next load is what `next_step` says, in words."""
    if stopped:
        return "the session was stopped"
    if len(reps) < table.sets:
        return "not every set was done"
    step, kg = next_step(table, reps)
    stays = step in (Step.UP, Step.DOWN) and kg == table.hold_kg
    return f"{WHY[step]}, but no other load is open here" if stays else WHY[step]


def _last_over(sets: Sequence[WorkSet]) -> int:
    """The aim; to failure at least what the studies' means can be expected to reach."""
    last = sets[-1]
    usual = ceil(expected_in(len(sets) - 1).high)
    return max(last.reps or 0, usual) if last.to_failure or last.reps is None else last.reps
