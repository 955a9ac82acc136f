"""Every check there is, in the order in which they are listed."""

from dataclasses import dataclass

from undercroft.domain import mechanics, occlusion
from undercroft.domain.program.checks import (
    loads,
    muscles,
    people,
    reserves,
    rigs,
    sessions,
    sides,
    speed,
    sprints,
    tipping,
)
from undercroft.domain.program.checks import occlusion as occlusion_checks
from undercroft.domain.program.checks.check import Check, run
from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.thresholds import TABLE, Thresholds
from undercroft.domain.program.finding import Finding, Severity

CHECKS: tuple[Check, ...] = (
    *loads.CHECKS,
    *reserves.CHECKS,
    *rigs.CHECKS,
    *speed.CHECKS,
    *occlusion_checks.CHECKS,
    *tipping.CHECKS,
    *people.CHECKS,
    *muscles.CHECKS,
    *sessions.CHECKS,
    *sides.CHECKS,
    *sprints.CHECKS,
)

BY_NAME: dict[str, Check] = {one.name: one for one in CHECKS}


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a check says what it says: a threshold with its value and source, or a source alone."""

    threshold: str
    value: str
    source: str
    movable: bool = False


def findings(context: CheckContext) -> tuple[Finding, ...]:
    """What all checks find, in the order of the block."""
    return run(CHECKS, context)


def movable(threshold: str) -> bool:
    """May a coach move it? Only where no `stop` rests on it."""
    users = [one for one in CHECKS if threshold in one.thresholds]
    return threshold in TABLE and all(one.severity is not Severity.STOP for one in users)


def reasons(one: Check, thresholds: Thresholds) -> tuple[Reason, ...]:
    """The check's source and its thresholds as they stand, for screens and the list of checks."""
    own = (Reason("", "", one.source),) if one.source else ()
    return (*own, *(_reason(name, thresholds) for name in one.thresholds))


def _reason(name: str, thresholds: Thresholds) -> Reason:
    subject, _, field = name.rpartition(".")
    if subject == "occlusion":
        basis = occlusion.BASIS[field]
        value = f"{getattr(occlusion.LIMITS, field)}"
        return Reason(name, value, f"{basis.source} ({basis.mark})")
    if subject == "mechanics":
        value = f"{getattr(mechanics.DEFAULT, field):g}"
        return Reason(name, value, mechanics.BASIS[field])
    row = TABLE[field]
    value = f"{getattr(thresholds, field):g} {row.unit}"
    return Reason(name, value, row.source, movable(name))
