"""The screening questions, as frozen data: asked in this order, each with where it leads."""

from collections.abc import Mapping
from types import MappingProxyType

from undercroft.domain.occlusion.question import Asked, Question
from undercroft.domain.occlusion.questions_doctor import CAUTIONS, DOCTOR_FIRST
from undercroft.domain.occlusion.questions_hard import FOR_THE_CLINIC, HARD_STOPS
from undercroft.domain.occlusion.questions_measures import MEASURES
from undercroft.domain.occlusion.questions_today import TODAY

SCREENING: tuple[Question, ...] = (
    *HARD_STOPS,
    *FOR_THE_CLINIC,
    *DOCTOR_FIRST,
    *CAUTIONS,
    *MEASURES,
)
"""Every six months, and after illness, surgery, childbirth, a new medicine or a long journey."""

QUESTIONS: tuple[Question, ...] = (*SCREENING, *TODAY)

BY_KEY: Mapping[str, Question] = MappingProxyType({one.key: one for one in QUESTIONS})


def asked(when: Asked) -> tuple[Question, ...]:
    """The questions of the screening, or those of the day."""
    return SCREENING if when is Asked.SCREENING else TODAY
