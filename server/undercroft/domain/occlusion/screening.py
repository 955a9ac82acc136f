"""From one screening's answers to a decision. Hard stops come first and nothing outweighs them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion.answers import Answered, Reply, day, read, said_yes
from undercroft.domain.occlusion.measures import age_on, measure_reasons, score
from undercroft.domain.occlusion.question import Asked, Kind, Outcome, Question
from undercroft.domain.occlusion.questions import BY_KEY, asked
from undercroft.domain.occlusion.reason import Reason, reason, reason_of
from undercroft.domain.occlusion.settings import LIMITS


@dataclass(frozen=True, slots=True)
class Decision:
    """The gravest outcome of all reasons, and every reason, the gravest first.

    `OPEN` means: the coach reads it and signs, and then it is open.
    """

    outcome: Outcome
    reasons: tuple[Reason, ...]
    points: int = 0


def decide(answered: Answered, trains_alone: bool = True) -> Decision:
    """Where the answers lead: those of a screening, or those of the day.

    `trains_alone` is what the coach has on record; the athlete's own yes counts as much. Answers
    that are missing or cannot be read keep the decision from being milder than incomplete.
    """
    found = list(answer_reasons(answered))
    if answered.asked is Asked.TODAY:
        return _decision(found)
    born = day(answered, "born")
    if born is not None:
        alone = trains_alone or said_yes(answered, "alone")
        found += under_age(age_on(born, answered.on), alone)
    return _decision(found, score(answered))


def answer_reasons(answered: Answered) -> Iterator[Reason]:
    """Every reason that the answers give, from whatever can be read.

    An answer that does not belong among the others is looked at all the same.
    """
    when = answered.asked
    for question in asked(when):
        yield from _of_question(question, answered)
    for key in answered.given:
        if key in BY_KEY and BY_KEY[key].asked is not when:
            yield from _of_question(BY_KEY[key], answered)
        if key not in BY_KEY:
            words = f"an answer to a question that is not known here: {key!r}"
            opens = "an up-to-date app, and the screening anew"
            yield reason(key, Outcome.INCOMPLETE, words, opens)
    if when is Asked.SCREENING:
        yield from measure_reasons(answered)


def under_age(age: int, alone: bool) -> list[Reason]:
    """The reason for somebody under 18: never alone, and in company a doctor first."""
    if age >= LIMITS.grown_up_years:
        return []
    outcome = Outcome.LOCKED if alone else Outcome.DOCTOR_FIRST
    words = f"age {age}, under {LIMITS.grown_up_years}"
    return [reason("under-age", outcome, words, never_alone=True)]


def gravest(reasons: Iterable[Reason]) -> Outcome:
    return max(
        (one.outcome for one in reasons), key=lambda outcome: outcome.gravity, default=Outcome.OPEN
    )


def _decision(found: list[Reason], points: int = 0) -> Decision:
    ranked = sorted(found, key=lambda one: -one.outcome.gravity)
    closing = tuple(one for one in ranked if one.outcome is not Outcome.OPEN)
    return Decision(gravest(closing), closing, points)


def _of_question(question: Question, answered: Answered) -> Iterator[Reason]:
    if question.kind is Kind.YES_NO and answered.given.get(question.key) == Reply.NO:
        return
    if question.key not in answered.given:
        words = f"not answered: {question.text}"
        yield reason(question.key, Outcome.INCOMPLETE, words)
        return
    try:
        reply = read(question, answered.given[question.key])
    except DomainError as fault:
        yield reason(question.key, Outcome.INCOMPLETE, fault.what, fault.right)
        return
    if question.kind is Kind.YES_NO:
        yield reason_of(question, str(reply))
