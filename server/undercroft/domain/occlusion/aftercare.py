"""The questions 24, 48 and 72 hours after occlusion work, and what follows from the answers.

Muscle breakdown: CDC/NIOSH (seen). Clots in a limb or the lungs: patient pages (seen); about half
of those in a limb have no sign that is noticed (seen). Ordinary soreness is on both sides, worst
at 24-48 h and gone by 96 h (72-96 h, seen in several places).
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion.question import Outcome
from undercroft.domain.occlusion.reason import Reason, reason
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.stop_signs import DO_NOW, Urgency, unknown_sign


@dataclass(frozen=True, slots=True)
class AfterSign:
    """A sign that may be ticked; before `from_h` hours it is still ordinary."""

    key: str
    text: str
    urgency: Urgency
    from_h: int = 0


AFTER_SIGNS = (
    AfterSign("chest-pain", "pain in the chest, or worse on breathing", Urgency.EMERGENCY),
    AfterSign("breathless", "sudden breathlessness", Urgency.EMERGENCY),
    AfterSign("heartbeat", "a heart that races or stumbles", Urgency.EMERGENCY),
    AfterSign("blood-coughed", "coughing up blood", Urgency.EMERGENCY),
    AfterSign("fainted", "fainted", Urgency.EMERGENCY),
    AfterSign("dark-urine", "dark urine, like tea or cola", Urgency.SEE_TODAY),
    AfterSign("weakness", "weak, or unable to do what is usual", Urgency.SEE_TODAY),
    AfterSign("pain", "pain or cramp beyond soreness", Urgency.SEE_TODAY),
    AfterSign("one-limb", "one limb swollen, warm or discoloured", Urgency.SEE_TODAY),
    AfterSign("tense", "a limb tense and hard, or very painful to stretch", Urgency.SEE_TODAY),
    AfterSign("numb-still", "a limb still numb", Urgency.SEE_TODAY),
    AfterSign("sore-one-side", "soreness of one side only", Urgency.SEE_TODAY),
    AfterSign("sore-worse", "soreness that grows", Urgency.SEE_TODAY, from_h=48),
    AfterSign("sore", "soreness on both sides", Urgency.SEE_TODAY, from_h=96),
)

ADVICE = {
    "dark-urine": "Ask for a blood test of creatine kinase (CK).",
    "one-limb": "Do not rub the limb.",
}

_BY_KEY = {one.key: one for one in AFTER_SIGNS}


@dataclass(frozen=True, slots=True)
class AfterCheck:
    """What was ticked `hours` after the work; nothing ticked is a full answer."""

    on: date
    hours: int
    signs: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if not 0 <= self.hours <= 336:
            raise LoadError("hours", self.hours, "hours since the work, 0 to 336")


@dataclass(frozen=True, slots=True)
class AfterDecision:
    """The gravest sign decides; `locks` keeps occlusion work locked and is told to the coach."""

    urgency: Urgency
    locks: bool
    do_now: tuple[str, ...]


def after_decision(check: AfterCheck) -> AfterDecision:
    """What to do about the ticked signs. Other ticks, soreness among them, outweigh none."""
    found = [_urgency(check, key) for key in check.signs]
    gravest = max(found, key=lambda urgency: urgency.gravity, default=Urgency.NONE)
    advice = [ADVICE[key] for key in ADVICE if key in check.signs]
    locks = gravest.gravity >= Urgency.SEE_TODAY.gravity
    return AfterDecision(gravest, locks, (DO_NOW[gravest], *advice))


def after_reasons(check: AfterCheck) -> Iterator[Reason]:
    """Reasons to keep occlusion work locked until a clinician has cleared each."""
    for key in check.signs:
        sign = _BY_KEY.get(key)
        if sign is None:
            yield unknown_sign(key)
        elif _urgency(check, key) is not Urgency.NONE:
            words = f"{check.hours} h after occlusion work: {sign.text}"
            do_now = DO_NOW[sign.urgency]
            yield reason(key, Outcome.LOCKED, words, urgent=do_now, passes=True)


def checks_due(taken_off: datetime, answered_h: Collection[int], now: datetime) -> tuple[int, ...]:
    """Hours of the checks whose time has come since the wraps went off, not answered yet."""
    return tuple(
        hours
        for hours in LIMITS.after_check_h
        if hours not in answered_h and now - taken_off >= timedelta(hours=hours)
    )


def _urgency(check: AfterCheck, key: str) -> Urgency:
    sign = _BY_KEY.get(key)
    if sign is None:
        return Urgency.SEE_TODAY
    return sign.urgency if check.hours >= sign.from_h else Urgency.NONE
