"""The lock on occlusion work: open or not on a day, why, and what opens it. Nothing overrides it.

A sheet carries `state_on` of its day; a phone that holds the sheet keeps to `until` as well, and
asks the questions of the day before the first wrap goes on: `start_on`.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace
from datetime import date

from undercroft.domain.occlusion.clearance import (
    NO_CLINICIAN,
    ClinicianLimits,
    Prescription,
    tightest,
)
from undercroft.domain.occlusion.covering import Covered, covered_on
from undercroft.domain.occlusion.history import (
    ScreeningFile,
    Standing,
    reasons_of_day,
    standing_reasons,
)
from undercroft.domain.occlusion.lacking import lacking_on, lacking_today, valid_until
from undercroft.domain.occlusion.question import Outcome
from undercroft.domain.occlusion.reason import Reason
from undercroft.domain.occlusion.screening import gravest


@dataclass(frozen=True, slots=True)
class Lock:
    """Whether occlusion work may be sent and started on a day.

    why            every reason that closes it, in words, the gravest first
    what_opens_it  what these ask for
    do_now         what cannot wait, whatever becomes of the training
    until          the last day on which it stays open, if nothing happens
    company        open only with somebody there
    prescriptions  clinicians' own, recorded: with one there is no working out, moving, swapping
    limits         what clinicians allow; the product's own limits where they say nothing
    """

    open: bool
    outcome: Outcome
    why: tuple[str, ...] = ()
    what_opens_it: tuple[str, ...] = ()
    do_now: tuple[str, ...] = ()
    until: date | None = None
    company: bool = False
    prescriptions: tuple[Prescription, ...] = ()
    limits: ClinicianLimits = NO_CLINICIAN

    @property
    def as_prescribed(self) -> bool:
        """Is it open for a clinician's own prescription only?"""
        return bool(self.prescriptions)


def state_on(on: date, file: ScreeningFile) -> Lock:
    """The lock as it stands on that day, from everything on record."""
    return states_on([on], file)[on]


def states_on(days: Iterable[date], file: ScreeningFile) -> dict[date, Lock]:
    """The lock on each of many days, with the record read once."""
    standing = standing_reasons(file)
    return {on: _state(on, file, standing, reasons_of_day(file, on)) for on in days}


def lasting_on(days: Iterable[date], file: ScreeningFile) -> dict[date, Lock]:
    """As `states_on`, but for what closes a single day: whoever starts work looks at that anew."""
    standing = standing_reasons(file)
    return {on: _state(on, file, standing, ()) for on in days}


def start_on(on: date, file: ScreeningFile, after_check_due: bool = False) -> Lock:
    """The lock right before the first wrap: today's questions must have been answered too.

    `after_check_due`: the questions after the last occlusion work are open (`checks_due`).
    """
    lock = state_on(on, file)
    more = _closed(list(lacking_today(on, file, lock.company, after_check_due)))
    if more.open:
        return lock
    return replace(
        more,
        outcome=max(lock.outcome, more.outcome, key=lambda outcome: outcome.gravity),
        why=(*lock.why, *more.why),
        what_opens_it=(*lock.what_opens_it, *more.what_opens_it),
        do_now=lock.do_now,
    )


def _state(
    on: date, file: ScreeningFile, standing: Collection[Standing], of_day: Iterable[Reason]
) -> Lock:
    covered = covered_on(on, file, standing)
    closing = [one.closed for one in covered if one.closed is not None]
    closing += [*lacking_on(on, file), *of_day]
    return _closed(closing) if closing else _opened(file, covered)


def _opened(file: ScreeningFile, covered: Collection[Covered]) -> Lock:
    until = [max(clearance.until for clearance in one.by) for one in covered]
    if file.latest is not None:
        until.append(valid_until(file.latest))
    return Lock(
        open=True,
        outcome=Outcome.OPEN,
        until=min(until, default=None),
        company=any(one.company for one in covered),
        prescriptions=tuple(dict.fromkeys(each for one in covered for each in one.prescribed)),
        limits=tightest(clearance.limits for one in covered for clearance in one.by),
    )


def _closed(closing: Collection[Reason]) -> Lock:
    ranked = sorted(closing, key=lambda one: -one.outcome.gravity)
    return Lock(
        open=not closing,
        outcome=gravest(closing),
        why=tuple(dict.fromkeys(one.words for one in ranked)),
        what_opens_it=tuple(dict.fromkeys(one.opens for one in ranked)),
        do_now=tuple(dict.fromkeys(one.urgent for one in ranked if one.urgent)),
    )
