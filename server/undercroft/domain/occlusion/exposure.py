"""How often a limb is restricted, and how much it had week by week."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from undercroft.domain.occlusion.dose import Dose
from undercroft.domain.occlusion.issue import Issue, stop, warn
from undercroft.domain.occlusion.ladder import FULL_DOSE, next_exposure, rung
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.site import Site, is_arm
from undercroft.domain.program.methods import Limb

DAY_H = 24
WEEK_DAYS = 7


@dataclass(frozen=True, slots=True)
class OcclusionDay:
    """One session with occlusion work, done or planned: its day and its limbs."""

    on: date
    limbs: frozenset[Limb]

    def has_like(self, limb: Limb) -> bool:
        """Was an arm, for an arm, or a leg, for a leg, worked on that day?"""
        return any(is_arm(one) == is_arm(limb) for one in self.limbs)


@dataclass(frozen=True, slots=True)
class WeekOfLimb:
    """What one limb had in the week that begins on that Monday."""

    week: date
    site: Site
    minutes: float
    reps: int
    sessions: int


def gap_issues(hours: float, last_exposure: int = FULL_DOSE) -> Iterator[Issue]:
    """Hours between two sessions of a limb; after the first exposures longer ones."""
    what = f"{hours:g} h between two sessions of a limb"
    least = rung(last_exposure).gap_h
    if hours < LIMITS.gap_stop_h:
        yield stop("gap", what, f"at least {LIMITS.gap_stop_h} h, better {LIMITS.gap_warn_h}")
    elif hours < least and least > LIMITS.gap_warn_h:
        yield stop("gap", what, f"at least {least} h after exposure {last_exposure}")
    elif hours < LIMITS.gap_warn_h:
        yield warn("gap", what, f"at least {LIMITS.gap_warn_h} h")


def exposure_on(
    done: Collection[OcclusionDay], on: date, limb: Limb, ill: Collection[date] = ()
) -> int:
    """The number of the exposure of that limb's sort, arms or legs, on that day."""
    return next_exposure([day.on for day in done if day.has_like(limb)], on, ill)


def frequency_issues(
    done: Sequence[OcclusionDay],
    planned: Sequence[OcclusionDay],
    days_a_week: int = LIMITS.days_a_week,
) -> list[tuple[date, Issue]]:
    """What is wrong with the planned days, by day, given those that were done.

    A day and the next are 24 h apart. `days_a_week` is a clinician's where it is tighter; a week
    is any seven days in a row.
    """
    found: list[tuple[date, Issue]] = []
    before = sorted(done, key=lambda day: day.on)
    for day in sorted(planned, key=lambda day: day.on):
        found += [(day.on, issue) for issue in _day_issues(before, day, days_a_week)]
        before.append(day)
    return found


def weekly(doses: Collection[Dose]) -> tuple[WeekOfLimb, ...]:
    """Minutes of wear, repetitions and sessions of each limb in each week, in order."""
    grouped: dict[tuple[date, Site], list[Dose]] = defaultdict(list)
    for dose in doses:
        monday = dose.on - timedelta(days=dose.on.weekday())
        grouped[monday, dose.site].append(dose)
    return tuple(
        WeekOfLimb(
            week=week,
            site=site,
            minutes=sum(one.seconds for one in some) / 60,
            reps=sum(one.reps for one in some),
            sessions=len(some),
        )
        for (week, site), some in sorted(grouped.items())
    )


def _day_issues(
    before: Sequence[OcclusionDay], day: OcclusionDay, days_a_week: int
) -> Iterator[Issue]:
    if any(one.on == day.on for one in before):
        yield stop("twice-a-day", "two sessions on one day", "one; twice a day is for the clinic")
    yield from _limb_gaps(before, day)
    if any(one.on == day.on - timedelta(days=1) for one in before):
        yield warn("days-in-a-row", "occlusion work on two days in a row", "a day between them")
    first = day.on - timedelta(days=WEEK_DAYS - 1)
    days = {one.on for one in before if first <= one.on <= day.on} | {day.on}
    most = min(days_a_week, LIMITS.days_a_week)
    if len(days) > most:
        yield stop("days-a-week", f"{len(days)} days within a week", f"at most {most}")


def _limb_gaps(before: Sequence[OcclusionDay], day: OcclusionDay) -> Iterator[Issue]:
    for limb in {is_arm(limb): limb for limb in sorted(day.limbs)}.values():
        earlier = [one for one in before if one.on < day.on and one.has_like(limb)]
        if earlier:
            last = earlier[-1].on
            yield from gap_issues((day.on - last).days * DAY_H, exposure_on(earlier, last, limb))
