"""How well a figure or a rule is founded: its mark, and where it comes from."""

from dataclasses import dataclass
from enum import StrEnum


class Mark(StrEnum):
    """How the source was had. Only `SEEN` was read where it was first published."""

    SEEN = "seen"
    SECOND_HAND = "seen in a secondary page"
    P_FROM_MEMORY = "P from memory"
    FROM_MEMORY = "from memory"
    DERIVED = "derived"
    COMMON_PRACTICE = "common practice"
    OWN_CHOICE = "our own choice"


@dataclass(frozen=True, slots=True)
class Basis:
    """The line that answers "why this?". P is Patterson et al. 2019, Front Physiol 10:533."""

    mark: Mark
    source: str
