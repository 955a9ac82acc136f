"""The pressure of a cuff for one athlete on one day: from what was measured, else an estimate."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date

from undercroft.domain.errors import DomainError
from undercroft.domain.kit import Cuff
from undercroft.domain.occlusion.answers import day, number
from undercroft.domain.occlusion.measures import age_on
from undercroft.domain.occlusion.pressure import (
    Estimate,
    Measured,
    Sex,
    estimate_thigh,
    target_mmhg,
)
from undercroft.domain.occlusion.record import OcclusionRecord
from undercroft.domain.program.methods import Limb

SEXES = {"male": Sex.MALE, "female": Sex.FEMALE}


@dataclass(frozen=True, slots=True)
class CuffPressure:
    """The pressure of that cuff in mmHg, and in words what it rests on."""

    cuff: Cuff
    mmhg: float
    basis: str
    measured: bool


@dataclass(frozen=True, slots=True)
class Person:
    """What an estimate needs to know; girth in cm."""

    record: OcclusionRecord
    thigh_cm: float | None = None


def cuff_pressure(
    person: Person, cuffs: Collection[Cuff], limb: Limb, percent: float, on: date
) -> CuffPressure | None:
    """The lowest pressure of those that a measurement gives, else an estimate; None where neither.

    Sides may differ: the lower one is safe on both.
    """
    for found in (_measured(person, cuffs, limb, percent, on), _estimated(
        person, cuffs, limb, percent, on
    )):  # fmt: skip
        best = min(found, key=lambda one: one.mmhg, default=None)
        if best is not None:
            return best
    return None


def _measured(
    person: Person, cuffs: Collection[Cuff], limb: Limb, percent: float, on: date
) -> Iterator[CuffPressure]:
    # A session whose day is past is done late: after whatever is on record by now.
    now = max([on, *(one.on for one in person.record.pressures)])
    in_order = sorted(person.record.pressures, key=lambda one: one.on)
    latest = {(one.site, one.width_mm, one.material.casefold()): one for one in in_order}
    for one in latest.values():
        words = f"{one.mmhg:g} mmHg measured on the {one.site} by {one.by} on {one.on:%-d %B %Y}"
        yield from _fitting(cuffs, one, percent, limb, now, words)


def _estimated(
    person: Person, cuffs: Collection[Cuff], limb: Limb, percent: float, on: date
) -> Iterator[CuffPressure]:
    for cuff in cuffs:
        basis = _estimate(person, cuff, limb, on)
        if basis is not None:
            words = f"{basis.mmhg:.0f} mmHg estimated for a group, not measured ({basis.source})"
            yield from _fitting([cuff], basis, percent, limb, on, words)


def _estimate(person: Person, cuff: Cuff, limb: Limb, on: date) -> Estimate | None:
    answers = person.record.screening.latest
    if answers is None or person.thigh_cm is None:
        return None
    born, systolic = day(answers, "born"), number(answers, "systolic")
    sex = SEXES.get(str(answers.given.get("sex")))
    if born is None or systolic is None or sex is None:
        return None
    try:
        return estimate_thigh(limb, cuff, person.thigh_cm, systolic, age_on(born, on), sex)
    except DomainError:
        return None


def _fitting(
    cuffs: Collection[Cuff],
    basis: Measured | Estimate,
    percent: float,
    limb: Limb,
    on: date,
    words: str,
) -> Iterator[CuffPressure]:
    for cuff in cuffs:
        try:
            mmhg = target_mmhg(cuff, percent, basis, limb, on)
        except DomainError:
            continue
        yield CuffPressure(cuff, mmhg, words, isinstance(basis, Measured))
