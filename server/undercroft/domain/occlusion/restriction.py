"""What restricts the flow as planned: a wrap's tightness, or a cuff's pressure, never both."""

from collections.abc import Iterator

from undercroft.domain.occlusion.clearance import NO_CLINICIAN, ClinicianLimits
from undercroft.domain.occlusion.issue import Issue, stop
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.tightness import tightness_issues
from undercroft.domain.occlusion.work import Work
from undercroft.domain.program.methods import Restriction

EARLY = 2


def restriction_issues(
    work: Work, exposure: int, measured: bool, limits: ClinicianLimits = NO_CLINICIAN
) -> Iterator[Issue]:
    """Tightness or pressure against the limits; `measured`: an occlusion pressure is on file."""
    if work.restriction is Restriction.WRAP:
        yield from tightness_issues(work.tightness, work.limb, exposure, limits.tightness)
        if work.pressure_percent is not None:
            what = f"{work.pressure_percent:g} % of occlusion with a wrap"
            yield stop("wrap-pressure", what, "a tightness: a wrap has no gauge")
    else:
        yield from _pressure(work, exposure, measured, limits.pressure_percent)


def _pressure(work: Work, exposure: int, measured: bool, clinician: float) -> Iterator[Issue]:
    most = min(clinician, LIMITS.most_pressure_percent)
    if not measured:
        most = min(most, LIMITS.most_estimated_percent)
    if exposure <= EARLY:
        most = min(most, LIMITS.most_first_percent)
    known = "a measured" if measured else "an estimated"
    right = f"{LIMITS.least_pressure_percent:g}-{most:g} % of {known} occlusion pressure"
    if work.pressure_percent is None:
        yield stop("pressure", "no pressure is given for the cuff", right)
    elif not LIMITS.least_pressure_percent <= work.pressure_percent <= most:
        what = f"{work.pressure_percent:g} % of {known} occlusion pressure"
        yield stop("pressure", what, f"{right} at exposure {exposure}")
