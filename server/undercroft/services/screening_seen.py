"""What the desk sees of a screening: answers, reasons, records, what comes next."""

from dataclasses import dataclass
from datetime import date
from typing import Any

from undercroft.domain.occlusion import Lock


@dataclass(frozen=True, slots=True)
class AnswerSeen:
    """One answer in words; `outcome` is where it leads, empty where it leads nowhere."""

    key: str
    question: str
    answer: str
    outcome: str


@dataclass(frozen=True, slots=True)
class AnsweredSeen:
    """One set of answers; `kind` is screening or today."""

    id: str
    on: date
    kind: str
    answers: list[AnswerSeen]


@dataclass(frozen=True, slots=True)
class ReasonSeen:
    """Why it is not simply open; `coverable`: a clearance can name it.

    `covered`: it closes nothing any more; a clearance covers it, or a note with the signature.
    """

    key: str
    outcome: str
    words: str
    opens: str
    urgent: str
    coverable: bool
    covered: bool


@dataclass(frozen=True, slots=True)
class AfterSeen:
    """The questions after occlusion work, as they were answered."""

    on: date
    hours: int
    signs: list[str]
    do_now: list[str]
    locks: bool


@dataclass(frozen=True, slots=True)
class RecordSeen:
    """What a coach recorded; `body` is the document of its kind."""

    number: int
    kind: str
    recorded_at: int
    withdrawn_at: int | None
    body: dict[str, Any]


@dataclass(frozen=True, slots=True)
class ExposureSeen:
    """The next exposure of arms or legs, if it came today, and what it may hold."""

    limb: str
    number: int
    rung: str


@dataclass(frozen=True, slots=True)
class ScreeningPage:
    """Everything at once; `latest` is the screening to be read and signed."""

    asked_at: int | None
    lock: Lock
    signed: bool
    latest: AnsweredSeen | None
    earlier: list[AnsweredSeen]
    reasons: list[ReasonSeen]
    after: list[AfterSeen]
    records: list[RecordSeen]
    exposures: list[ExposureSeen]
