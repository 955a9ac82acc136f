"""Invented people and their answers: somebody in good health, and changes to that."""

from datetime import date, timedelta

from undercroft.domain.occlusion import (
    SCREENING,
    TODAY,
    Answered,
    Clearance,
    ClinicianLimits,
    Kind,
    Prescription,
    Profession,
    ScreeningFile,
    Signature,
)

DAY = date(2026, 3, 2)
COACH = "Ysolt Brenner"
DOCTOR = "Dr. Maro Tellin"

HEALTHY = {one.key: "no" for one in SCREENING if one.kind is Kind.YES_NO} | {
    "born": "1996-05-01",
    "sex": "male",
    "height_m": 1.80,
    "mass_kg": 78,
    "systolic": 124,
    "diastolic": 78,
    "pressure-on": "2026-02-20",
}
WELL_TODAY = {one.key: "no" for one in TODAY}

PRESCRIPTION = Prescription("thigh cuff", 115, "nylon", "as set by the clinic", "3 x 15, seated")


def given(**changes: object) -> dict[str, object]:
    """Healthy answers with some changed; an underscore before a digit or word is a dash."""
    return HEALTHY | {_key(name): value for name, value in changes.items()}


def screened(on: date = DAY, id: str = "s1", **changes: object) -> Answered:  # noqa: A002
    answers = given(**changes)
    if "pressure_on" not in changes:
        answers["pressure-on"] = (on - timedelta(days=10)).isoformat()
    return Answered(id, on, answers)


def today(on: date = DAY, id: str = "t1", **changes: object) -> Answered:  # noqa: A002
    return Answered(id, on, WELL_TODAY | {_key(name): value for name, value in changes.items()})


def without(key: str) -> Answered:
    return Answered("s1", DAY, {k: v for k, v in HEALTHY.items() if k != key})


def read(
    *answered: Answered,
    clearances: tuple[Clearance, ...] = (),
    note: str = "",
    trains_alone: bool = True,
    **more: object,
) -> ScreeningFile:
    """A file whose every screening the coach has read on the day of answering."""
    signatures = tuple(Signature(one.id, COACH, one.on, note) for one in answered)
    return ScreeningFile(answered, signatures, clearances, trains_alone=trains_alone, **more)


def cleared(
    *keys: str,
    on: date = DAY,
    days: int = 300,
    alone: bool = True,
    by: str = DOCTOR,
    prescription: Prescription | None = None,
    limits: ClinicianLimits | None = None,
) -> Clearance:
    return Clearance(
        by,
        Profession.DOCTOR,
        "reg. 4711",
        on,
        on + timedelta(days=days),
        frozenset(keys),
        limits or ClinicianLimits(),
        alone,
        prescription,
    )


def _key(name: str) -> str:
    return name if name in HEALTHY else name.replace("_", "-")
