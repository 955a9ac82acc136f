"""What a screening question is, and where an answer to it leads."""

from dataclasses import dataclass
from enum import StrEnum

from undercroft.domain.occlusion.basis import Basis


class Outcome(StrEnum):
    """Where answers lead, from the mildest to the gravest; the gravest alone decides.

    `INCOMPLETE` is a screening with a question open, out of date, or unread by the coach.
    """

    OPEN = "open"
    NEEDS_READING = "needs-reading"
    NOT_TODAY = "not-today"
    INCOMPLETE = "incomplete"
    DOCTOR_FIRST = "doctor-first"
    CLINICAL = "clinical"
    LOCKED = "locked"

    @property
    def gravity(self) -> int:
        return list(Outcome).index(self)


FOR_A_CLINICIAN = frozenset({Outcome.DOCTOR_FIRST, Outcome.CLINICAL, Outcome.LOCKED})
"""Outcomes that stay, whatever is answered later, until a clearance is recorded."""


class Kind(StrEnum):
    YES_NO = "yes-no"
    NUMBER = "number"
    DATE = "date"
    CHOICE = "choice"


class Asked(StrEnum):
    """In the screening, every six months; or on the day, before the first wrap goes on."""

    SCREENING = "screening"
    TODAY = "today"


@dataclass(frozen=True, slots=True)
class Question:
    """A question, in plain words of our own, put so that "yes" is never the safer answer.

    name         the condition in a few words, as it stands in a reason
    outcome      where "yes" leads; "not sure" leads to the same
    points       what "yes" adds to the counted cautions
    never_alone  a clearance opens it only for work in company
    passes       it can end and come back: a new "yes" asks for a new clearance
    renews       "yes" makes the screening out of date
    opens        what opens it, where that is something of its own
    urgent       what to do now, whatever becomes of the training
    least, most  bounds of a number, in `unit`; beyond them it is a slip of the pen
    """

    key: str
    name: str
    text: str
    basis: Basis
    outcome: Outcome = Outcome.OPEN
    kind: Kind = Kind.YES_NO
    asked: Asked = Asked.SCREENING
    points: int = 0
    never_alone: bool = False
    passes: bool = False
    renews: bool = False
    opens: str = ""
    urgent: str = ""
    least: float = 0.0
    most: float = 0.0
    unit: str = ""
    choices: tuple[str, ...] = ()
