"""What is wrong with planned or done occlusion work, before anybody says where it stands."""

from dataclasses import dataclass

from undercroft.domain.program.finding import Severity


@dataclass(frozen=True, slots=True)
class Issue:
    """`key` names the rule; a check adds the place and makes a finding of it."""

    key: str
    severity: Severity
    what: str
    right: str


def stop(key: str, what: str, right: str) -> Issue:
    return Issue(key, Severity.STOP, what, right)


def warn(key: str, what: str, right: str) -> Issue:
    return Issue(key, Severity.WARN, what, right)


def note(key: str, what: str, right: str) -> Issue:
    return Issue(key, Severity.NOTE, what, right)
