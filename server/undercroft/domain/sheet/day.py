"""Everything that a session's arithmetic looks at, for one athlete on one day."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from math import exp

from undercroft.domain.athlete import Athlete
from undercroft.domain.exercise import Catalogue, Implement
from undercroft.domain.kit import Kit
from undercroft.domain.load_sheet import SheetMaximum
from undercroft.domain.mechanics import BandLaw
from undercroft.domain.occlusion import Ahead, Lock, OcclusionRecord
from undercroft.domain.one_arm import with_one_arm
from undercroft.domain.program.block import ExercisePlan
from undercroft.domain.program.methods import Limb
from undercroft.domain.sheet.pieces import Piece, Pieces
from undercroft.domain.sheet.standing import LiftStanding, Standing, on_day
from undercroft.domain.strength import NotchTable, estimate
from undercroft.domain.strength.reserve import FEWEST, lean
from undercroft.domain.strength.scale import PER_MILLE


@dataclass(frozen=True, slots=True, eq=False)
class OcclusionToday:
    """What holds of occlusion work on the day: the record, its lock, the exposure by limb."""

    record: OcclusionRecord
    lock: Lock
    ahead: Mapping[Limb, Ahead]


@dataclass(frozen=True, slots=True, eq=False)
class Day:
    """`tables` and `turns` are the notch tables of the day by lift and each set's place in them."""

    on: date
    athlete: Athlete
    kit: Kit
    catalogue: Catalogue
    pieces: Pieces
    laws: Mapping[str, BandLaw]
    standing: Standing
    tables: Mapping[str, NotchTable]
    turns: Mapping[str, int]
    occlusion: OcclusionToday | None = None

    def lift(self, lift: str) -> LiftStanding | None:
        return self.standing.lifts.get(lift)


def implement_for(plan: ExercisePlan, catalogue: Catalogue) -> Implement:
    """What the coach asked for, or what the exercise is usually done with."""
    if plan.implement:
        return Implement(plan.implement)
    exercise = catalogue[plan.exercise]
    if exercise.implement is Implement.DUMBBELLS and with_one_arm(plan, exercise):
        return Implement.DUMBBELL
    return exercise.implement


def piece_for(day: Day, plan: ExercisePlan) -> Piece | None:
    """What the exercise is done with here; None where the kit has no such piece."""
    return day.pieces.find(implement_for(plan, day.catalogue), plan.exercise)


def maximum_on(day: Day, lift: str) -> SheetMaximum | None:
    """The maximum in kg as it is expected on the day, with its 90 % band."""
    known = day.lift(lift)
    if known is None:
        return None
    told = estimate(on_day(known, day.on), known.settings)
    return SheetMaximum(lift, told.kg, told.low_kg, told.high_kg, known.source)


def strength_at(day: Day, lift: str, n: float) -> float | None:
    """The maximum in kg as seen at n repetitions to failure: the athlete's own curve is in it."""
    known = day.lift(lift)
    if known is None:
        return None
    state = on_day(known, day.on)
    table = day.tables.get(lift)
    level = table.level / PER_MILLE if table else state.level
    return exp(level + state.tilt * lean(n))


def full_strength(day: Day, lift: str) -> float | None:
    """The one-repetition maximum in kg on the day."""
    return strength_at(day, lift, FEWEST)
