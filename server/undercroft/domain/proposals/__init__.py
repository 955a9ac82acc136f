"""What the next sessions' loads should become, with reasons; the coach decides."""

from undercroft.domain.proposals.accepted import with_accepted
from undercroft.domain.proposals.occlusion import OcclusionDone
from undercroft.domain.proposals.proposal import (
    ExerciseProposals,
    Kind,
    Place,
    SessionProposals,
    SetProposal,
    proposed_in,
)
from undercroft.domain.proposals.propose import Evidence, propose
from undercroft.domain.proposals.sent import KnownThen, MaximumThen, SentLoads, known_now
from undercroft.domain.proposals.written import with_loads

__all__ = [
    "Evidence",
    "ExerciseProposals",
    "Kind",
    "KnownThen",
    "MaximumThen",
    "OcclusionDone",
    "Place",
    "SentLoads",
    "SessionProposals",
    "SetProposal",
    "known_now",
    "propose",
    "proposed_in",
    "with_accepted",
    "with_loads",
]
