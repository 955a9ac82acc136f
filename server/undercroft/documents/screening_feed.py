"""What a phone keeps of screening: its questions and signs once, and how it stands now."""

from typing import Any

from undercroft.domain.occlusion import (
    ADVICE,
    AFTER_SIGNS,
    ANCHORS,
    HOW,
    LIMITS,
    ORDER,
    QUESTIONS,
    STOP_SIGNS,
    TWO_LINES,
    AfterSign,
    Asked,
    Kind,
    Lock,
    Question,
    StopSign,
)
from undercroft.domain.occlusion.aftercare import ADVICE as AFTER_ADVICE
from undercroft.domain.occlusion.stop_signs import DO_NOW


def questions() -> dict[str, Any]:
    """Every text that occlusion work needs on a phone, with the few limits it looks at there."""
    return {
        "screening": [_question(one) for one in QUESTIONS if one.asked is Asked.SCREENING],
        "today": [_question(one) for one in QUESTIONS if one.asked is Asked.TODAY],
        "stop_signs": [_sign(one) for one in STOP_SIGNS],
        "after_signs": [_after_sign(one) for one in AFTER_SIGNS],
        "after_hours": list(LIMITS.after_check_h),
        "after_advice": AFTER_ADVICE,
        "do_now": {str(urgency): words for urgency, words in DO_NOW.items()},
        "order": list(ORDER),
        "two_lines": list(TWO_LINES),
        "how": list(HOW),
        "tightness": [{"value": value, "text": words} for value, words in ANCHORS],
        "numb": {
            "asked_s": LIMITS.numb_asked_s,
            "early_s": LIMITS.numb_early_s,
            "clears_s": LIMITS.numb_clears_s,
            **{str(advice).replace("-", "_"): words for advice, words in ADVICE.items()},
        },
    }


def standing(lock: Lock, answered_on: str | None, read: bool, through: int) -> dict[str, Any]:
    """How the lock stands on the day of the last record; `through` is how much of the ledger.

    `read`: the coach has signed the latest answers.
    """
    return {
        "open": lock.open,
        "outcome": str(lock.outcome),
        "why": list(lock.why),
        "what_opens_it": list(lock.what_opens_it),
        "do_now": list(lock.do_now),
        "until": None if lock.until is None else lock.until.isoformat(),
        "company": lock.company,
        "answered_on": answered_on,
        "read": read,
        "through": through,
    }


def _question(one: Question) -> dict[str, Any]:
    made: dict[str, Any] = {"key": one.key, "text": one.text, "kind": str(one.kind)}
    if one.kind is Kind.NUMBER:
        made |= {"least": one.least, "most": one.most, "unit": one.unit}
    if one.kind is Kind.CHOICE:
        made["choices"] = list(one.choices)
    if one.kind is Kind.YES_NO:
        made["outcome"] = str(one.outcome)
    if one.renews:
        made["renews"] = True
    if one.urgent:
        made["urgent"] = one.urgent
    return made


def _sign(one: StopSign) -> dict[str, str]:
    return {"key": one.key, "text": one.text, "urgency": str(one.urgency),
            "outcome": str(one.outcome)}  # fmt: skip


def _after_sign(one: AfterSign) -> dict[str, Any]:
    return {"key": one.key, "text": one.text, "urgency": str(one.urgency), "from_h": one.from_h}
