"""Answers as they come in from a phone, and how each is read."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Never

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion.question import Asked, Kind, Question
from undercroft.domain.occlusion.questions import BY_KEY


class Reply(StrEnum):
    """Not sure is a full answer, and leads wherever yes leads."""

    YES = "yes"
    NO = "no"
    NOT_SURE = "not-sure"


@dataclass(frozen=True, slots=True)
class Answered:
    """One set of answers, as given: `given` by question key.

    `on` is the day of answering; where a server knows when it took the answers in, the earlier of
    that day and the phone's, so that a clock gone ahead makes no screening last longer.
    """

    id: str
    on: date
    given: Mapping[str, object]

    @property
    def asked(self) -> Asked:
        """A screening as soon as it answers one question of the screening."""
        known = [BY_KEY[key] for key in self.given if key in BY_KEY]
        screening = any(one.asked is Asked.SCREENING for one in known)
        return Asked.SCREENING if screening or not known else Asked.TODAY


def check_answers(given: Mapping[str, object], when: Asked) -> None:
    """Refuse answers with a question open, one that is not asked then, or one of another kind.

    Raises DomainError with the place `answers.<key>`.
    """
    for key in given:
        if key not in BY_KEY or BY_KEY[key].asked is not when:
            raise DomainError(
                f"answers.{key}", f"is no question of the {when}", "leave it out, or update"
            )
    for question in BY_KEY.values():
        if question.asked is when and question.key not in given:
            raise DomainError(f"answers.{question.key}", "is missing", _right(question))
        if question.asked is when:
            read(question, given[question.key])


def said_yes(answered: Answered, key: str) -> bool:
    """Yes, or not sure, to a question that takes yes or no."""
    return answered.given.get(key) in (Reply.YES, Reply.NOT_SURE)


def read(question: Question, value: object) -> Reply | float | date | str:
    """The answer, in the type of its kind. Raises DomainError."""
    match question.kind:
        case Kind.YES_NO:
            fits = isinstance(value, str) and value in list(Reply)
            return Reply(str(value)) if fits else _refuse(question, value)
        case Kind.NUMBER:
            return _number(question, value)
        case Kind.DATE:
            return _day(question, value)
        case Kind.CHOICE:
            fits = isinstance(value, str) and value in question.choices
            return str(value) if fits else _refuse(question, value)


def number(answered: Answered, key: str) -> float | None:
    """A measure that was given and makes sense, else None."""
    try:
        return _number(BY_KEY[key], answered.given.get(key))
    except DomainError:
        return None


def day(answered: Answered, key: str) -> date | None:
    """A date that was given and makes sense, else None."""
    try:
        return _day(BY_KEY[key], answered.given.get(key))
    except DomainError:
        return None


def _number(question: Question, value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        _refuse(question, value)
    if not question.least <= value <= question.most:
        _refuse(question, value)
    return float(value)


def _day(question: Question, value: object) -> date:
    try:
        return date.fromisoformat(value) if isinstance(value, str) else _refuse(question, value)
    except ValueError:
        return _refuse(question, value)


def _refuse(question: Question, value: object) -> Never:
    raise DomainError(f"answers.{question.key}", f"is {value!r}", _right(question))


def _right(question: Question) -> str:
    match question.kind:
        case Kind.YES_NO:
            return f"answer {', '.join(Reply)}: {question.text}"
        case Kind.NUMBER:
            bounds = f"{question.least:g} to {question.most:g} {question.unit}"
            return f"give a number from {bounds}: {question.text}"
        case Kind.DATE:
            return f"give a day as YYYY-MM-DD: {question.text}"
        case Kind.CHOICE:
            return f"choose {', '.join(question.choices)}: {question.text}"
