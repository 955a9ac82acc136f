"""Signs that end occlusion work at once, and the order in which it is ended.

Put together from side effects in surveys (Brandner et al. 2018, Patterson & Brandner 2017, seen)
and criteria for ending exercise tests (seen); the rest is our own choice.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from undercroft.domain.occlusion.question import Outcome
from undercroft.domain.occlusion.reason import Reason, reason


class Urgency(StrEnum):
    """What to do about a sign, from the least to the most pressing."""

    NONE = "none"
    LEAVE_OFF = "leave-off"
    SEE_TODAY = "see-today"
    EMERGENCY = "emergency"

    @property
    def gravity(self) -> int:
        return list(Urgency).index(self)


TWO_LINES = (
    "Numb, tingling, white, blue, cold, pain under the wrap, weak, dizzy, sick, unsure: wraps off.",
    "Chest pain, no breath, sudden headache, speech or face changed: wraps off, emergency number.",
)
"""For the wrap screen; the whole list stands in the cautions."""

ORDER = (
    "Stop the set.",
    "Put the weight down.",
    "Take the wraps off, on every limb.",
    "Sit or lie down.",
    "Call the emergency number where the signs are the heart's, the lungs' or the brain's.",
    "Do not try again today.",
)

DO_NOW = {
    Urgency.NONE: "Nothing out of the ordinary.",
    Urgency.LEAVE_OFF: "Wraps off, on every limb. No second try today.",
    Urgency.SEE_TODAY: "Get medical care today, and say that you trained with restricted flow.",
    Urgency.EMERGENCY: "Call the emergency number now.",
}


@dataclass(frozen=True, slots=True)
class StopSign:
    """`outcome` is what becomes of occlusion work afterwards: that day off, or locked."""

    key: str
    text: str
    urgency: Urgency
    outcome: Outcome


def _day_off(key: str, text: str) -> StopSign:
    return StopSign(key, text, Urgency.LEAVE_OFF, Outcome.NOT_TODAY)


def _emergency(key: str, text: str) -> StopSign:
    return StopSign(key, text, Urgency.EMERGENCY, Outcome.LOCKED)


STOP_SIGNS = (
    _emergency("chest-pain", "pain or pressure in the chest"),
    _emergency("breathless", "short of breath at rest, or breath that hurts"),
    _emergency("heartbeat", "a heart that races or stumbles at rest"),
    _emergency("fainted", "fainted or collapsed"),
    _emergency("headache", "a sudden, severe headache"),
    _emergency("speech", "a change of speech, sight or face"),
    _day_off("numb", "numbness or tingling"),
    _day_off("colour", "a limb that is white, grey, blue or cold"),
    _day_off("refill", "colour that takes over 3 seconds to come back after a press, or no pulse"),
    _day_off("wrap-pain", "pain under the wrap, or out of proportion"),
    _day_off("weak", "weakness, or a limb that does not obey"),
    _day_off("bruise", "a bruise or red dots that spread"),
    _day_off("dizzy", "dizziness, or a cold sweat"),
    _day_off("sick", "sickness"),
    _day_off("clock", "the limit of the wear clock"),
    _day_off("doubt", "any doubt"),
)
"""Refill can only fail: colour that comes back fast proves no safe tightness (own choice)."""

_BY_KEY = {one.key: one for one in STOP_SIGNS}


@dataclass(frozen=True, slots=True)
class Stopped:
    """Occlusion work was ended on that day because of these signs, by key."""

    on: date
    signs: tuple[str, ...]


def stop_urgency(signs: tuple[str, ...]) -> Urgency:
    """How pressing the gravest of the signs is; one that is not known is seen to today."""
    known = [_BY_KEY[key].urgency if key in _BY_KEY else Urgency.SEE_TODAY for key in signs]
    return max(known, key=lambda urgency: urgency.gravity, default=Urgency.NONE)


def stop_reasons(stopped: Stopped) -> Iterator[Reason]:
    """Reasons to leave occlusion work off for the day, or to keep it locked."""
    for key in stopped.signs:
        sign = _BY_KEY.get(key)
        if sign is None:
            yield unknown_sign(key)
        else:
            do_now = DO_NOW[sign.urgency]
            yield reason(key, sign.outcome, f"in a set: {sign.text}", urgent=do_now, passes=True)


def unknown_sign(key: str) -> Reason:
    """A sign that this version does not know is taken for a grave one."""
    words = f"a sign that is not on the list: {key!r}"
    do_now = DO_NOW[Urgency.SEE_TODAY]
    return reason("unknown-sign", Outcome.LOCKED, words, urgent=do_now, passes=True)
