"""Screening as the desk reads it: answers, what they lead to, what was recorded, what opens it."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from datetime import date

from undercroft.domain.errors import DomainError
from undercroft.domain.occlusion import (
    AFTER_SIGNS,
    BY_KEY,
    CLEARABLE,
    QUESTIONS,
    AfterCheck,
    Answered,
    OcclusionRecord,
    Outcome,
    Question,
    Reason,
    ScreeningFile,
    Urgency,
    after_decision,
    exposure_on,
    rung_in_words,
)
from undercroft.domain.occlusion.answers import read
from undercroft.domain.occlusion.covering import covered_on
from undercroft.domain.occlusion.history import standing_reasons
from undercroft.domain.occlusion.lacking import lacking_on
from undercroft.domain.occlusion.measures import MEASURED_BY
from undercroft.domain.occlusion.screening import answer_reasons, decide, gravest
from undercroft.domain.program.methods import Limb
from undercroft.services.clock import day_of
from undercroft.services.occlusion_record import record_of
from undercroft.services.people import athlete_document
from undercroft.services.screening_seen import (
    AfterSeen,
    AnsweredSeen,
    AnswerSeen,
    ExposureSeen,
    ReasonSeen,
    RecordSeen,
    ScreeningPage,
)
from undercroft.store import athletes, screening
from undercroft.store.models import ScreeningRecord

NOT_ASKED = "Not asked yet: occlusion work stays locked."
LIMBS = (Limb.THIGH, Limb.UPPER_ARM)


def page(athlete_id: str, now: int) -> ScreeningPage:
    """The athlete's screening as it stands today."""
    row = athletes.athlete_with_coach(athlete_id)
    record = record_of(athlete_id, athlete_document(row))
    file, today = record.screening, day_of(now)
    latest = file.latest
    others = [one for one in reversed(file.answered) if one is not latest]
    return ScreeningPage(
        asked_at=row.screening_asked_at,
        lock=record.locks([today])[today],
        signed=file.read,
        latest=None if latest is None else _seen(latest, file.alone),
        earlier=[_seen(one, file.alone) for one in others],
        reasons=_reasons(max(today, file.last_day), file),
        after=[_after(one) for one in reversed(file.after)],
        records=[_record(one) for one in reversed(screening.records(athlete_id))],
        exposures=[_exposure(record, limb, today) for limb in LIMBS],
    )


def in_short(athlete_id: str, now: int) -> dict[str, str]:
    """State and a line of words, for the athlete's page."""
    row = athletes.athlete_with_coach(athlete_id)
    if row.screening_asked_at is None:
        return {"state": "not-asked", "text": NOT_ASKED}
    today = day_of(now)
    lock = record_of(athlete_id, athlete_document(row)).locks([today])[today]
    if lock.open:
        until = "" if lock.until is None else f" until {lock.until:%-d %B %Y}"
        return {"state": "open", "text": f"Occlusion work is open{until}."}
    why = lock.why[0] if lock.why else "nothing is on record"
    return {"state": str(lock.outcome), "text": f"Occlusion work is locked: {why}."}


def _seen(one: Answered, alone: bool) -> AnsweredSeen:
    leads = _leads(one, alone)
    asked = [q for q in QUESTIONS if q.asked is one.asked or q.key in one.given]
    answers = [
        AnswerSeen(q.key, q.text, _in_words(q, one.given), leads.get(q.key, "")) for q in asked
    ]
    strange = [key for key in one.given if key not in BY_KEY]
    answers += [
        AnswerSeen(key, "not known here", str(one.given[key]), leads.get(key, ""))
        for key in strange
    ]
    return AnsweredSeen(one.id, one.on, str(one.asked), answers)


def _leads(one: Answered, alone: bool) -> dict[str, str]:
    """By question, the gravest outcome that its answer leads to, by itself or with another."""
    found: dict[str, list[Reason]] = defaultdict(list)
    for why in decide(one, alone).reasons:
        for key in MEASURED_BY.get(why.key, (why.key,)):
            found[key].append(why)
    return {key: str(gravest(reasons)) for key, reasons in found.items()}


def _in_words(question: Question, given: Mapping[str, object]) -> str:
    if question.key not in given:
        return "not answered"
    raw = given[question.key]
    try:
        value = read(question, raw)
    except DomainError:
        return str(raw)
    if isinstance(value, date):
        return f"{value:%-d %B %Y}"
    return f"{raw} {question.unit}".strip().replace("-", " ")


def _reasons(on: date, file: ScreeningFile) -> list[ReasonSeen]:
    """Everything that closes, the gravest first; then what closes no more."""
    return sorted(_every_reason(on, file), key=lambda one: (one.covered, -_gravity(one)))


def _gravity(one: ReasonSeen) -> int:
    return Outcome(one.outcome).gravity


def _every_reason(on: date, file: ScreeningFile) -> Iterator[ReasonSeen]:
    """What a clinician has to look at, what is lacking, and the cautions that were weighed."""
    told: set[str] = set()
    for one in covered_on(on, file, standing_reasons(file)):
        told.add(one.standing.reason.key)
        yield _reason(one.closed or one.standing.reason, covered=one.closed is None)
    for why in lacking_on(on, file):
        told.add(why.key)
        yield _reason(why, covered=False)
    for why in answer_reasons(file.latest) if file.latest else ():
        if why.key not in told and why.outcome is Outcome.NEEDS_READING:
            yield _reason(why, covered=True)


def _reason(why: Reason, *, covered: bool) -> ReasonSeen:
    coverable = why.key in CLEARABLE
    return ReasonSeen(
        why.key, str(why.outcome), why.words, why.opens, why.urgent, coverable, covered
    )


def _after(one: AfterCheck) -> AfterSeen:
    texts = {sign.key: sign.text for sign in AFTER_SIGNS}
    decided = after_decision(one)
    do_now = [] if decided.urgency is Urgency.NONE else list(decided.do_now)
    signs = [texts.get(key, key) for key in one.signs]
    return AfterSeen(one.on, one.hours, signs, do_now, decided.locks)


def _record(row: ScreeningRecord) -> RecordSeen:
    return RecordSeen(row.number, row.kind, row.recorded_at, row.withdrawn_at, row.body)


def _exposure(record: OcclusionRecord, limb: Limb, today: date) -> ExposureSeen:
    number = exposure_on(record.days, today, limb, record.ill)
    return ExposureSeen(str(limb), number, rung_in_words(number))
