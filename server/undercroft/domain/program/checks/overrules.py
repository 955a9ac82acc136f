"""Stops that a coach has overruled in writing, and those that still forbid sending."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date

from undercroft.domain.errors import DomainError
from undercroft.domain.program.checks.registry import BY_NAME
from undercroft.domain.program.finding import Finding, Severity


@dataclass(frozen=True, slots=True)
class Overrule:
    """A stop set aside for one place; what it said then must still be what it says."""

    check: str
    path: str
    what: str
    by: str
    on: date
    why: str


def overrule(finding: Finding, by: str, on: date, why: str) -> Overrule:
    """Set a stop aside in writing. DomainError where it cannot be, or where no reason is given."""
    if not may_overrule(finding):
        right = "mend it: nobody can overrule this"
        raise DomainError(finding.where, finding.what, right)
    if not why.strip():
        raise DomainError(finding.where, "is overruled without a word", "say why, in writing")
    return Overrule(finding.check, finding.path, finding.what, by, on, why.strip())


def may_overrule(finding: Finding) -> bool:
    """Only a stop of a check that is not final; what could not be worked out cannot be sent."""
    known = BY_NAME.get(finding.check)
    return finding.severity is Severity.STOP and known is not None and not known.final


def standing_stops(
    findings: Iterable[Finding], overrules: Collection[Overrule] = ()
) -> tuple[Finding, ...]:
    """The stops that still forbid sending."""
    aside = {(one.check, one.path, one.what) for one in overrules}
    return tuple(
        one
        for one in findings
        if one.severity is Severity.STOP
        and not (may_overrule(one) and (one.check, one.path, one.what) in aside)
    )
