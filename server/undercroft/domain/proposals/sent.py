"""What was known when a load was first sent: the maximum it was a share of, what was done last."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from undercroft.domain.proposals.proposal import Place
from undercroft.domain.sheet.standing import LiftStanding, Standing
from undercroft.domain.strength import estimate


@dataclass(frozen=True, slots=True)
class MaximumThen:
    """A maximum in kg, and the day of the last evidence in it."""

    kg: float
    at: date


@dataclass(frozen=True, slots=True)
class KnownThen:
    """Maxima by lift, and by exercise the load in kg of its first set when it was last done."""

    maxima: Mapping[str, MaximumThen] = field(default_factory=dict)
    last_kg: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class SentLoads:
    """A revision: each set's load as it was written, and what was known; None: nobody kept it."""

    loads: Mapping[Place, Any]
    known: KnownThen | None


def known_now(standing: Standing) -> KnownThen:
    """What is known, to be kept with what is sent now."""
    maxima = {lift: maximum_of(one) for lift, one in standing.lifts.items()}
    return KnownThen(maxima, dict(standing.last_kg))


def maximum_of(known: LiftStanding) -> MaximumThen:
    """The maximum after its last evidence, before any drift."""
    kg = estimate(known.state, known.settings).kg
    return MaximumThen(round(kg, 3), date.fromordinal(int(known.state.at_days)))


def first_sent(place: Place, history: Sequence[SentLoads]) -> KnownThen | None:
    """What was known when the set's load was first sent as it is written now.

    `history` holds the run's revisions, newest first. Sending again what stays as it is is no word
    of the coach's on that load: it remains a share of the maximum that it was written for.
    """
    now = history[0].loads.get(place) if history else None
    known = None
    for sent in history:
        if sent.loads.get(place) != now:
            break
        known = sent.known
    return known
