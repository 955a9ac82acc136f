"""The checks before sending: each one rule with its name, severity, threshold, source and mend."""

from undercroft.domain.program.checks.check import Check, run
from undercroft.domain.program.checks.context import Away, Background, CheckContext, look_at
from undercroft.domain.program.checks.moves import Move, move, with_moves
from undercroft.domain.program.checks.overrules import (
    Overrule,
    may_overrule,
    overrule,
    standing_stops,
)
from undercroft.domain.program.checks.registry import (
    BY_NAME,
    CHECKS,
    Reason,
    findings,
    movable,
    reasons,
)
from undercroft.domain.program.checks.thresholds import DEFAULT, TABLE, Threshold, Thresholds

__all__ = [
    "BY_NAME", "CHECKS", "DEFAULT", "TABLE", "Away", "Background", "Check", "CheckContext", "Move",
    "Overrule", "Reason", "Threshold", "Thresholds", "findings", "look_at",
    "may_overrule", "movable", "move", "overrule", "reasons", "run", "standing_stops", "with_moves",
]  # fmt: skip
