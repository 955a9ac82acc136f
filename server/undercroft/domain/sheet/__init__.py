"""Prescription + athlete + kit = load sheet."""

from undercroft.domain.sheet.explain import Step, explain
from undercroft.domain.sheet.offers import Offer, Offers, offers
from undercroft.domain.sheet.session import Order, WorkedOut, day_of_session, work_out
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
    "Offer",
    "Offers",
    "Order",
    "Standing",
    "Step",
    "WorkedOut",
    "day_of_session",
    "explain",
    "lift_standing",
    "offers",
    "settings_for",
    "standing_of",
    "work_out",
]
