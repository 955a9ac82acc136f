"""What a screening still lacks: answers, freshness, the coach's reading, the questions of today."""

from collections.abc import Iterator
from datetime import date, timedelta

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion.answers import Answered, check_answers, said_yes
from undercroft.domain.occlusion.covering import COMPANY, valid_clearances
from undercroft.domain.occlusion.history import ScreeningFile
from undercroft.domain.occlusion.question import Asked, Outcome
from undercroft.domain.occlusion.reason import Reason, reason
from undercroft.domain.occlusion.screening import answer_reasons
from undercroft.domain.occlusion.settings import LIMITS

SIGN = "the coach reads the screening and signs"
ANEW = "the screening, answered anew"
EACH = "an answer to each of them"


def valid_until(screening: Answered) -> date:
    """The last day on which a screening counts: six months, less a day."""
    months = screening.on.year * 12 + screening.on.month - 1 + LIMITS.screening_months
    first = date(months // 12, months % 12 + 1, 1)
    last = (first + timedelta(days=31)).replace(day=1) - timedelta(days=1)
    return min(first + timedelta(days=screening.on.day - 1), last) - timedelta(days=1)


def lacking_on(on: date, file: ScreeningFile) -> Iterator[Reason]:
    """What is missing for the latest screening to count on that day."""
    latest = file.latest
    if latest is None:
        yield reason("screening", Outcome.INCOMPLETE, "no screening has been answered")
        return
    told = list(answer_reasons(latest))
    yield from (r for r in told if r.outcome in (Outcome.INCOMPLETE, Outcome.NOT_TODAY))
    yield from _out_of_date(on, file, latest)
    cautions = [r for r in told if r.outcome is Outcome.NEEDS_READING]
    yield from _unread(on, file, latest, cautions)


def lacking_today(
    on: date, file: ScreeningFile, company: bool, after_check_due: bool
) -> Iterator[Reason]:
    """What is missing right before the first wrap goes on."""
    today = file.of_day(on)
    if not any(_whole(one) for one in today):
        yield reason("today", Outcome.INCOMPLETE, "the questions of the day are open", EACH)
    if after_check_due:
        words = "the questions after the last occlusion work are open"
        yield reason("after", Outcome.INCOMPLETE, words, EACH)
    if company and any(said_yes(one, "alone-today") for one in today):
        yield reason("alone-today", Outcome.NOT_TODAY, "alone today", COMPANY)


def _out_of_date(on: date, file: ScreeningFile, latest: Answered) -> Iterator[Reason]:
    if on > valid_until(latest):
        words = f"the screening of {latest.on} counted until {valid_until(latest)}"
        yield reason("screening", Outcome.INCOMPLETE, words, ANEW)
    if on < latest.on:
        words = f"the screening bears a later day, {latest.on}"
        yield reason("screening", Outcome.INCOMPLETE, words, ANEW)
    for name in file.out_of_date:
        yield reason("changed", Outcome.INCOMPLETE, f"since the screening: {name}", ANEW)


def _unread(
    on: date, file: ScreeningFile, latest: Answered, cautions: list[Reason]
) -> Iterator[Reason]:
    """Cautions ask for a note with the signature, unless a clinician has cleared them."""
    signed = [s for s in file.signatures if s.of == latest.id and latest.on <= s.on <= on]
    if not signed:
        yield reason("unread", Outcome.NEEDS_READING, "the coach has not read the screening", SIGN)
    covered = {key for c in valid_clearances(on, file) for key in c.covers if c.on >= latest.on}
    if not any(one.note.strip() for one in signed):
        yield from (one for one in cautions if one.key not in covered)


def _whole(today: Answered) -> bool:
    try:
        check_answers(today.given, Asked.TODAY)
    except DomainError:
        return False
    return True
