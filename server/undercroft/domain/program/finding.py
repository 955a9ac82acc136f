"""What was found when a block was worked out or checked: one line, its place, and the mend."""

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    STOP = "stop"
    WARN = "warn"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Finding:
    """`where` is for people, `path` for programs (`weeks.0.sessions.1.exercises.2.sets.0`).

    `check` is the name of the check that found it; empty where working out alone came upon it.
    """

    severity: Severity
    where: str
    path: str
    what: str
    right: str
    check: str = ""
