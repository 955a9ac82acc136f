"""All that the limits say of a session's occlusion exercises as they are planned."""

from collections.abc import Iterator, Sequence

from undercroft.domain.occlusion.clearance import NO_CLINICIAN, ClinicianLimits
from undercroft.domain.occlusion.issue import Issue
from undercroft.domain.occlusion.ladder import count_issues, ladder_issues
from undercroft.domain.occlusion.placing import placing_issues
from undercroft.domain.occlusion.protocol import (
    load_issues,
    predicted_wear_s,
    shape_issues,
    wear_issues,
)
from undercroft.domain.occlusion.restriction import restriction_issues
from undercroft.domain.occlusion.work import Work


def work_issues(
    work: Work, exposure: int, measured: bool, limits: ClinicianLimits = NO_CLINICIAN
) -> Iterator[Issue]:
    """One exercise at its limb's exposure (`exposure_on`), within a clinician's limits."""
    yield from placing_issues(work.limb)
    yield from restriction_issues(work, exposure, measured, limits)
    yield from shape_issues(work)
    yield from load_issues(work.load_percent, limits.load_percent)
    yield from wear_issues(predicted_wear_s(work), limits.wear_minutes)
    yield from ladder_issues(work, exposure)


def session_issues(
    works: Sequence[tuple[Work, int]],
    measured: bool = False,
    limits: ClinicianLimits = NO_CLINICIAN,
) -> Iterator[tuple[int | None, Issue]]:
    """The exercises with their exposures; by place in `works`, None for the session as a whole."""
    for place, (work, exposure) in enumerate(works):
        for issue in work_issues(work, exposure, measured, limits):
            yield place, issue
    for issue in count_issues([exposure for _, exposure in works]):
        yield None, issue
