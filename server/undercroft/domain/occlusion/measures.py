"""What follows from age, body mass and blood pressure, and from the count of points."""

from collections.abc import Iterator, Mapping
from datetime import date
from types import MappingProxyType

from undercroft.domain.occlusion.answers import Answered, day, number, said_yes
from undercroft.domain.occlusion.question import Kind, Outcome
from undercroft.domain.occlusion.questions import SCREENING
from undercroft.domain.occlusion.questions_hard import CARE_NOW, DOCTOR_NOW
from undercroft.domain.occlusion.reason import Reason, reason
from undercroft.domain.occlusion.settings import LIMITS

OLDEST = 110

_PRESSURE = ("systolic", "diastolic")

MEASURED_BY: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "age": ("born",),
        "under-age": ("born",),
        "body-mass-index": ("height_m", "mass_kg"),
        "blood-pressure": _PRESSURE,
        "blood-pressure-dangerous": _PRESSURE,
        "blood-pressure-high": _PRESSURE,
        "blood-pressure-raised": _PRESSURE,
    }
)
"""Reasons that bear no question's key, and the questions whose answers give them."""


def measure_reasons(answered: Answered) -> Iterator[Reason]:
    """Reasons from the measures of one screening; ones that are missing are told elsewhere."""
    yield from _age(answered)
    yield from _body_mass(answered)
    yield from _blood_pressure(answered)
    points = score(answered)
    if points >= LIMITS.score_locks_from:
        words = f"{points} points of risk, where {LIMITS.score_locks_from - 1} are the most"
        yield reason("score", Outcome.LOCKED, words)


def age_on(born: date, on: date) -> int:
    """Whole years of age on a day."""
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))


def body_mass_index(answered: Answered) -> float | None:
    """kg/m², None where height or mass is missing."""
    height, mass = number(answered, "height_m"), number(answered, "mass_kg")
    return None if height is None or mass is None else mass / height**2


def score(answered: Answered) -> int:
    """Points of the counted cautions, age, sex, body mass index and blood pressure included.

    Score of the Nakajima 2011 lineage as a continuing-education summary prints it (seen in a
    secondary page, its columns partly put together from memory); age 59-60, which it leaves out,
    counts as 40-58; points for smoking and for clots in the family are our own choice.
    """
    asked = [one for one in SCREENING if one.kind is Kind.YES_NO and said_yes(answered, one.key)]
    return (
        sum(one.points for one in asked)
        + _age_points(answered)
        + (answered.given.get("sex") != "male")
        + _mass_points(answered)
        + _pressure_points(answered)
    )


def _age_points(answered: Answered) -> int:
    born = day(answered, "born")
    age = 0 if born is None else age_on(born, answered.on)
    return (age >= LIMITS.age_counts_from) + (age > LIMITS.age_counts_twice_above)


def _mass_points(answered: Answered) -> int:
    index = body_mass_index(answered) or 0.0
    twice = index > LIMITS.body_mass_counts_twice_above
    return (index >= LIMITS.body_mass_counts_from) + twice


def _pressure_points(answered: Answered) -> int:
    upper, lower = number(answered, "systolic") or 0.0, number(answered, "diastolic") or 0.0
    if upper > 180 or lower > 100:
        return 5
    return 3 if _from((upper, lower), LIMITS.high_pressure_mmhg) else 0


def _age(answered: Answered) -> Iterator[Reason]:
    born = day(answered, "born")
    if born is None:
        return
    age = age_on(born, answered.on)
    if not 0 <= age <= OLDEST:
        yield reason("born", Outcome.INCOMPLETE, f"a date of birth that cannot be: {born}")
    elif age >= LIMITS.age_counts_from:
        words = f"age {age}, counted from {LIMITS.age_counts_from} on"
        yield reason("age", Outcome.NEEDS_READING, words)


def _body_mass(answered: Answered) -> Iterator[Reason]:
    index = body_mass_index(answered)
    most = LIMITS.body_mass_counts_twice_above
    if index is not None and index > most:
        words = f"body mass index {index:.1f} kg/m², counted above {most:g}"
        yield reason("body-mass-index", Outcome.NEEDS_READING, words)


def _blood_pressure(answered: Answered) -> Iterator[Reason]:
    upper, lower = number(answered, "systolic"), number(answered, "diastolic")
    yield from _pressure_day(answered)
    if upper is None or lower is None:
        return
    words = f"blood pressure {upper:g}/{lower:g} mmHg"
    if lower >= upper:
        right = "the greater number first, measured at rest"
        yield reason("blood-pressure", Outcome.INCOMPLETE, f"{words} cannot be", right)
    read = (upper, lower)
    if _from(read, LIMITS.dangerous_pressure_mmhg):
        yield reason(
            "blood-pressure-dangerous", Outcome.LOCKED, words, urgent=CARE_NOW,
            never_alone=True, passes=True,
        )  # fmt: skip
    elif _from(read, LIMITS.high_pressure_mmhg):
        yield reason("blood-pressure-high", Outcome.LOCKED, words, urgent=DOCTOR_NOW)
    elif _from(read, LIMITS.raised_pressure_mmhg):
        yield reason("blood-pressure-raised", Outcome.DOCTOR_FIRST, words)


def _from(read: tuple[float, float], bound: tuple[int, int]) -> bool:
    """Is one of the two numbers at its bound or above?"""
    return read[0] >= bound[0] or read[1] >= bound[1]


def _pressure_day(answered: Answered) -> Iterator[Reason]:
    measured = day(answered, "pressure-on")
    if measured is None:
        return
    age = (answered.on - measured).days
    if not 0 <= age <= LIMITS.pressure_reading_days:
        words = f"blood pressure of {measured}, answered on {answered.on}"
        right = f"one measured within the {LIMITS.pressure_reading_days} days before the screening"
        yield reason("pressure-on", Outcome.INCOMPLETE, words, right)
