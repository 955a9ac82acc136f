"""Prescription + athlete + kit = load sheet."""

from undercroft.domain.sheet.explain import Step, explain
from undercroft.domain.sheet.session import Order, WorkedOut, work_out
from undercroft.domain.sheet.standing import (
    DoneSession,
    LiftStanding,
    Standing,
    lift_standing,
    settings_for,
    standing_of,
)

__all__ = [
    "DoneSession",
    "LiftStanding",
    "Order",
    "Standing",
    "Step",
    "WorkedOut",
    "explain",
    "lift_standing",
    "settings_for",
    "standing_of",
    "work_out",
]
