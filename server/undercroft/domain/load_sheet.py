"""The load sheet: a session worked out for one athlete on one kit.

All "kg" are kilograms of resistance (force / g where the force is not a hanging mass). Loads are
listed once per exercise and referred to by index, so that a sheet stays small on the wire.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from undercroft.domain.occlusion.next_load import NextLoad
from undercroft.domain.program.block import Rest
from undercroft.domain.program.methods import Details, Method, Side
from undercroft.domain.strength.notches import NotchTable


@dataclass(frozen=True, slots=True)
class SheetImplement:
    """The piece of the kit that is lifted; `sides` is 2 for a bar, 1 for a landmine, 0 for none."""

    kind: str
    name: str
    key: str | None = None
    mass_kg: float | None = None
    collars_kg: float = 0.0
    sides: int = 0
    sleeve_length_m: float | None = None


@dataclass(frozen=True, slots=True)
class SheetPlate:
    """A sort of plate in use, for drawing it; `label` where it is not just its kilograms."""

    kg: float
    thickness_m: float
    label: str = ""


@dataclass(frozen=True, slots=True)
class SheetLoad:
    """One load that the kit can make.

    `kg` is the total, `position` its place on the scale of strength (round(1000 · ln kg)), `side`
    the plates of one side innermost first; `pin_kg`, `add_ons_kg` and `piece_kg` (one dumbbell)
    where those are what is chosen.
    """

    kg: float
    position: int
    side: tuple[float, ...] = ()
    pin_kg: float | None = None
    add_ons_kg: tuple[float, ...] = ()
    piece_kg: float | None = None


@dataclass(frozen=True, slots=True)
class ForceCurve:
    """Resistance from start (0) to end (1) of the lift, in kg, with its doubt (one SD)."""

    start_kg: float
    mean_kg: float
    end_kg: float
    doubt_kg: float = 0.0
    points_kg: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Target:
    """What the athlete is asked to do in a set."""

    reps: int | None = None
    rir: float | None = None
    to_failure: bool = False
    percent: float | None = None
    seconds: float | None = None
    distance_m: float | None = None
    blocks: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class SheetSet:
    """A set: its target, the wish in kg, and the load chosen for it.

    `load`, `below`, `above`, `ladder` and `after` hold indices into the exercise's loads, which
    rise; `cap` is the largest that a suggestion may reach. `off_kg` is chosen minus wished.
    `ladder[i]` is the load for notch `base + i` of the notch table, and `turn` the set's place
    among those that give evidence of the lift's maximum. `after[i]` is the load when the
    exercise's first set was done with load `i`.
    """

    key: str
    number: int
    target: Target
    wish_kg: float | None = None
    load: int | None = None
    off_kg: float | None = None
    below: int | None = None
    above: int | None = None
    cap: int | None = None
    ladder: tuple[int, ...] = ()
    after: tuple[int, ...] = ()
    turn: int | None = None
    curve: ForceCurve | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class SheetMove:
    """One plate on or off one side of a bar that rests on two supports."""

    side: Side
    kg: float
    on: bool


@dataclass(frozen=True, slots=True)
class SheetOrder:
    """In which order to load and strip, alone, and the smallest margin of all those moves.

    `margin` is what would turn the bar over, over what hangs there; `advice` says what to do
    where even the best order is too near to it.
    """

    moves: tuple[SheetMove, ...]
    margin: float
    advice: str = ""


@dataclass(frozen=True, slots=True)
class RampSet:
    """A warm-up set: repetitions with the load of that index."""

    reps: int
    load: int
    share: float


@dataclass(frozen=True, slots=True)
class SheetMaximum:
    """What the loads were worked out from: the maximum in kg with its 90 % band."""

    lift: str
    kg: float
    low_kg: float
    high_kg: float
    source: str


class UseKind(StrEnum):
    """What sort of thing can fail an athlete; each has its words on the phone."""

    IMPLEMENT = "implement"
    BANDS = "bands"
    CHAINS = "chains"
    THING = "thing"
    CEILING = "ceiling"


@dataclass(frozen=True, slots=True)
class Use:
    """Something that an exercise cannot be done without, under one key wherever it is used.

    `lasting`: once it has failed, nothing else of the session may ask for it.
    """

    key: str
    kind: UseKind
    name: str
    lasting: bool = False


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another way that this kit has, with a load ready for each set (None: by feel).

    `key` names it where it is the same exercise rigged otherwise, else `exercise` does; `loads`
    also hold those around, so that the athlete can step away.
    """

    exercise: str
    name: str
    implement: SheetImplement
    loads: tuple[SheetLoad, ...]
    sets: tuple[int | None, ...]
    key: str = ""
    uses: tuple[Use, ...] = ()
    ramp: tuple[RampSet, ...] = ()
    rig: tuple[str, ...] = ()
    cue: str = ""
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SheetOcclusion:
    """What holds for an exercise with a wrap or cuff on; times in seconds.

    exposure        its number for these limbs, 1 being the first, with its rung in words
    after           keys of the sessions that must be done before, one exposure after the other
    holds_until     the last day on which it is that exposure; later, time away has taken it back
    away_days       so many days without work of these limbs take it back
    wear_s          predicted time with the wrap on; limit_s is when it must be off
    break_s         time off before the next exercise
    gap_h           hours since the last occlusion work of arms, for arms, or of legs, for legs
    most_tightness  of 10, for a wrap; pressure_mmhg for a cuff, with what it rests on in words
    until           the last day on which it stays open; company: only with somebody there
    expected        mean repetitions of such sets to failure
    limits          what a clinician added in words
    next            the load of the next time by the repetitions reached
    """

    exposure: int
    rung: str
    wear_s: int
    limit_s: int
    break_s: int
    gap_h: int
    away_days: int
    after: tuple[str, ...] = ()
    holds_until: date | None = None
    most_tightness: int | None = None
    pressure_mmhg: int | None = None
    pressure_basis: str = ""
    until: date | None = None
    company: bool = False
    expected: tuple[float, ...] = ()
    limits: str = ""
    next: NextLoad | None = None


@dataclass(frozen=True, slots=True)
class SheetExercise:
    """An exercise worked out. While `locked` says why, its sets cannot be started.

    `rig` says in lines which band or chain hangs where; `loading` and `stripping` are for the
    heaviest set, where the bar is light enough to turn over. `uses` is all that must be there.
    """

    key: str
    exercise: str
    name: str
    method: Method
    implement: SheetImplement
    sets: tuple[SheetSet, ...]
    loads: tuple[SheetLoad, ...] = ()
    ramp: tuple[RampSet, ...] = ()
    rest: Rest | None = None
    group: str | None = None
    cue: str = ""
    details: Details | None = None
    maximum: SheetMaximum | None = None
    notches: NotchTable | None = None
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    locked: str = ""
    occlusion: SheetOcclusion | None = None
    rig: tuple[str, ...] = ()
    loading: SheetOrder | None = None
    stripping: SheetOrder | None = None
    uses: tuple[Use, ...] = ()
    alternatives: tuple[Alternative, ...] = ()


@dataclass(frozen=True, slots=True)
class LoadSheet:
    """`through` is the last ledger position of the athlete that the loads take into account.

    `on` is the day for which the session is planned.
    """

    session: str
    name: str
    week: str
    week_name: str
    day: int
    athlete: str
    kit: str
    exercises: tuple[SheetExercise, ...]
    minutes: int
    needs: tuple[str, ...]
    plates: tuple[SheetPlate, ...] = ()
    note: str = ""
    on: date | None = None
    revision: int = 0
    through: int = 0
