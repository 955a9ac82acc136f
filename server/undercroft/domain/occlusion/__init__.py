"""Occlusion work: whether it is open to a person, and within which limits it is planned and done.

It can hurt people. It is stricter than a supervised clinic, defers to licensed clinicians, and
nothing overrides its lock.
"""

from undercroft.domain.occlusion.aftercare import (
    AFTER_SIGNS,
    AfterCheck,
    AfterDecision,
    AfterSign,
    after_decision,
    checks_due,
)
from undercroft.domain.occlusion.answers import Answered, Reply, check_answers
from undercroft.domain.occlusion.basis import Basis, Mark
from undercroft.domain.occlusion.clearance import (
    CLEARABLE,
    NO_CLINICIAN,
    Aim,
    Clearance,
    ClinicianLimits,
    Prescription,
    Profession,
    Signature,
)
from undercroft.domain.occlusion.cuff import CuffPressure, Person, cuff_pressure
from undercroft.domain.occlusion.done import reps_issues
from undercroft.domain.occlusion.dose import Dose, Wear, doses_of, wears_of
from undercroft.domain.occlusion.exposure import (
    OcclusionDay,
    WeekOfLimb,
    exposure_on,
    frequency_issues,
    gap_issues,
    weekly,
)
from undercroft.domain.occlusion.history import ScreeningFile
from undercroft.domain.occlusion.issue import Issue
from undercroft.domain.occlusion.lacking import valid_until
from undercroft.domain.occlusion.ladder import FULL_DOSE, RUNGS, Rung, next_exposure, rung
from undercroft.domain.occlusion.ladder import in_words as rung_in_words
from undercroft.domain.occlusion.lock import Lock, start_on, state_on, states_on
from undercroft.domain.occlusion.measures import score
from undercroft.domain.occlusion.next_load import (
    ASK,
    NextLoad,
    Step,
    next_load_table,
    next_step,
    next_why,
)
from undercroft.domain.occlusion.pattern import PATTERNS, Pattern, PatternSet
from undercroft.domain.occlusion.placing import HOW, lifting_issues, placing_issues
from undercroft.domain.occlusion.planned import session_issues, work_issues
from undercroft.domain.occlusion.pressure import (
    Estimate,
    Measured,
    Padding,
    Sex,
    estimate_by_padding,
    estimate_thigh,
    target_mmhg,
)
from undercroft.domain.occlusion.protocol import (
    EXPECTED,
    EXPECTED_TOTAL,
    PROTOCOLS,
    Expected,
    Protocol,
    break_issues,
    load_issues,
    load_range_kg,
    planned_reps,
    predicted_wear_s,
    wear_issues,
)
from undercroft.domain.occlusion.question import Asked, Kind, Outcome, Question
from undercroft.domain.occlusion.questions import BY_KEY, QUESTIONS, SCREENING, asked
from undercroft.domain.occlusion.questions_today import TODAY
from undercroft.domain.occlusion.reason import Reason
from undercroft.domain.occlusion.record import (
    Ahead,
    OcclusionRecord,
    PlannedOcclusion,
    exposures_ahead,
)
from undercroft.domain.occlusion.screening import Decision, decide
from undercroft.domain.occlusion.settings import BASIS, LIMITS, OcclusionSettings
from undercroft.domain.occlusion.site import Site, sites_of
from undercroft.domain.occlusion.stop_signs import (
    ORDER,
    STOP_SIGNS,
    TWO_LINES,
    Stopped,
    StopSign,
    Urgency,
    stop_urgency,
)
from undercroft.domain.occlusion.tightness import (
    ADVICE,
    ANCHORS,
    WrapAdvice,
    after_numbness,
    most_tightness,
)
from undercroft.domain.occlusion.work import Work, WorkSet, work_of
from undercroft.domain.occlusion.worn import worn_issues

__all__ = [
    "ADVICE", "AFTER_SIGNS", "ANCHORS", "ASK", "BASIS", "BY_KEY", "CLEARABLE", "EXPECTED",
    "EXPECTED_TOTAL", "FULL_DOSE", "HOW", "LIMITS", "NO_CLINICIAN", "ORDER", "PATTERNS",
    "PROTOCOLS", "QUESTIONS", "RUNGS", "SCREENING", "STOP_SIGNS", "TODAY", "TWO_LINES",
    "AfterCheck", "AfterDecision", "AfterSign", "Ahead", "Aim", "Answered", "Asked", "Basis",
    "Clearance", "ClinicianLimits", "CuffPressure", "Decision", "Dose", "Estimate", "Expected",
    "Issue", "Kind", "Lock", "Mark", "Measured", "NextLoad", "OcclusionDay", "OcclusionRecord",
    "OcclusionSettings", "Outcome", "Padding", "Pattern", "PatternSet", "Person",
    "PlannedOcclusion", "Prescription", "Profession", "Protocol", "Question", "Reason", "Reply",
    "Rung", "ScreeningFile", "Sex", "Signature", "Site", "Step", "StopSign", "Stopped", "Urgency",
    "Wear", "WeekOfLimb", "Work", "WorkSet", "WrapAdvice", "after_decision", "after_numbness",
    "asked", "break_issues", "check_answers", "checks_due", "cuff_pressure", "decide", "doses_of",
    "estimate_by_padding", "estimate_thigh", "exposure_on", "exposures_ahead", "frequency_issues",
    "gap_issues", "lifting_issues", "load_issues", "load_range_kg", "most_tightness",
    "next_exposure", "next_load_table", "next_step", "next_why", "placing_issues", "planned_reps",
    "predicted_wear_s", "reps_issues", "rung", "rung_in_words", "score", "session_issues",
    "sites_of", "start_on", "state_on", "states_on", "stop_urgency", "target_mmhg", "valid_until",
    "wear_issues", "wears_of", "weekly", "work_issues", "work_of", "worn_issues",
]  # fmt: skip
