"""What people record to open a lock: the coach's signature, the clinician's clearance."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from undercroft.domain.errors import LoadError
from undercroft.domain.occlusion.aftercare import AFTER_SIGNS
from undercroft.domain.occlusion.question import FOR_A_CLINICIAN, Outcome
from undercroft.domain.occlusion.questions import QUESTIONS
from undercroft.domain.occlusion.settings import LIMITS
from undercroft.domain.occlusion.stop_signs import STOP_SIGNS

CLEARABLE = frozenset(
    {one.key for one in QUESTIONS if one.outcome in FOR_A_CLINICIAN | {Outcome.NEEDS_READING}}
    | {one.key for one in STOP_SIGNS if one.outcome in FOR_A_CLINICIAN}
    | {one.key for one in AFTER_SIGNS}
    | {"blood-pressure-dangerous", "blood-pressure-high", "blood-pressure-raised"}
    | {"score", "age", "body-mass-index", "under-age", "recovery-as-aim", "unknown-sign"}
)
"""What a clearance can name; a reason that it does not name stays."""


class Profession(StrEnum):
    """Licensed professions whose word opens a lock; local rules may allow fewer."""

    DOCTOR = "doctor"
    PHYSIOTHERAPIST = "physiotherapist"
    NURSE_PRACTITIONER = "nurse-practitioner"


class Aim(StrEnum):
    """What the coach means the work for; recovery belongs to the clinic."""

    TRAINING = "training"
    RECOVERY = "recovery"


@dataclass(frozen=True, slots=True)
class ClinicianLimits:
    """What a clinician allows; never more than the product itself does."""

    load_percent: float = LIMITS.most_load_percent
    wear_minutes: float = LIMITS.wear_stop_s / 60
    days_a_week: int = LIMITS.days_a_week
    tightness: int = LIMITS.most_tightness_leg
    pressure_percent: float = LIMITS.most_pressure_percent
    in_words: str = ""

    def __post_init__(self) -> None:
        for field, value, most in (
            ("load_percent", self.load_percent, LIMITS.most_load_percent),
            ("wear_minutes", self.wear_minutes, LIMITS.wear_stop_s / 60),
            ("days_a_week", self.days_a_week, LIMITS.days_a_week),
            ("tightness", self.tightness, LIMITS.most_tightness_leg),
            ("pressure_percent", self.pressure_percent, LIMITS.most_pressure_percent),
        ):
            if not 0 < value <= most:
                raise LoadError(f"limits.{field}", value, f"above 0 and at most {most:g}")


NO_CLINICIAN = ClinicianLimits()
"""The product's own limits, where no clinician has said anything."""


@dataclass(frozen=True, slots=True)
class Prescription:
    """A clinician's own prescription with its cuff, kept as it was written.

    Nothing is worked out from it: no load, no progression, no swap.
    """

    cuff: str
    width_mm: float
    material: str
    pressure: str
    as_written: str

    def __post_init__(self) -> None:
        for field in ("cuff", "material", "pressure", "as_written"):
            _said(f"prescription.{field}", getattr(self, field))
        if not 30 <= self.width_mm <= 250:
            wants = "the cuff's width, 30 to 250 mm"
            raise LoadError("prescription.width_mm", self.width_mm, wants)


@dataclass(frozen=True, slots=True)
class Clearance:
    """A licensed clinician's word: who, the day, until when, for what, within which limits.

    by       the clinician's name; never the coach's
    covers   keys of the reasons that were put to the clinician
    alone    the clinician says that it holds for training alone too
    """

    by: str
    profession: Profession
    licence: str
    on: date
    until: date
    covers: frozenset[str]
    limits: ClinicianLimits = NO_CLINICIAN
    alone: bool = False
    prescription: Prescription | None = None

    def __post_init__(self) -> None:
        _said("clearance.by", self.by)
        _said("clearance.licence", self.licence)
        if not 0 <= (self.until - self.on).days <= LIMITS.clearance_days:
            wants = f"{self.on} or later, by {LIMITS.clearance_days} days at the most"
            raise LoadError("clearance.until", self.until, wants)
        unknown = sorted(self.covers - CLEARABLE)
        if unknown or not self.covers:
            wants = "the keys of the reasons that the clinician was told of"
            raise LoadError("clearance.covers", ", ".join(unknown) or "empty", wants)

    def holds_on(self, day: date) -> bool:
        return self.on <= day <= self.until


@dataclass(frozen=True, slots=True)
class Signature:
    """The coach has read the screening whose id is `of`."""

    of: str
    by: str
    on: date
    note: str = ""
    aim: Aim = Aim.TRAINING

    def __post_init__(self) -> None:
        _said("signature.of", self.of)
        _said("signature.by", self.by)


def tightest(all_limits: Iterable[ClinicianLimits]) -> ClinicianLimits:
    """Of several clinicians' limits, the tighter of each."""
    every = [NO_CLINICIAN, *all_limits]
    return ClinicianLimits(
        load_percent=min(one.load_percent for one in every),
        wear_minutes=min(one.wear_minutes for one in every),
        days_a_week=min(one.days_a_week for one in every),
        tightness=min(one.tightness for one in every),
        pressure_percent=min(one.pressure_percent for one in every),
        in_words="; ".join(one.in_words for one in every if one.in_words),
    )


def _said(field: str, value: str) -> None:
    if not value.strip():
        raise LoadError(field, "empty", "in words")
