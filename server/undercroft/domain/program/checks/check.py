"""What a check is: one rule that is looked at before sending, and how to say what it finds."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from undercroft.domain.program.checks.context import CheckContext
from undercroft.domain.program.checks.place import Place
from undercroft.domain.program.finding import Finding, Severity


@dataclass(frozen=True, slots=True)
class Found:
    """A place, and the values that go into the check's message and mend."""

    place: Place
    values: Mapping[str, Any]


Look = Callable[[CheckContext], Iterator[Found]]


@dataclass(frozen=True, slots=True)
class Check:
    """One check. `message` and `mend` are texts with {values} in them.

    `thresholds` are names of `Thresholds`, or of the settings of occlusion and mechanics with
    "occlusion." and "mechanics." before them. `final`: nobody can overrule it.
    """

    name: str
    severity: Severity
    looks_for: str
    message: str
    mend: str
    source: str
    thresholds: tuple[str, ...]
    final: bool
    look: Look


def check(
    name: str,
    severity: Severity,
    *,
    looks_for: str,
    message: str,
    mend: str,
    source: str = "",
    thresholds: tuple[str, ...] = (),
    final: bool = False,
) -> Callable[[Look], Check]:
    """Make a check out of the function that looks. Where thresholds say why, `source` is empty."""

    def made(look: Look) -> Check:
        return Check(name, severity, looks_for, message, mend, source, thresholds, final, look)

    return made


def run(checks: Iterable[Check], context: CheckContext) -> tuple[Finding, ...]:
    """The findings of these checks, in the order of their places in the block."""
    told = [(found, one) for one in checks for found in one.look(context)]
    return tuple(_finding(found, one) for found, one in sorted(told, key=lambda t: t[0].place.at))


def _finding(found: Found, one: Check) -> Finding:
    return Finding(
        severity=one.severity,
        where=found.place.where,
        path=found.place.path,
        what=one.message.format_map(found.values),
        right=one.mend.format_map(found.values),
        check=one.name,
    )
