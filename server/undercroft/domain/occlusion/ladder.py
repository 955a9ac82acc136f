"""The first exposures: one rung after the other, back down after time away.

Unaccustomed work to failure is the pattern behind most reports of muscle breakdown, so the first
exposures are small and end well short of it. The figures are our own choice, after "begin modestly
and progress gradually" (Clark & Manini 2017, seen) and the damage after a first bout to failure
(Sieljacks et al. 2016, seen).
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion.issue import Issue, stop
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.work import HAIR, Work, WorkSet


@dataclass(frozen=True, slots=True)
class Rung:
    """What an exposure may hold at the most; `gap_h` is the least time to the next one."""

    exercises: int
    reps: tuple[int, ...]
    load_percent: float
    most_tightness: int
    to_failure: bool
    gap_h: int
    both_at_once: bool = True


FIRST = Rung(1, (15, 15), 20.0, 5, False, 72, both_at_once=False)
SECOND = Rung(1, (20, 15, 15), 20.0, 6, False, 72)
THIRD = Rung(2, (30, 15, 15), 30.0, 6, False, 48)
FULL = Rung(2, (30, 15, 15, 15), LIMITS.most_load_percent, 7, True, 48)

RUNGS = (FIRST, SECOND, THIRD, THIRD, FULL)
FULL_DOSE = len(RUNGS)
"""The exposure from which on the full dose is allowed."""


def rung(exposure: int) -> Rung:
    """The rung for that exposure, 1 being the first; the full dose from the fifth on."""
    if exposure < 1:
        raise LoadError("exposure", exposure, "1 for the first, and up")
    return RUNGS[min(exposure, len(RUNGS)) - 1]


def next_exposure(done: Collection[date], on: date, ill: Collection[date] = ()) -> int:
    """The number of the exposure on that day, 1 to 5, after those of the same limbs on `done`.

    Two steps back for every three weeks without, and two for an illness since the last one.
    """
    days = sorted({day for day in done if day < on})
    taken = 0
    for day, following in zip(days, [*days[1:], on], strict=False):
        away = (following - day).days // LIMITS.away_days
        back = away or any(day <= one < following for one in ill)
        taken = max(0, min(taken + 1, FULL_DOSE - 1) - LIMITS.steps_back * back)
    return taken + 1


def count_issues(exposures: Collection[int]) -> Iterator[Issue]:
    """Exercises of one session, each told by its limb's exposure: the lowest rung counts."""
    lowest = min(exposures, default=FULL_DOSE)
    if len(exposures) > rung(lowest).exercises:
        what = f"{len(exposures)} occlusion exercises in a session at exposure {lowest}"
        yield stop("exposure-exercises", what, in_words(lowest))


def ladder_issues(work: Work, exposure: int) -> Iterator[Issue]:
    """What an exercise holds beyond the rung of its limb's exposure."""
    allowed, right = rung(exposure), in_words(exposure)
    if allowed is not FULL and _too_much(work, allowed):
        done = "-".join("failure" if s.reps is None else str(s.reps) for s in work.sets)
        yield stop("exposure-dose", f"{done} at exposure {exposure}", right)
    if not allowed.to_failure and any(_near_failure(one) for one in work.sets):
        yield stop(
            "exposure-failure", f"sets to failure, or near it, at exposure {exposure}", right
        )
    if allowed is not FULL and (work.load_percent or 0) > allowed.load_percent + HAIR:
        what = f"{work.load_percent:g} % of the maximum at exposure {exposure}"
        yield stop("exposure-load", what, right)
    if work.both_at_once and not allowed.both_at_once:
        yield stop("exposure-limbs", f"two limbs at once at exposure {exposure}", right)


def in_words(exposure: int) -> str:
    """The rung as a line for people."""
    allowed = rung(exposure)
    sets = "-".join(str(reps) for reps in allowed.reps)
    exercises = "one exercise" if allowed.exercises == 1 else "two exercises at the most"
    reserve = f", at least {LIMITS.first_reserve} repetitions short of failure"
    end = "" if allowed.to_failure else reserve
    limbs = "" if allowed.both_at_once else ", one limb after the other"
    load = f"at most {allowed.load_percent:g} % of the maximum"
    return f"exposure {exposure}: {exercises}, {sets}, {load}{end}{limbs}"


def _near_failure(one: WorkSet) -> bool:
    return one.to_failure or (one.rir is not None and one.rir < LIMITS.first_reserve)


def _too_much(work: Work, allowed: Rung) -> bool:
    if len(work.sets) > len(allowed.reps):
        return True
    return any(
        one.reps is None or one.reps > most
        for one, most in zip(work.sets, allowed.reps, strict=False)
    )
