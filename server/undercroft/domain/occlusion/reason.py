"""One reason why occlusion work is not simply open: what it is, and what opens it."""

from dataclasses import dataclass

from undercroft.domain.occlusion.question import Outcome, Question

CLEARANCE = "a clearance by a licensed clinician, recorded: who, the day, until when, which limits"
OPENS: dict[Outcome, str] = {
    Outcome.OPEN: "nothing more",
    Outcome.NEEDS_READING: "the coach's signature with a note, or a clinician's clearance",
    Outcome.NOT_TODAY: "another day",
    Outcome.INCOMPLETE: "an answer to every question of the screening",
    Outcome.DOCTOR_FIRST: CLEARANCE,
    Outcome.CLINICAL: "the clinician's own prescription, recorded with its cuff and limits",
    Outcome.LOCKED: CLEARANCE,
}
"""What opens each outcome, where a reason says nothing of its own."""

IN_COMPANY = "and then only in company, never alone"


@dataclass(frozen=True, slots=True)
class Reason:
    """`key` is what a clearance has to name; the other fields as in `Question`."""

    key: str
    outcome: Outcome
    words: str
    opens: str
    never_alone: bool = False
    passes: bool = False
    urgent: str = ""


def reason(
    key: str,
    outcome: Outcome,
    words: str,
    opens: str = "",
    urgent: str = "",
    *,
    never_alone: bool = False,
    passes: bool = False,
) -> Reason:
    """A reason with the usual words on what opens it, unless it brings its own."""
    usual = OPENS[outcome] + (f", {IN_COMPANY}" if never_alone else "")
    return Reason(key, outcome, words, opens or usual, never_alone, passes, urgent)


def reason_of(question: Question, reply: str) -> Reason:
    """The reason that "yes" or "not sure" to this question gives."""
    words = question.name if reply == "yes" else f"{question.name} (not sure, which counts as yes)"
    return reason(
        question.key,
        question.outcome,
        words,
        question.opens,
        question.urgent,
        never_alone=question.never_alone,
        passes=question.passes,
    )
